import { thermalClock } from "../../clock/thermal-clock.ts";
import { knownSeries } from "../../temperature/known-series.ts";
import { CURVE_METHODS, type CurveMethod, isSunMethod, knownCurveMethod } from "../../diurnal/method.ts";
import type { Place } from "../../diurnal/place.ts";
import { sunNotes } from "../../diurnal/sun-notes.ts";
import { timelineOf } from "../../diurnal/timeline.ts";
import { finite } from "../../errors.ts";
import { given } from "../../given.ts";
import type { IsoInstant } from "../../forecast/question/result.ts";
import type { Note } from "../../notes.ts";
import { CUTOFFS, type Cutoff, type Thresholds, linearResponse } from "../../response/linear.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import { DAY_MS, type Instant, type Zone, formatInstant, knownZone } from "../../time/zone.ts";
import type { DegreeDays } from "../../units.ts";
import { comparedSpan } from "./compared-span.ts";

/** What one method with one cutoff says. */
export interface MethodRow {
  /** `measured`: the readings themselves, joined by straight lines. */
  readonly method: CurveMethod | "measured";
  readonly cutoff: Cutoff;
  /** Degree-days of the whole span, °C·day. */
  readonly degreeDays: DegreeDays;
  /** How much more than the reference, percent of it; `null` where the reference has no degree-days. */
  readonly differencePercent: number | null;
  /** When the wanted amount is reached; `null` when none is wanted or the span ends first. */
  readonly reachedAt: IsoInstant | null;
  /** How much later than by the reference, days; below 0 earlier. */
  readonly differenceDays: number | null;
  /** Why an instant that was wanted is `null`; `null` otherwise. */
  readonly reason: string | null;
}

/** What {@link compareMethods} returns. Plain data. */
export interface MethodComparison {
  readonly lower: number;
  readonly upper: number | null;
  /** First and last civil day that count. */
  readonly from: CivilDay;
  readonly to: CivilDay;
  readonly zone: string | null;
  /** Degree-days that were wanted, °C·day. */
  readonly amount: DegreeDays | null;
  /** What the rows are compared with: the readings where there are any, else the single sine. */
  readonly reference: MethodRow;
  readonly rows: readonly MethodRow[];
  readonly notes: readonly Note[];
}

/** What {@link compareMethods} can be told. */
export interface CompareMethodsOptions {
  /** First day that counts. Default: the first whole day of the temperatures. */
  readonly from?: CivilDay;
  /** Last day that counts. Default: the last whole day before a gap or the end. */
  readonly to?: CivilDay;
  /** Degree-days to be reached from the begin of `from`, °C·day: the rows then say when. */
  readonly amount?: DegreeDays;
  /** IANA zone of the days. Without one every day has 24 hours. */
  readonly zone?: string | null;
  /** Where it is. With it and a zone, the methods that follow the sun are compared too. */
  readonly place?: Place | null;
  /** Default: every method that the place and the zone allow. */
  readonly methods?: readonly CurveMethod[];
  /** Default: all four where there is an upper threshold, else `none`. */
  readonly cutoffs?: readonly Cutoff[];
}

/**
 * What each method and cutoff would have said of the same temperatures: their degree-days, how far they are
 * from a reference and, for a wanted amount, when each says that it is reached.
 *
 * The reference is the readings themselves where the series is a logger's; the methods then see no more of it
 * than each day's lowest and highest temperature. Otherwise it is the single sine. It takes the cutoff of the
 * thresholds, horizontal by default. Degree-days count hours as they pass, as in a forecast.
 * @param series Temperatures, °C. Where readings are joined with daily extremes, the methods differ only on
 *   the latter.
 * @param thresholds Lower and upper threshold, °C.
 * @returns A row for each method and cutoff; the `clamped-` methods have no use for a cutoff and one row.
 * @throws {InputError} `invalid-thresholds`, `invalid-method`, `invalid-number`; `place-needed` or
 *   `zone-needed` for a method that follows the sun; `start-outside-series` or `missing-temperature` for the
 *   span; `invalid-option` where the temperatures have no end of their own and `to` is missing.
 * @example
 * compareMethods(dailyTemperatures("2026-05-01", [8, 12, 2], [24, 30, 9]), { lower: 10 }).rows
 *   .map(({ method, degreeDays }) => `${method} ${degreeDays.toFixed(2)}`)
 *   .slice(0, 4) // → ["average 17.00", "clamped-average 18.00", "clamped-mean 17.00", "single-sine 17.30"]
 * @example
 * compareMethods(dailyTemperatures("2026-05-01", [8, 12, 2], [24, 30, 9]), { lower: 10 }, { amount: 10, methods: ["average"] })
 *   .rows[0]?.reachedAt // → "2026-05-02T08:43:38"
 */
