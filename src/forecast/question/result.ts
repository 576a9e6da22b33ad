import type { Note } from "../../notes.ts";
import type { Cutoff } from "../../response/linear.ts";
import type { StageId } from "../../species/life-cycle.ts";
import type { Origin } from "../../temperature/series.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import type { DegreeDays } from "../../units.ts";
import type { Belief } from "./learned.ts";

/** ISO 8601 date and time: with an offset where the forecast has a zone, without one where it has not. */
export type IsoInstant = string;

/** When something begins for the early, the middle and the late animal; `null` beyond the temperatures at hand. */
export interface Window {
  readonly early: IsoInstant | null;
  readonly expected: IsoInstant | null;
  readonly late: IsoInstant | null;
}

/** Why an instant is `null`. */
export interface Absence {
  /** `series-ends`: later than the last temperature. `gap`: a hole in the temperatures comes first.
   *  `too-cold`: no temperature at hand is above the lower threshold. */
  readonly reason: "series-ends" | "gap" | "too-cold";
  /** A plain sentence. */
  readonly message: string;
}

/** One later stage of the animals that were found. */
export interface StageForecast {
  readonly stage: StageId;
  /** When it begins. */
  readonly begins: Window;
  /** Degree-days that the middle animal uses from the found stage's middle age to the begin of this stage, °C·day. */
  readonly degreeDays: DegreeDays;
  /** Why one or more of the three are `null`; `null` where none is. */
  readonly absence: Absence | null;
}

/** A sign that shows before a stage: the pupa darkens. */
export interface SignForecast {
  readonly sign: "darkening";
  readonly begins: Window;
  readonly absence: Absence | null;
}

/** Degree-days day by day for one pair of thresholds, from the day of the find on. */
export interface DegreeDayTable {
  readonly lower: number;
  readonly upper: number | null;
  readonly cutoff: Cutoff;
  /** Stages that run on these thresholds. */
  readonly stages: readonly StageId[];
  /** Civil days, the first being the day of the find. */
  readonly days: readonly CivilDay[];
  /** Degree-days of each day, °C·day, counted from the find on the first. */
  readonly degreeDays: readonly number[];
  /** Running total at the end of each day. */
  readonly total: readonly number[];
  /** Where each day's temperatures come from (the least certain of the day). */
  readonly origin: readonly Origin[];
}

/** What {@link forecast} returns. Plain data: `JSON.parse(JSON.stringify(result))` is the same. */
export interface Forecast {
  readonly species: string;
  readonly latinName: string;
  readonly commonName: string;
  readonly found: {
    readonly stage: StageId;
    /** As given. */
    readonly on: string;
    /** The instant that the forecast counts from. */
    readonly at: IsoInstant;
    readonly count: number;
    /** Age within the stage at that instant, as shares of the stage done. */
    readonly age: { readonly from: number; readonly to: number };
  };
  readonly zone: string | null;
  readonly method: string;
  /** Shares of animals at early, expected and late. */
  readonly shares: readonly [early: number, expected: number, late: number];
  readonly stages: readonly StageForecast[];
  readonly signs: readonly SignForecast[];
  readonly tables: readonly DegreeDayTable[];
  /** What a log taught, where one was given: pace and offset, and the stage that the forecast goes on from. */
  readonly learned: {
    readonly pace: Belief;
    readonly offset: Belief | null;
    readonly from: StageId | null;
  } | null;
  readonly notes: readonly Note[];
}
