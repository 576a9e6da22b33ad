import type { CivilDay } from "../time/civil-day.ts";
import type { Celsius } from "../units.ts";

/**
 * Where a temperature comes from, from the surest to the least sure: read from an instrument, filled into a gap,
 * estimated for a room from a station, a weather forecast, the same days of a past year, the normals of past
 * years, or assumed.
 */
export const ORIGINS = [
  "observed",
  "filled",
  "estimated",
  "forecast",
  "past-year",
  "normal",
  "assumed",
] as const;

/** One of `ORIGINS`; anything but `observed` is said in the results that used it. */
export type Origin = (typeof ORIGINS)[number];

/** Daily extremes, one slot per civil day without holes; NaN is a missing reading and means only that. */
export interface DailyTemperatures {
  readonly kind: "daily";
  /** The day of slot 0. */
  readonly start: CivilDay;
  /** Lowest temperature of each day, °C. */
  readonly min: Float64Array;
  /** Highest temperature of each day, °C. */
  readonly max: Float64Array;
  /** Where each day comes from. */
  readonly origin: readonly Origin[];
}

/** Logger readings at any spacing, in order of time, joined by straight lines. */
export interface TemperatureReadings {
  readonly kind: "readings";
  /** Time of each reading in milliseconds, strictly increasing: see `clock`. */
  readonly at: Float64Array;
  /** Temperature of each reading, °C; never NaN. */
  readonly temperature: Float64Array;
  /** `utc`: `at` counts from 1970-01-01T00:00Z. `local`: a clock on the wall whose zone is not known here. */
  readonly clock: "utc" | "local";
  /** Two readings further apart than this are not joined: the time between them is a gap. Hours. */
  readonly longestGapHours: number;
  readonly origin: Origin;
}

/** A temperature that is held: 'the room is kept at 24 °C'. */
export interface ConstantTemperature {
  readonly kind: "constant";
  /** °C */
  readonly temperature: Celsius;
  /** First day it holds, or `null` for always. */
  readonly from: CivilDay | null;
  /** Last day it holds, or `null` for ever. */
  readonly to: CivilDay | null;
}

/** Several series as one: at each moment the first part that covers it counts. */
export interface JoinedTemperatures {
  readonly kind: "joined";
  readonly parts: readonly (DailyTemperatures | TemperatureReadings | ConstantTemperature)[];
}

/** Any temperatures that a forecast can run on. */
export type TemperatureSeries =
  DailyTemperatures | TemperatureReadings | ConstantTemperature | JoinedTemperatures;
