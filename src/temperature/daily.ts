import { InputError, shown } from "../errors.ts";
import { given, givenColumn, givenList } from "../given.ts";
import { type CivilDay, addDays, dayNumber } from "../time/civil-day.ts";
import { type DailyTemperatures, ORIGINS, type Origin } from "./series.ts";

/**
 * Daily extremes as a series.
 * @param start The day of the first values.
 * @param min Lowest temperature of each day, °C, one for each civil day; NaN where there is no reading.
 * @param max Highest temperature of each day, °C, as long as `min`.
 * @param origin Where the values come from: one for all days, or one each. Default `observed`.
 * @throws {InputError} `invalid-day`, `length-mismatch`, `no-temperatures` (no day with both values),
 *   `invalid-number` (infinite), `min-above-max`. The path names the day.
 * @example
 * dailyTemperatures("2026-05-01", [8, 12], [24, 30]).max.length // → 2
 */
export function dailyTemperatures(
  start: CivilDay,
  min: ArrayLike<number>,
  max: ArrayLike<number>,
  origin: Origin | readonly Origin[] = "observed",
): DailyTemperatures {
  dayNumber(start, ["start"]);
  givenColumn(min, ["min"]);
  givenColumn(max, ["max"]);
  // The last day must be one that can be written; a longer column is none of days.
  if (min.length > 0) addDays(start, min.length - 1);
  if (typeof origin !== "string") givenList(origin, ["origin"]);
  const origins = typeof origin === "string" ? Array.from(min, () => origin) : [...origin];
  if (min.length !== max.length || origins.length !== min.length) {
    throw new InputError(
      "length-mismatch",
      `there are ${min.length} minima, ${max.length} maxima and ${origins.length} origins; each day needs one of each.`,
      { path: ["max"], value: max.length },
    );
  }
  const unknown = origins.find((one) => !ORIGINS.includes(one));
  if (unknown !== undefined) {
    throw new InputError(
      "invalid-option",
      `origin is ${shown(unknown)}; it must be one of ${ORIGINS.join(", ")}.`,
      {
        path: ["origin"],
        value: unknown,
      },
    );
  }
  const lows = Float64Array.from(min);
  const highs = Float64Array.from(max);
  let complete = 0;
  for (let i = 0; i < lows.length; i++) {
    const low = checked(lows[i], "min", start, i);
    const high = checked(highs[i], "max", start, i);
    if (low > high) {
      throw new InputError(
        "min-above-max",
        `on ${addDays(start, i)} the minimum ${low} is above the maximum ${high}; exchange them or mark the day as missing.`,
        { path: [addDays(start, i), "min"], value: low },
      );
    }
    if (low <= high) complete++;
  }
  if (complete === 0) {
    throw new InputError(
      "no-temperatures",
      "no day has both a minimum and a maximum; at least one is needed.",
      {
        path: ["min"],
        value: lows.length,
      },
    );
  }
  return { kind: "daily", start, min: lows, max: highs, origin: origins };
}

/** The last day of a daily series. */
export function lastDay(series: DailyTemperatures): CivilDay {
  given(series, ["series"], "daily temperatures, as dailyTemperatures makes them", "start", "min", "max");
  return addDays(series.start, series.min.length - 1);
}

// An infinite value is an error; NaN is a missing reading and passes.
function checked(value: number | undefined, field: string, start: CivilDay, i: number): number {
  if (value === undefined || Math.abs(value) === Infinity) {
    const day = addDays(start, i);
    throw new InputError(
      "invalid-number",
      `${field} on ${day} is ${value}; it must be a temperature in °C, or NaN where there is no reading.`,
      {
        path: [day, field],
        value,
      },
    );
  }
  return value;
}
