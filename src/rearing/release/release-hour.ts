import type { IsoInstant } from "../../forecast/question/result.ts";

/** What is looked at in an hour. */
export type ReleaseAspect = "hold" | "warmth" | "wind" | "rain" | "ahead" | "daylight";

/** Why an hour is good, refused or not judged. Stable across releases. */
export type ReleaseReasonCode =
  // hold
  | "held-long-enough"
  | "too-soon"
  // warmth
  | "warm"
  | "cool-but-sunny"
  | "cool-without-sun"
  | "too-cold"
  | "far-too-cold"
  | "sun-unknown"
  | "temperature-unknown"
  // wind
  | "calm"
  | "windy"
  | "wind-unknown"
  // rain
  | "dry"
  | "rain"
  | "rain-unknown"
  // ahead
  | "fair-ahead"
  | "rain-ahead"
  | "ahead-unknown"
  // daylight
  | "daylight"
  | "little-sun-left"
  | "dark";

/** One thing about an hour. */
export interface ReleaseReason {
  readonly aspect: ReleaseAspect;
  readonly code: ReleaseReasonCode;
  /** Whether it speaks for the hour; `null` where it is not known. */
  readonly good: boolean | null;
  /** How far from its limit it is, 0 (at it) to 1; `null` where it does not count for the rank. */
  readonly margin: number | null;
  /** A plain sentence. */
  readonly message: string;
}

/** The weather of an hour as it was given, in °C, m/s, mm and %; `null` where missing. */
export interface WeatherOfHour {
  readonly temperature: number | null;
  readonly wind: number | null;
  readonly rain: number | null;
  readonly rainChance: number | null;
  readonly cloud: number | null;
}

/** An hour that was looked at. */
export interface ReleaseHour {
  readonly from: IsoInstant;
  readonly to: IsoInstant;
  /** `refused` when anything known speaks against it; else `not-judged` when anything is unknown. */
  readonly verdict: "fit" | "refused" | "not-judged";
  /** 1 for the best of the fit hours; `null` for the others. */
  readonly rank: number | null;
  /** The smallest of its margins, 0 to 1; `null` unless it is fit. */
  readonly score: number | null;
  readonly weather: WeatherOfHour;
  /** From the hour's end to sunset, hours; `null` where the sun is down, and under the midnight sun. */
  readonly sunLeftHours: number | null;
  /** One for each aspect, in the order of {@link ReleaseAspect}. */
  readonly reasons: readonly ReleaseReason[];
}
