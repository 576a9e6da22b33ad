import { greatest, least } from "../numeric/extremes.ts";
import { InputError, shown } from "../errors.ts";
import { given } from "../given.ts";
import { type CivilDay, civilDay } from "../time/civil-day.ts";
import { type Zone, knownZone } from "../time/zone.ts";
import type { Celsius } from "../units.ts";
import { type HuberLine, huberLine, median } from "../numeric/huber-line.ts";
import { sharedDays } from "./shared-days.ts";
import type { DailyTemperatures, TemperatureReadings } from "./series.ts";

/** A number that was estimated, with its standard error in the same unit. */
export interface Estimate {
  readonly value: number;
  readonly standardError: number;
}

/** Something to know about a room before its estimates are used. */
export interface RoomNote {
  readonly code: "sun-on-the-cage" | "station-outside-overlap";
  readonly message: string;
}

/** How a room or cage differs from a weather station. */
export interface RoomRelation {
  /** Mean of the station's days that it was learned from, (min + max) / 2, °C. */
  readonly stationMean: Celsius;
  /** Mean temperature of the room on a day on which the station's is `stationMean`, °C. */
  readonly level: Estimate;
  /** Degrees that the room's mean rises for one degree of the station's: below 1 it is damped. */
  readonly damping: Estimate;
  /** Daily half-range of the room, as a multiple of the station's. */
  readonly rangeRatio: Estimate;
  /** Room less station for the mean at 0 °C outside, °C: room = offset + damping · station. */
  readonly offset: Estimate;
  /** Spread of the room's daily means around the line, °C. */
  readonly residualDeviation: number;
  /** Correlation of one day's residual with the next day's; the standard errors are widened for it. */
  readonly autocorrelation: number;
  /** Complete days that both have. */
  readonly days: number;
  readonly from: CivilDay;
  readonly to: CivilDay;
  /** Lowest and highest daily mean of the station on these days, °C: beyond them the line is stretched. */
  readonly seen: { readonly low: Celsius; readonly high: Celsius };
  /** How much higher the room's maximum is than the station's on the middle day, °C. */
  readonly maxAbove: number;
  readonly notes: readonly RoomNote[];
}

/** Fewest days to learn from unless told otherwise. Common practice, no source: two weeks of weather. */
const LEAST_ROOM_DAYS = 14;
/** With a lower one the errors mean nothing. */
const FEWEST_DAYS = 5;
/** A room's maximum so far above the station's tells of sun, where the range is not damped either, °C. */
const SUN_MAX_ABOVE = 3;
/** So much more than the station moves only what the sun shines on. Both are common practice, no source. */
const SUN_DAMPING = 1.2;

/**
 * How a room or cage differs from a weather station, learned from the days that both were measured:
 * room mean = level + damping · (station mean - its middle), and room half-range = rangeRatio · station
 * half-range. Both lines are Huber's, so that a day with the cage carried into the kitchen does not spoil
 * them.
 *
 * The room's mean is the logger's mean over time, since that is what development adds up; the station's is
 * the middle of its extremes, since nothing else is known of it. Standard errors are widened by
 * √((1 + r) / (1 - r)), r being the correlation of neighbouring days' residuals (0 when below): ten days of one
 * warm spell tell less than ten days.
 * @param logger Readings in the room.
 * @param station Daily extremes of the station; only days of origin `observed` are used.
 * @param options.zone Zone of the station's days, needed for a logger in UTC.
 * @param options.atLeast Fewest complete days. Default 14, at least 5.
 * @throws {InputError} `too-few-readings` for fewer days, or a station whose mean or range stands still;
 *   `invalid-option`, `invalid-zone`, `zone-needed`.
 * @example
 * const days = Array.from({ length: 16 }, (_, i) => i);
 * const station = dailyTemperatures("1970-01-01", days.map((i) => 10 + i), days.map((i) => 20 + i));
 * const hours = Array.from({ length: 65 }, (_, i) => 6 * i);
 * const logger = temperatureReadings(hours.map((h) => h * 3_600_000), hours.map((h) => 21 + h / 48), { clock: "local" });
 * const { damping, days: compared } = relateRoom(logger, station);
 * [Number(damping.value.toFixed(3)), compared] // → [0.5, 16]
 * @see Zwiers, F. W. & von Storch, H. (1995), J. Clim. 8:336-351, for the widening (from memory).
 */
