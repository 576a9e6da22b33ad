import { type Method, knownMethod } from "../diurnal/method.ts";
import { knownSeries } from "../temperature/known-series.ts";
import { timelineOf } from "../diurnal/timeline.ts";
import { InputError } from "../errors.ts";
import { given } from "../given.ts";
import { linearResponse } from "../response/linear.ts";
import { gapInSpan, gapsOf } from "../temperature/gaps.ts";
import type { DailyTemperatures, TemperatureSeries } from "../temperature/series.ts";
import { type CivilDay, addDays, civilDay, civilDays, dayNumber } from "../time/civil-day.ts";
import { type Zone, civilDayOf, startOfDay } from "../time/zone.ts";
import type { DegreeDays } from "../units.ts";
import type { DegreeDayOptions } from "./degree-days.ts";
import { degreeDaysEach } from "./degree-days-each.ts";
import { thermalClock } from "./thermal-clock.ts";

/** Degree-days of one civil day and their running total. */
export interface AccumulatedDay {
  readonly day: CivilDay;
  readonly degreeDays: DegreeDays;
  /** From the first day to the end of this one. */
  readonly total: DegreeDays;
}

/** Thresholds, method and span of an accumulation. */
export interface AccumulateOptions extends DegreeDayOptions {
  /** First day that counts (the biofix). Default: the first day of the series. */
  readonly from?: CivilDay;
  /** Last day that counts. Default: the last whole day of the series. */
  readonly to?: CivilDay;
  /** IANA zone that cuts readings into days; daily extremes are cut already. */
  readonly zone?: string | null;
}

/**
 * Degree-days day by day with their running total.
 *
 * Daily extremes follow the printed convention: every civil day counts as one day by the method's closed
 * form. Logger readings are integrated exactly along straight lines over the hours of each day.
 * @returns One record for each day from `from` to `to`.
 * @throws {InputError} `missing-temperature` naming the first gap: a missing day is not a day without
 *   heat. `start-outside-series`, `invalid-day`, `invalid-thresholds`, `invalid-method`, `invalid-option`.
 * @example
 * accumulateDegreeDays(dailyTemperatures("2026-05-01", [8, 12, 2], [24, 30, 9]), { lower: 10 }).at(-1)?.total // → 17.304016860415473
 */
export function accumulateDegreeDays(
  series: TemperatureSeries,
  options: AccumulateOptions,
): AccumulatedDay[] {
  knownSeries(series, ["series"]);
  given(options, ["options"], "an object of options");
  return series.kind === "daily" ? byConvention(series, options) : byClock(series, options);
}

/** Adds up days from the first one on; `heat` gives the degree-days of each by its place. */
function runningTotal(first: number, count: number, heat: (index: number) => DegreeDays): AccumulatedDay[] {
  let total = 0;
  return civilDays(first, count).map((day, i) => {
    const degreeDays = heat(i);
    total += degreeDays;
    return { day, degreeDays, total };
  });
}

function byConvention(series: DailyTemperatures, options: AccumulateOptions): AccumulatedDay[] {
  const start = dayNumber(series.start);
  const last = addDays(series.start, series.min.length - 1);
  const { from = series.start, to = last } = options;
  const [first, end] = [dayNumber(from, ["from"]) - start, dayNumber(to, ["to"]) - start + 1];
  if (first < 0 || end > series.min.length)
    throw outside(first < 0 ? "from" : "to", first < 0 ? from : to, series.start, last);
  if (first >= end) throw reversed(from, to);
  const gap = gapsOf(series).find((one) => one.to >= from && one.from <= to);
  if (gap !== undefined) throw gapInSpan(gap);
  // A double method's last day takes the next minimum from the series where there is one.
  const reach = Math.min(end + 1, series.min.length);
  const whole = Number(series.min[reach - 1]) <= Number(series.max[reach - 1]) ? reach : end;
  const each = degreeDaysEach(series.min.subarray(first, whole), series.max.subarray(first, whole), options);
  return runningTotal(start + first, end - first, (i) => each[i] ?? Number.NaN);
}

function byClock(series: TemperatureSeries, options: AccumulateOptions): AccumulatedDay[] {
  const zone: Zone = options.zone ?? null;
  const method: Method = knownMethod(options.method ?? "single-sine");
  const response = linearResponse(options);
  const parts = series.kind === "joined" ? series.parts : [series];
  if (options.to === undefined && parts.some((part) => part.kind === "constant" && part.to === null)) {
    throw new InputError("invalid-option", "a temperature held for ever has no last day; give to.", {
      path: ["to"],
    });
  }
  const from = options.from ?? firstDay(series, zone);
  const timeline = timelineOf(series, {
    method,
    zone,
    limits: response,
    from: startOfDay(dayNumber(from, ["from"]), zone),
  });
  const clock = thermalClock(timeline, response);
  const lastWhole = dayNumber(civilDayOf(timeline.to, zone)) - 1;
  const to = options.to ?? civilDay(lastWhole);
  // Without a last day all temperatures are meant, so a gap is as much in the way as before a given day.
  const stopped =
    timeline.endedBy === "gap" && (options.to === undefined || dayNumber(to, ["to"]) > lastWhole);
  if (!stopped && dayNumber(to, ["to"]) > lastWhole) throw outside("to", to, from, civilDay(lastWhole));
  if (stopped) {
    throw new InputError(
      "missing-temperature",
      (name) =>
        `there is a gap in the temperatures after ${civilDay(lastWhole)}; fill it ${name("by a named policy")}, or name that day as the last.`,
      {
        path: ["to"],
        value: to,
      },
    );
  }
  if (to < from) throw reversed(from, to);
  const first = dayNumber(from);
  return runningTotal(
    first,
    dayNumber(to) - first + 1,
    (i) => clock.amountAt(startOfDay(first + i + 1, zone)) - clock.amountAt(startOfDay(first + i, zone)),
  );
}

/** First whole civil day that a series covers. */
function firstDay(series: TemperatureSeries, zone: Zone): CivilDay {
  switch (series.kind) {
    case "daily":
      return series.start;
    case "readings": {
      const at = series.at[0] ?? 0;
      const day = civilDayOf(at, series.clock === "local" ? null : zone);
      return startOfDay(day, series.clock === "local" ? null : zone) === at ? day : addDays(day, 1);
    }
    case "constant": {
      if (series.from !== null) return series.from;
      throw new InputError("invalid-option", "a temperature held for ever has no first day; give from.", {
        path: ["from"],
        value: undefined,
      });
    }
    case "joined":
      return series.parts.map((part) => firstDay(part, zone)).sort()[0] ?? "";
  }
}

function outside(field: string, day: CivilDay, first: CivilDay, last: CivilDay): InputError {
  return new InputError(
    "start-outside-series",
    `${field} is ${day}, but the temperatures run from ${first} to ${last}; take a day within them.`,
    { path: [field], value: day },
  );
}

function reversed(from: CivilDay, to: CivilDay): InputError {
  return new InputError(
    "invalid-option",
    `to is ${to}, before from ${from}; it must be the same day or later.`,
    {
      path: ["to"],
      value: to,
    },
  );
}
