import { spanOf } from "../../diurnal/part-arcs.ts";
import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { dailyTemperatures } from "../../temperature/daily.ts";
import { gapInSpan, gapsOf } from "../../temperature/gaps.ts";
import { loggerDays } from "../../temperature/logger-days.ts";
import type { DailyTemperatures, TemperatureReadings, TemperatureSeries } from "../../temperature/series.ts";
import { type CivilDay, addDays, civilDay, dayNumber } from "../../time/civil-day.ts";
import { type Instant, type Zone, civilDayOf, endOfDay, startOfDay } from "../../time/zone.ts";

/** The days over which methods are compared, and what the methods see of them. */
export interface ComparedSpan {
  readonly from: CivilDay;
  readonly to: CivilDay;
  readonly begin: Instant;
  readonly end: Instant;
  /** Daily extremes where the temperatures are readings; else the temperatures themselves. */
  readonly extremes: TemperatureSeries;
  /** Whether the temperatures are readings, and so their own reference. */
  readonly measured: boolean;
  readonly notes: readonly Note[];
}

/**
 * The span of a comparison: as asked for, else all whole civil days up to the first gap.
 * @throws {InputError} `start-outside-series`, `missing-temperature`, `invalid-day`, `invalid-option`.
 */
export function comparedSpan(
  series: TemperatureSeries,
  zone: Zone,
  asked: { readonly from?: CivilDay; readonly to?: CivilDay },
): ComparedSpan {
  const extremes = series.kind === "readings" ? extremesOf(series, zone) : series;
  const [firstDay, lastDay] = wholeDays(extremes, zone, asked);
  const { from = firstDay, to: wanted } = asked;
  const gap = extremes.kind === "daily" ? gapsOf(extremes).find((one) => one.to >= from) : undefined;
  const to = wanted ?? (gap === undefined ? lastDay : addDays(gap.from, -1));
  const begins = dayNumber(from, ["from"]);
  const fromOutside = begins < dayNumber(firstDay) || begins > dayNumber(lastDay);
  if (fromOutside || dayNumber(to, ["to"]) > dayNumber(lastDay)) {
    const [field, day] = fromOutside ? ["from", from] : ["to", to];
    throw new InputError(
      "start-outside-series",
      `${field} is ${day}, but the temperatures run from ${firstDay} to ${lastDay}; take a day within them.`,
      { path: [field], value: day },
    );
  }
  if (gap !== undefined && (to >= gap.from || to < from)) throw gapInSpan(gap);
  if (to < from) {
    throw new InputError(
      "invalid-option",
      `to is ${to}, before from ${from}; it must be the same day or later.`,
      { path: ["to"], value: to },
    );
  }
  const cut = gap !== undefined && wanted === undefined;
  const notes: Note[] = cut
    ? [
        {
          code: "missing-days",
          message: `The comparison ends on ${to}, because there is no temperature for ${gap.from}.`,
        },
      ]
    : [];
  return {
    from,
    to,
    begin: startOfDay(from, zone),
    end: endOfDay(to, zone),
    extremes,
    measured: series.kind === "readings",
    notes,
  };
}

/** Lowest and highest reading of each civil day that a logger covers from midnight to midnight. */
function extremesOf(readings: TemperatureReadings, zone: Zone): DailyTemperatures {
  const days = loggerDays(readings, zone);
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) {
    throw new InputError(
      "no-temperatures",
      "the readings do not cover a whole day from midnight to midnight; methods for daily extremes need at least one.",
      { path: ["series"], value: readings.at.length },
    );
  }
  const start = dayNumber(first.day);
  const count = dayNumber(last.day) - start + 1;
  const [min, max] = [new Float64Array(count).fill(Number.NaN), new Float64Array(count).fill(Number.NaN)];
  for (const day of days) {
    min[dayNumber(day.day) - start] = day.min;
    max[dayNumber(day.day) - start] = day.max;
  }
  return dailyTemperatures(first.day, min, max, readings.origin);
}

/** First and last whole civil day that a series covers, holes included; what has no end ends as asked for. */
function wholeDays(
  series: TemperatureSeries,
  zone: Zone,
  asked: { readonly from?: CivilDay; readonly to?: CivilDay },
): [CivilDay, CivilDay] {
  const spans = (series.kind === "joined" ? series.parts : [series]).map((part) => spanOf(part, zone));
  const begins = spans.map(([begin]) => begin).filter((begin) => begin > -Infinity);
  const always = begins.length < spans.length;
  const end = Math.max(...spans.map(([, to]) => to));
  const first =
    begins.length === 0 || (always && asked.from !== undefined)
      ? endless(asked.from, "first", "from")
      : firstWhole(Math.min(...begins), zone);
  const last =
    end < Infinity ? civilDay(dayNumber(civilDayOf(end, zone)) - 1) : endless(asked.to, "last", "to");
  return [first, last];
}

function firstWhole(begin: Instant, zone: Zone): CivilDay {
  const day = civilDayOf(begin, zone);
  return startOfDay(day, zone) === begin ? day : addDays(day, 1);
}

function endless(day: CivilDay | undefined, which: string, field: string): CivilDay {
  if (day !== undefined) return day;
  throw new InputError("invalid-option", `a temperature held for ever has no ${which} day; give ${field}.`, {
    path: [field],
    value: day,
  });
}