export function compareMethods(
  series: TemperatureSeries,
  thresholds: Thresholds,
  options: CompareMethodsOptions = {},
): MethodComparison {
  knownSeries(series, ["series"]);
  given(options, ["options"], "an object of options");
  const response = linearResponse(thresholds);
  const upper = thresholds.upper ?? null;
  const zone: Zone = options.zone == null ? null : knownZone(options.zone);
  const place = options.place ?? null;
  const amount = options.amount === undefined ? null : finite(options.amount, ["amount"], "degree-days");
  const span = comparedSpan(series, zone, options);
  const cutoffs = options.cutoffs ?? (upper === null ? (["none"] as const) : CUTOFFS);
  const methods =
    options.methods?.map(knownCurveMethod) ??
    CURVE_METHODS.filter((method) => !isSunMethod(method) || (place !== null && zone !== null));

  const said = (method: MethodRow["method"], chosen: readonly Cutoff[]): Said[] => {
    const measured = method === "measured";
    const timeline = timelineOf(measured ? series : span.extremes, {
      method: measured ? "single-sine" : method,
      zone,
      place,
      from: span.begin,
      limits: response,
    });
    return chosen.map((cutoff) => {
      const clock = thermalClock(timeline, linearResponse({ ...thresholds, cutoff }));
      const reached = amount === null ? null : clock.when(amount);
      return {
        method,
        cutoff,
        degreeDays: clock.amountAt(span.end),
        reached: reached !== null && reached <= span.end ? reached : null,
      };
    });
  };

  const [reference] = said(span.measured ? "measured" : "single-sine", [response.cutoff]);
  if (reference === undefined) throw new Error("a reference has one cutoff");
  const rows = [
    ...(span.measured ? said("measured", cutoffs) : []),
    ...methods.flatMap((method) =>
      said(method, method.startsWith("clamped-") ? [upper === null ? "none" : "horizontal"] : cutoffs),
    ),
  ];
  const asRow = (one: Said): MethodRow => rowOf(one, reference, amount, span.to, zone);
  const notes = [
    ...span.notes,
    ...methods.flatMap((method) => sunNotes([span.extremes], { method, zone, place }, span.begin, span.end)),
  ];
  return {
    lower: response.lower,
    upper,
    from: span.from,
    to: span.to,
    zone,
    amount,
    reference: asRow(reference),
    rows: rows.map(asRow),
    notes,
  };
}

interface Said extends Pick<MethodRow, "method" | "cutoff" | "degreeDays"> {
  readonly reached: Instant | null;
}

function rowOf(
  { method, cutoff, degreeDays, reached }: Said,
  reference: Said,
  amount: DegreeDays | null,
  to: CivilDay,
  zone: Zone,
): MethodRow {
  return {
    method,
    cutoff,
    degreeDays,
    differencePercent: reference.degreeDays > 0 ? (degreeDays / reference.degreeDays - 1) * 100 : null,
    reachedAt: reached === null ? null : formatInstant(reached, zone),
    differenceDays:
      reached === null || reference.reached === null ? null : (reached - reference.reached) / DAY_MS,
    reason:
      amount !== null && reached === null
        ? `By the end of ${to} there are ${degreeDays.toFixed(1)} of the ${amount} degree-days.`
        : null,
  };
}
