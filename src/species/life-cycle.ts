import type { Cutoff } from "../response/linear.ts";
import type { Celsius } from "../units.ts";

/** Stages in the order of life. `larva` stands for all instars where a source gives no instars. */
export const STAGE_IDS = [
  "egg",
  "larva",
  "instar-1",
  "instar-2",
  "instar-3",
  "instar-4",
  "instar-5",
  "prepupa",
  "pupa",
  "adult",
] as const;

/** Id of a stage in results and options. */
export type StageId = (typeof STAGE_IDS)[number];

/**
 * How far a figure can be trusted: seen in the published text (`read`), seen in another text that quotes
 * it (`second-hand`), computed from published open data (`open data`), computed here from the figures
 * named (`derived`), recalled and not yet looked up (`from memory`), or a rule of thumb.
 */
export type Mark =
  "read" | "second-hand" | "open data" | "derived" | "from memory" | "common practice, no source";

/** The marks, the most trusted first. */
export const MARKS = [
  "read",
  "second-hand",
  "open data",
  "derived",
  "from memory",
  "common practice, no source",
] as const satisfies readonly Mark[];

/** A number with where it comes from. */
export interface Sourced {
  readonly value: number;
  readonly mark: Mark;
  /** Author, year, journal, pages or the like; for derived figures, from what and how. */
  readonly source: string;
}

/** The temperatures at which a constant was measured. */
export interface TestedRange {
  readonly low: Celsius;
  readonly high: Celsius;
  readonly mark: Mark;
  readonly source: string;
}

/** What one stage needs to be completed. */
export interface StageNeeds {
  readonly stage: Exclude<StageId, "prepupa" | "adult">;
  /** Thermal constant: degree-days above the lower threshold that the middle animal needs, °C·day. */
  readonly degreeDays: Sourced;
  /** Lower developmental threshold, °C. */
  readonly lower: Sourced;
  /** Upper developmental threshold, °C, or `null` where none is known. */
  readonly upper: Sourced | null;
  /** What happens above the upper threshold. */
  readonly cutoff: Cutoff;
  /** Coefficient of variation of the thermal constant between animals, a fraction. */
  readonly cv: Sourced;
  /** Temperatures it was measured at, or `null` where the source at hand does not say. */
  readonly tested: TestedRange | null;
}

/** Things to know when handling a species; each has a caution text of its own. */
export type Handling =
  /** The host plant has sap that hurts eyes. */
  | "harmful-sap"
  /** A pest in places: never to be released. */
  | "never-release"
  /** Protected or under permit in places. */
  | "permit-in-places"
  /** Not native everywhere it is reared. */
  | "not-native-in-places";

/** What there is to know when handling a species. */
export const HANDLINGS = [
  "harmful-sap",
  "never-release",
  "permit-in-places",
  "not-native-in-places",
] as const satisfies readonly Handling[];

/** The life cycle of a species, as plain data. A user's own species is an object of this type. */
export interface LifeCycle {
  /** Latin name in kebab-case, with a suffix for a second set of constants. */
  readonly species: string;
  readonly latinName: string;
  readonly commonName: string;
  /** Host plant or food that the constants were measured on, or `null` where not known. */
  readonly host: string | null;
  /** Where the measured animals came from, or `null` where not known. */
  readonly region: string | null;
  /** In the order of life; the last is followed by the adult. */
  readonly stages: readonly StageNeeds[];
  /**
   * The hang (prepupa) as the last share of the last larval stage, whose thermal constant includes it;
   * `null` where the animal does not hang.
   */
  readonly hang: Sourced | null;
  /** The last share of the pupal stage, in which the pupa darkens; `null` where it shows nothing. */
  readonly darkening: Sourced | null;
  /**
   * Correlation between the stages of one animal in how much more or less than the middle they need, 0 to 1.
   * 0: slow in one stage says nothing of the next; 1: an animal is equally slow throughout.
   */
  readonly stageCorrelation: Sourced;
  readonly handling: readonly Handling[];
  /** What a user of these constants should know, one sentence each. */
  readonly remarks: readonly string[];
}
