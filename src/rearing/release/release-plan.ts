import type { Place } from "../../diurnal/place.ts";
import type { IsoInstant } from "../../forecast/question/result.ts";
import type { Note } from "../../notes.ts";
import type { Mark } from "../../species/life-cycle.ts";
import type { Caution } from "../cautions.ts";
import type { ReleaseCriteria } from "./release-criteria.ts";
import type { ReleaseHour } from "./release-hour.ts";

/** Why there is no best hour. */
export interface ReleaseAbsence {
  /**
   * `emergence-unknown`: the forecast does not reach it. `before-weather`, `beyond-weather`: the weather covers
   * none of the time. `weather-begins-later`, `weather-ends`: it covers a part, and nothing in it fits.
   * `not-judged`: hours could not be judged, and nothing else fits. `nothing-fits`: every hour is refused.
   */
  readonly reason:
    | "emergence-unknown"
    | "before-weather"
    | "beyond-weather"
    | "weather-begins-later"
    | "weather-ends"
    | "not-judged"
    | "nothing-fits";
  /** A plain sentence. */
  readonly message: string;
}

/** A stretch of time whose hours were looked at. */
export interface ReleaseLook {
  readonly from: IsoInstant;
  readonly to: IsoInstant;
  /** Every whole hour of it that the weather has or has a gap in, in order of time. */
  readonly hours: readonly ReleaseHour[];
  /** The hour of rank 1, or `null` with the reason in `absence`. */
  readonly best: ReleaseHour | null;
  readonly absence: ReleaseAbsence | null;
  /** Whether the weather reached over all of it and left no hour unjudged. */
  readonly complete: boolean;
}

/** What to do while no hour fits. */
export interface ReleaseAdvice {
  readonly code: "keep" | "dim-and-cool" | "offer-food" | "next-day" | "more-weather";
  /** From when on it holds; `null` for at once. */
  readonly from: IsoInstant | null;
  readonly mark: Mark;
  /** A plain sentence or two. */
  readonly message: string;
}

/** One emergence and the hours after it. */
export interface EmergencePlan {
  /** The early, expected or late animal of a forecast, or one that was seen. */
  readonly which: "early" | "expected" | "late" | "seen";
  /** Which animal, where it was named. */
  readonly animal: string | null;
  /** How many, where they were seen. */
  readonly count: number | null;
  readonly emergesAt: IsoInstant | null;
  /** The first hour may begin from here on. */
  readonly heldFrom: IsoInstant | null;
  /** The first day of an adult, from emergence to the end of the longest hold. */
  readonly firstDay: ReleaseLook | null;
  /** The day after, looked at where the first has no fit hour. */
  readonly nextDay: ReleaseLook | null;
  /** The best hour of the first day, else of the next; `null` with the reason in `absence`. */
  readonly best: ReleaseHour | null;
  readonly absence: ReleaseAbsence | null;
  /** What to do; empty where the first day has a fit hour. */
  readonly advice: readonly ReleaseAdvice[];
}

/** What `releaseHours` returns. Plain data: `JSON.parse(JSON.stringify(plan))` is the same. */
export interface ReleasePlan {
  readonly species: string;
  readonly latinName: string;
  readonly commonName: string;
  readonly zone: string;
  readonly place: Place;
  /** Why there is no planning for release at all; `null` where there is. Never a permission. */
  readonly ruledOut: {
    readonly code: "never-release" | "not-native" | "none-healthy";
    readonly message: string;
  } | null;
  /** The law first. */
  readonly cautions: readonly Caution[];
  readonly criteria: ReleaseCriteria;
  /** How many healthy adults it is about, at most; `null` where that is not known. */
  readonly healthy: number | null;
  /** Adults that stay out of the wild; `null` where none was named. */
  readonly unfit: {
    readonly count: number;
    readonly animals: readonly string[];
    readonly message: string;
  } | null;
  /** Empty where release is ruled out. */
  readonly emergences: readonly EmergencePlan[];
  readonly notes: readonly Note[];
}
