import type { ThermalClock } from "../../clock/thermal-clock.ts";
import { type Method, knownMethod } from "../../diurnal/method.ts";
import { InputError } from "../../errors.ts";
import { given, givenColumn } from "../../given.ts";
import { lifePath } from "../../forecast/question/life-path.ts";
import { stageClocks } from "../../forecast/clocks/stage-clock.ts";
import { spreadClocks } from "../../forecast/clocks/weather-spread.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import { dailyTemperatures } from "../../temperature/daily.ts";
import { restartOf, sameDate } from "../../temperature/past-trace.ts";
import { gapInRecord, gapsOf } from "../../temperature/gaps.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import { civilDay, dayNumber } from "../../time/civil-day.ts";
import { DAY_MS, type Instant } from "../../time/zone.ts";

/** What to forecast in hindsight. */
export interface HindcastInput {
  readonly lifeCycle: LifeCycle;
  /** Daily temperatures of four years or more, without gaps. */
  readonly temperatures: DailyTemperatures;
  /** Days of observed temperatures after the start at which a forecast is made. Default 0, 3, 7, 14 and 21. */
  readonly leads?: readonly number[];
  readonly method?: Method;
  /** Take every so many-th day as a start. Default 1, every day of the record. */
  readonly every?: number;
}

/** One forecast made in hindsight. Times are days after the start. */
export interface HindcastRun {
  /** Day on which an animal begins its first stage, at midnight. */
  readonly start: string;
  readonly lead: number;
  /** When it became adult with the whole record known; `null` when the record ends before. */
  readonly truth: number | null;
  /** Days from the start to the end of the record. */
  readonly recordEnds: number;
  /** What was forecast: times of equal weight, in order; Infinity for not within 400 days. */
  readonly forecast: readonly number[];
}

/** Days after what is known that a forecast looks ahead. */
const HORIZON_DAYS = 400;

/**
 * Forecasts in hindsight, from every day of a record: the middle animal of known age, the temperatures
 * known up to the lead, then the other years of the record as what may come. The truth is the same animal on
 * the whole record. This proves the handling of weather to come and nothing else: the biology is the same
 * on both sides.
 * @returns One run for each start and lead; no run is left out.
 * @throws {InputError} `no-temperatures` for a record of fewer than four years, `missing-temperature` for one
 *   with gaps, `invalid-option`.
 */
export function hindcast(input: HindcastInput): HindcastRun[] {
  given(input, ["input"], "an object with lifeCycle and temperatures", "lifeCycle", "temperatures");
  const { lifeCycle, temperatures: record, leads = [0, 3, 7, 14, 21], every = 1 } = input;
  givenColumn(leads, ["leads"]);
  const method = knownMethod(input.method ?? "single-sine");
  checkRecord(record);
  if (
    !(Number.isInteger(every) && every >= 1) ||
    leads.some((lead) => !(Number.isInteger(lead) && lead >= 0))
  ) {
    throw new InputError(
      "invalid-option",
      `every is ${every} and leads are ${leads.join(", ")}; these are whole days, every from 1 and leads from 0.`,
      {
        path: ["leads"],
        value: leads,
      },
    );
  }
  const walker = recordWalker(lifeCycle, record, method);
  const first = dayNumber(record.start);
  const runs: HindcastRun[] = [];
  for (let i = 0; i < record.min.length; i += every) {
    const start = (first + i) * DAY_MS;
    const recordEnds = record.min.length - i;
    const whole = walker.fromRecord(start);
    const truth = whole === null || whole > start + recordEnds * DAY_MS ? null : (whole - start) / DAY_MS;
    for (const lead of leads) {
      // Once the animal is adult, or the record over, nothing more can be learned from the weather.
      const known = Math.min(lead, Math.floor(truth ?? recordEnds), recordEnds);
      const forecast = walker
        .fromOtherYears(start, first + i + known)
        .map((at) => (at === null ? Infinity : (at - start) / DAY_MS))
        .sort((a, b) => a - b);
      runs.push({ start: civilDay(first + i), lead, truth, recordEnds, forecast });
    }
  }
  return runs;
}

