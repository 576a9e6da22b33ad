import { arcTemperature } from "../../diurnal/arc.ts";
import type { CurveMethod } from "../../diurnal/method.ts";
import type { Place } from "../../diurnal/place.ts";
import { timelineOf } from "../../diurnal/timeline.ts";
import { InputError, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import type { IsoInstant } from "../../forecast/question/result.ts";
import { type Thresholds, linearRate, linearResponse } from "../../response/linear.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { type CivilDay, dayNumber } from "../../time/civil-day.ts";
import { HOUR_MS, type Instant, type Zone, endOfDay, formatInstant, startOfDay } from "../../time/zone.ts";
import type { Celsius } from "../../units.ts";

/** One moment of a temperature curve. The area under `counted` is degree-days. */
export interface CurveRow {
  readonly at: IsoInstant;
  readonly temperature: Celsius;
  /** Degrees that count at this moment, °C: the rate of development. */
  readonly counted: number;
  /** Degrees above the lower threshold that the cutoff takes away, °C. */
  readonly taken: number;
}

/** Which curve to follow, and how closely. */
export interface CurveRowsOptions {
  readonly thresholds: Thresholds;
  /** First and last civil day. */
  readonly from: CivilDay;
  readonly to: CivilDay;
  /** Default `single-sine`. Readings of a logger are joined by straight lines whatever it is. */
  readonly method?: CurveMethod;
  /** IANA zone of the days. Without one every day has 24 hours. */
  readonly zone?: string | null;
  /** For the methods that follow the sun. */
  readonly place?: Place | null;
  /** Rows in each hour, at most 3600. Default 20. */
  readonly perHour?: number;
}

/** A row a second. */
const MOST_PER_HOUR = 3600;

/**
 * The curve that a method draws through temperatures, moment by moment, with what of it counts.
 * @param series Temperatures, °C.
 * @returns Rows from the begin of the first day to the end of the last, or to the first hole.
 * @throws {InputError} `invalid-thresholds`, `invalid-day`, `invalid-option`, `start-outside-series`, `missing-temperature`, and
 *   `zone-needed` or `place-needed` for a method that follows the sun.
 * @example
 * curveRows(dailyTemperatures("2026-05-01", [8], [24]), { thresholds: { lower: 10 }, from: "2026-05-01", to: "2026-05-01", perHour: 1 })[15]
 * // → { at: "2026-05-01T15:00:00", temperature: 24, counted: 14, taken: 0 }
 */
export function curveRows(series: TemperatureSeries, options: CurveRowsOptions): CurveRow[] {
  given(options, ["options"], "an object with thresholds, from and to", "thresholds");
  const { thresholds, method = "single-sine", place = null, perHour = 20 } = options;
  if (!(perHour > 0 && perHour <= MOST_PER_HOUR)) {
    throw new InputError(
      "invalid-option",
      `perHour is ${shown(perHour)}; it must be a number above 0, at most ${MOST_PER_HOUR}.`,
      { path: ["perHour"], value: perHour },
    );
  }
  const zone: Zone = options.zone ?? null;
  const response = linearResponse(thresholds);
  const from = startOfDay(dayNumber(options.from, ["from"]), zone);
  const until = endOfDay(dayNumber(options.to, ["to"]), zone);
  const { arcs } = timelineOf(series, { method, zone, place, from, until, limits: response });
  const end = Math.min(until, arcs.at(-1)?.to ?? from);
  const rows: CurveRow[] = [];
  let i = 0;
  // Each from the first, or rounding would add up and leave out the end.
  const instantAt = (n: number): Instant => from + (n * HOUR_MS) / perHour;
  for (let n = 0; instantAt(n) <= end; n++) {
    const instant = instantAt(n);
    while (i < arcs.length - 1 && (arcs[i]?.to ?? Infinity) <= instant) i++;
    const arc = arcs[i];
    if (arc === undefined) break;
    const u = arc.u0 + ((arc.u1 - arc.u0) * (instant - arc.from)) / (arc.to - arc.from);
    const temperature = arcTemperature(arc, u);
    const counted = linearRate(response, temperature);
    const taken = Math.max(0, temperature - response.lower - counted);
    rows.push({ at: formatInstant(instant, zone), temperature, counted, taken });
  }
  return rows;
}
