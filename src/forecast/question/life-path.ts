import { InputError, shown } from "../../errors.ts";
import type { LifeCycle, StageId, StageNeeds } from "../../species/life-cycle.ts";

/** Shares of a stage that are done: a known age has `from` equal to `to`. */
export interface AgeRange {
  readonly from: number;
  readonly to: number;
}

/**
 * How far into its stage an animal was when found: `unknown` (anywhere in it), `new` (it had just begun), a
 * share done from 0 to 1, or a range of shares.
 */
export type AgeGiven = "unknown" | "new" | number | AgeRange;

/** Something to be dated: a later stage, or a sign before one. */
export interface Milestone {
  readonly kind: "stage" | "sign";
  readonly id: StageId | "darkening";
  /** Index of the period of the life cycle in which it falls, and the share of that period done by then. */
  readonly period: number;
  readonly share: number;
}

/** Where the found animals stand in the life cycle and what is still to come. */
export interface LifePath {
  /** Index of the period that they were found in. */
  readonly period: number;
  /** Share of that period done, from the least to the greatest possible. */
  readonly age: AgeRange;
  readonly milestones: readonly Milestone[];
}

/**
 * Places found animals in a life cycle. The hang is the last share of the last larval period: an animal
 * found in that period and not hanging is in the share before it.
 * @throws {InputError} `unknown-stage` for a stage that the life cycle does not have, or the adult;
 *   `invalid-found` for an age outside 0 to 1.
 */
export function lifePath(lifeCycle: LifeCycle, stage: StageId, age: AgeGiven): LifePath {
  const { stages, hang } = lifeCycle;
  const hanging = lastLarval(stages);
  const found =
    stage === "prepupa" && hang !== null ? hanging : stages.findIndex((one) => one.stage === stage);
  if (found < 0) throw unknownStage(lifeCycle, stage);
  const hangAt = hang === null ? 1 : 1 - hang.value;
  const [low, high] = stage === "prepupa" ? [hangAt, 1] : found === hanging ? [0, hangAt] : [0, 1];
  const given = ageRange(age);
  const from = low + given.from * (high - low);
  const milestones = milestonesOf(lifeCycle, hanging).filter(
    ({ period, share }) => period > found || (period === found && share > from),
  );
  return { period: found, age: { from, to: low + given.to * (high - low) }, milestones };
}

function milestonesOf({ stages, hang, darkening }: LifeCycle, hanging: number): Milestone[] {
  return stages.flatMap(({ stage }, period): Milestone[] => {
    const next: Milestone = { kind: "stage", id: stages[period + 1]?.stage ?? "adult", period, share: 1 };
    if (hang !== null && period === hanging)
      return [{ kind: "stage", id: "prepupa", period, share: 1 - hang.value }, next];
    if (darkening !== null && stage === "pupa")
      return [{ kind: "sign", id: "darkening", period, share: 1 - darkening.value }, next];
    return [next];
  });
}

function lastLarval(stages: readonly StageNeeds[]): number {
  return stages.findLastIndex(({ stage }) => stage === "larva" || stage.startsWith("instar-"));
}

function ageRange(age: AgeGiven): AgeRange {
  if (age === "unknown") return { from: 0, to: 1 };
  if (age === "new") return { from: 0, to: 0 };
  const range = typeof age === "number" ? { from: age, to: age } : age;
  if (range.from >= 0 && range.from <= range.to && range.to <= 1) return range;
  throw new InputError(
    "invalid-found",
    `found.age is ${typeof age === "object" ? `${age.from} to ${age.to}` : shown(age)}; it must be "unknown", "new", or shares of the stage done between 0 and 1.`,
    { path: ["found", "age"], value: age },
  );
}

function unknownStage(lifeCycle: LifeCycle, stage: StageId): InputError {
  const known = lifeCycle.stages.flatMap((one) => {
    return one.stage === "pupa" && lifeCycle.hang !== null ? ["prepupa", one.stage] : [one.stage];
  });
  const why =
    stage === "adult"
      ? "the adult is the end of the forecast"
      : `the constants of ${lifeCycle.latinName} do not have this stage`;
  return new InputError(
    "unknown-stage",
    `found.stage is ${shown(stage)}, but ${why}; use one of ${known.join(", ")}.`,
    {
      path: ["found", "stage"],
      value: stage,
    },
  );
}