function checkRecord(record: DailyTemperatures): void {
  const [gap] = gapsOf(record);
  if (gap !== undefined) throw gapInRecord(gap);
  if (record.min.length < 4 * 365) {
    throw new InputError(
      "no-temperatures",
      `the record has ${record.min.length} days; four years are needed, so that each can be forecast from three others.`,
      { path: ["temperatures"], value: record.min.length },
    );
  }
}

/**
 * Walks the middle animal through a record. The clocks of all years are stretches of one clock, so that
 * thousands of forecasts need it only once.
 */
function recordWalker(lifeCycle: LifeCycle, record: DailyTemperatures, method: Method) {
  const restart = restartOf(record);
  const twice = (column: Float64Array): number[] => [...column, ...column.subarray(restart)];
  const long = dailyTemperatures(record.start, twice(record.min), twice(record.max));
  const [firstStage] = lifeCycle.stages;
  const path = lifePath(lifeCycle, firstStage?.stage ?? "egg", "new");
  const from = dayNumber(record.start) * DAY_MS;
  const clocks = stageClocks(lifeCycle, path, long, { method, zone: null, from, place: null }).flatMap(
    (entry) => (entry === null ? [] : [entry.clock]),
  );
  const needs = lifeCycle.stages.map(({ degreeDays }) => degreeDays.value);
  const distinct = [...new Set(clocks)];
  const years = yearsOf(record);

  const walk = (start: Instant, clockOf: (period: number) => ThermalClock | undefined): Instant | null =>
    needs.reduce<Instant | null>((at, need, period) => {
      const clock = clockOf(period);
      return at === null || clock === undefined ? null : clock.when(clock.amountAt(at) + need);
    }, start);

  return {
    fromRecord: (start: Instant) => walk(start, (period) => clocks[period]),
    /** Arrivals with the days before a day known and the other years after it. */
    fromOtherYears(start: Instant, unknown: number): (Instant | null)[] {
      const day = civilDay(unknown);
      const until = unknown * DAY_MS;
      const traces = years.flatMap((year) => {
        const at = dayNumber(sameDate(day, year)) * DAY_MS;
        return year === Number(day.slice(0, 4)) || at < from || at >= from + record.min.length * DAY_MS
          ? []
          : [at];
      });
      const spread = distinct.map((clock) =>
        spreadClocks(
          traces.map((trace) => stretched(clock, start, until, trace)),
          until,
        ),
      );
      return (spread[0] ?? []).map((_, k) =>
        walk(start, (period) => {
          const clock = clocks[period];
          return clock === undefined ? undefined : spread[distinct.indexOf(clock)]?.[k]?.clock;
        }),
      );
    },
  };
}

/** A clock from a start, on the record until an instant and on another stretch of it from there on. */
function stretched(clock: ThermalClock, start: Instant, until: Instant, trace: Instant): ThermalClock {
  const began = clock.amountAt(start);
  const known = clock.amountAt(until) - began;
  const before = clock.amountAt(trace);
  const to = until + HORIZON_DAYS * DAY_MS;
  const amountAt = (instant: Instant): number =>
    instant <= until
      ? Math.max(0, clock.amountAt(instant) - began)
      : known + clock.amountAt(trace + Math.min(instant, to) - until) - before;
  return {
    from: start,
    to,
    total: amountAt(to),
    amountAt,
    when(amount) {
      if (amount <= known) return clock.when(amount + began);
      const at = clock.when(amount - known + before);
      return at === null || at - trace + until > to ? null : at - trace + until;
    },
  };
}

function yearsOf(record: DailyTemperatures): number[] {
  const first = Number(record.start.slice(0, 4));
  const last = Number(civilDay(dayNumber(record.start) + record.min.length - 1).slice(0, 4));
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}