export function relateRoom(
  logger: TemperatureReadings,
  station: DailyTemperatures,
  options: { readonly zone?: Zone; readonly atLeast?: number } = {},
): RoomRelation {
  given(logger, ["logger"], "readings, as temperatureReadings makes them", "at", "temperature", "clock");
  given(
    station,
    ["station"],
    "daily temperatures, as dailyTemperatures makes them",
    "start",
    "min",
    "max",
    "origin",
  );
  given(options, ["options"], "an object of options");
  const { zone = null, atLeast = LEAST_ROOM_DAYS } = options;
  if (!(Number.isInteger(atLeast) && atLeast >= FEWEST_DAYS)) {
    throw new InputError(
      "invalid-option",
      `atLeast is ${shown(atLeast)}; it must be a whole number of days from ${FEWEST_DAYS}.`,
      { path: ["atLeast"], value: atLeast },
    );
  }
  const days = sharedDays(logger, station, zone === null ? null : knownZone(zone));
  const [first, last] = [days[0], days.at(-1)];
  if (days.length < atLeast || first === undefined || last === undefined) {
    throw new InputError(
      "too-few-readings",
      `logger and station share ${days.length} complete days; at least ${atLeast} are needed to tell the room from the weather.`,
      { path: ["logger"], value: days.length },
    );
  }
  const outside = days.map((day) => day.station.mean);
  const stationMean = outside.reduce((sum, mean) => sum + mean, 0) / days.length;
  const ranges = days.map((day) => day.station.half);
  const [low, high] = [least(outside), greatest(outside)];
  if (high - low < 1 || greatest(ranges) === 0) {
    throw new InputError(
      "too-few-readings",
      `the station's daily means differ by only ${(high - low).toFixed(1)} °C on the shared days, or its days have no range; take days with different weather.`,
      { path: ["station"], value: high - low },
    );
  }
  const means = huberLine(
    outside.map((mean) => mean - stationMean),
    days.map((day) => day.room.mean),
  );
  const halves = huberLine(
    ranges,
    days.map((day) => day.room.half),
    { throughOrigin: true },
  );
  const numbers = days.map(({ number }) => number);
  const autocorrelation = neighbourCorrelation(numbers, means.residuals);
  const widened = widening(autocorrelation);
  const rangeWidened = widening(neighbourCorrelation(numbers, halves.residuals));
  const damping = estimate(means.slope, means.slopeVariance, widened);
  const rangeRatio = estimate(halves.slope, halves.slopeVariance, rangeWidened);
  const maxAbove = median(days.map((day) => day.room.max - day.station.max));
  return {
    stationMean,
    level: estimate(means.intercept, means.interceptVariance, widened),
    damping,
    rangeRatio,
    offset: estimate(
      means.intercept - means.slope * stationMean,
      offsetVariance(means, stationMean),
      widened,
    ),
    residualDeviation: means.scale,
    autocorrelation,
    days: days.length,
    from: civilDay(first.number),
    to: civilDay(last.number),
    seen: { low, high },
    maxAbove,
    notes: sunNotes(damping.value, rangeRatio.value, maxAbove),
  };
}

/** Correlation of residuals one day apart, from 0 to 0.95; odd days are pulled in to the common size. */
function neighbourCorrelation(numbers: readonly number[], residuals: readonly number[]): number {
  const bound = 3 * (median(residuals.map(Math.abs)) / 0.6745);
  const calm = residuals.map((one) => Math.max(-bound, Math.min(bound, one)));
  const square = calm.reduce((sum, one) => sum + one * one, 0) / calm.length;
  const products = calm.flatMap((one, i) =>
    i > 0 && numbers[i] === (numbers[i - 1] ?? 0) + 1 ? [one * (calm[i - 1] ?? 0)] : [],
  );
  if (products.length === 0 || square === 0) return 0;
  const correlation = products.reduce((sum, one) => sum + one, 0) / products.length / square;
  return Math.max(0, Math.min(0.95, correlation));
}

function widening(correlation: number): number {
  return Math.sqrt((1 + correlation) / (1 - correlation));
}

function estimate(value: number, variance: number, widened: number): Estimate {
  return { value, standardError: Math.sqrt(variance) * widened };
}

function offsetVariance({ interceptVariance, slopeVariance, covariance }: HuberLine, at: number): number {
  return Math.max(0, interceptVariance - 2 * at * covariance + at * at * slopeVariance);
}

function sunNotes(damping: number, rangeRatio: number, maxAbove: number): RoomNote[] {
  const high = maxAbove > SUN_MAX_ABOVE && rangeRatio > 1;
  if (!high && damping <= SUN_DAMPING && rangeRatio <= SUN_DAMPING) return [];
  return [
    {
      code: "sun-on-the-cage",
      message: `Sun on the cage, or on the logger: its maximum is ${maxAbove.toFixed(1)} °C above the station's on the middle day, its mean moves ${damping.toFixed(2)} times as far and its daily range is ${rangeRatio.toFixed(2)} times as wide. Shade both: a logger in the sun reads more than the air has, and a closed cage in the sun can kill.`,
    },
  ];
}
