import { InputError } from "../errors.ts";
import { given } from "../given.ts";
import { type CivilDay, addDays, civilDay, dayNumber } from "../time/civil-day.ts";
import { DAY_MS } from "../time/zone.ts";
import { dailyTemperatures, lastDay } from "./daily.ts";
import type { DailyTemperatures, TemperatureSeries } from "./series.ts";

/** What is known, as a list of one series or of none, and the first day that is not known, or not wholly. */
export function knownPart(
  observed: TemperatureSeries,
  until: CivilDay | undefined,
): { known: TemperatureSeries[]; from: CivilDay } {
  if (observed.kind !== "daily") {
    if (until === undefined) return { known: [observed], from: firstUnknownDay(observed) };
    throw new InputError(
      "invalid-option",
      `until is ${until}, but only daily temperatures can be cut there; leave it out.`,
      {
        path: ["until"],
        value: until,
      },
    );
  }
  const last = until ?? lastDay(observed);
  const days = dayNumber(last, ["until"]) - dayNumber(observed.start) + 1;
  const from = addDays(last, 1);
  if (days === 0) return { known: [], from };
  if (days < 0 || days > observed.min.length) {
    throw new InputError(
      "start-outside-series",
      `until is ${last}, but the temperatures run from ${observed.start} to ${lastDay(observed)}; take a day within them, or the day before them where none is known.`,
      { path: ["until"], value: last },
    );
  }
  const known = dailyTemperatures(
    observed.start,
    observed.min.subarray(0, days),
    observed.max.subarray(0, days),
    observed.origin.slice(0, days),
  );
  return { known: [known], from };
}

/**
 * Refuses days to come that leave a hole behind what is known, or are over before they count.
 * @param from The first day that is not wholly known.
 * @throws {InputError} `start-outside-series`.
 */
export function checkAhead(
  ahead: DailyTemperatures,
  observed: TemperatureSeries,
  from: CivilDay,
  name: "forecast" | "normals",
): void {
  given(ahead, [name], "daily temperatures, as dailyTemperatures makes them", "start", "min", "max");
  const parts = observed.kind === "joined" ? observed.parts : [observed];
  // Readings in UTC can end on the day before or after their own by the clocks of a place that is not known here.
  const late = parts.some((part) => part.kind === "readings" && part.clock === "utc") ? 2 : 0;
  if (dayNumber(ahead.start, [name, "start"]) <= dayNumber(from) + late && lastDay(ahead) >= from) return;
  throw new InputError(
    "start-outside-series",
    `${name} runs from ${ahead.start} to ${lastDay(ahead)}, but what is known ends before ${from}; it must begin by then and go on beyond it. Give days from ${from} on, or temperatures up to ${addDays(ahead.start, -1)}.`,
    { path: [name], value: ahead.start },
  );
}

function firstUnknownDay(observed: TemperatureSeries): CivilDay {
  switch (observed.kind) {
    case "daily":
      return addDays(lastDay(observed), 1);
    case "readings": {
      // Within a day of the last reading in any zone; until then the readings themselves count.
      const day = Math.floor((observed.at.at(-1) ?? 0) / DAY_MS);
      return civilDay(observed.clock === "utc" ? day - 1 : day);
    }
    case "constant":
      if (observed.to !== null) return addDays(observed.to, 1);
      throw new InputError(
        "invalid-option",
        "a temperature held for ever leaves no weather to come; give its last day.",
        {
          path: ["observed", "to"],
          value: null,
        },
      );
    case "joined":
      return observed.parts.map(firstUnknownDay).sort().at(-1) ?? "";
  }
}
