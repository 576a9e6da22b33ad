import type { Window } from "../../forecast/question/result.ts";
import type { Note } from "../../notes.ts";
import type { StageId } from "../../species/life-cycle.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import type { CageLimit } from "./cage-limit.ts";
import type { Caution } from "../cautions.ts";
import type { FoliageOutlook, Leaves } from "./foliage-outlook.ts";
import type { AdultsFate } from "./plan-cohort.ts";
import type { PlanInstruction } from "./plan-instructions.ts";
import type { PlanTask } from "./plan-task.ts";
import type { Rest } from "./rest.ts";
import type { StageCount } from "./stage-counts.ts";

/** How one cohort stands on one day. */
export interface CohortDay {
  readonly cohort: string;
  /** Mean numbers of the day by stage, in the order of life; empty outside the cohort's days. */
  readonly stages: readonly StageCount[];
  readonly rest: Rest;
  /** Whether so many rest that the cage is to be left alone. */
  readonly quiet: boolean;
  /** Leaves that the cohort eats on that day; `null` where no need is known. */
  readonly leaves: Leaves | null;
}

/** One civil day of a plan. */
export interface PlanDay {
  readonly day: CivilDay;
  /** Nobody is there. */
  readonly away: boolean;
  /** In the order of the day, then of the cohorts' names. */
  readonly tasks: readonly PlanTask[];
  readonly cohorts: readonly CohortDay[];
}

/** What in a plan does not fit together. Stable across releases. */
export type ConflictCode =
  | "nobody-there"
  | "peaks-together"
  | "foliage-short"
  | "cage-crowded"
  | "disturbed-rest"
  | "no-day-to-move-pupae"
  | "dates-unknown";

/** A part of a sentence: words, or a day, which writers show in their own way. */
export type SentencePart = string | { readonly day: CivilDay };

/** Something that does not fit together, for the keeper to decide. */
export interface PlanConflict {
  readonly code: ConflictCode;
  /** The first day on which it matters, and all of them. */
  readonly day: CivilDay;
  readonly days: readonly CivilDay[];
  readonly cohorts: readonly string[];
  /** One to three plain sentences, with days as ISO 8601 writes them. */
  readonly message: string;
  /** The same sentences in parts, so that a name that looks like a day is not taken for one. */
  readonly parts: readonly SentencePart[];
}

/** A cohort as the plan has it. */
export interface PlannedCohort {
  readonly name: string;
  readonly species: string;
  readonly latinName: string;
  readonly commonName: string;
  readonly count: number;
  readonly cages: number;
  readonly stage: StageId;
  readonly foundOn: CivilDay;
  /** First and last day of its part of the plan. */
  readonly from: CivilDay;
  readonly to: CivilDay;
  /** Stages and signs in the order of life, as forecast. */
  readonly windows: readonly { readonly begins: StageId | "darkening"; readonly window: Window }[];
  readonly adults: AdultsFate;
}

/** A caution and the cohorts that it is for. */
export interface PlanCaution extends Caution {
  readonly cohorts: readonly string[];
}

/** What to do on each day of a rearing season. Plain data. */
export interface DayPlan {
  readonly from: CivilDay;
  readonly to: CivilDay;
  readonly cohorts: readonly PlannedCohort[];
  /** Every civil day from the first to the last. */
  readonly days: readonly PlanDay[];
  /** One for each kind of food that is counted. */
  readonly foliage: readonly FoliageOutlook[];
  /** What the tasks of this plan mean, in the order of the day. */
  readonly instructions: readonly PlanInstruction[];
  readonly cageLimit: CageLimit;
  /** In the order of their days. */
  readonly conflicts: readonly PlanConflict[];
  readonly cautions: readonly PlanCaution[];
  readonly notes: readonly Note[];
}
