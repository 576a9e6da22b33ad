import { givenLifeCycle } from "../../species/given-life-cycle.ts";
import { InputError, finite } from "../../errors.ts";
import { given, givenList } from "../../given.ts";
import { isSpecies } from "../../species/is-species.ts";
import type { LifeCycle, Sourced, StageId } from "../../species/life-cycle.ts";

/** Stages that feed. A prepupa hangs and does not. */
export type FeedingStage = Extract<StageId, "larva" | `instar-${number}`>;

/** What one larva eats, stage by stage; plain data, to be replaced by numbers of one's own. */
export interface FoliageNeeds {
  /** Species that it holds for, with every set of constants of it. */
  readonly latinName: string;
  /** What is eaten, such as `milkweed`. Cohorts with the same word share one supply. */
  readonly food: string;
  /** Leaves that one larva eats over the whole of a stage, with a mark and a source each. */
  readonly leaves: Readonly<Partial<Record<FeedingStage, Sourced>>>;
}

/** Share of all that has been eaten up to the end of a stage which falls in that stage itself. */
const SHARE_OF_THE_LAST = 0.8;

/**
 * A total for each larva spread over its stages: four fifths of it in the last one, four fifths of the rest in
 * the one before, and so on. The four fifths are from memory, and known for the monarch only.
 * @param leavesPerLarva Leaves that one larva eats from hatching to the pupa, above 0.
 * @param options Food plant, and where the total comes from. Default: the caller's own number.
 * @throws {InputError} `invalid-number` for a total that is not above 0.
 * @example
 * foliageFromTotal(danausPlexippus, 7).leaves["instar-5"]?.value.toFixed(1) // → "5.6"
 */
export function foliageFromTotal(
  lifeCycle: Pick<LifeCycle, "latinName" | "stages">,
  leavesPerLarva: number,
  options: { food?: string; source?: string } = {},
): FoliageNeeds {
  given(lifeCycle, ["lifeCycle"], "a life cycle, such as findSpecies returns", "stages", "latinName");
  given(options, ["options"], "an object of options");
  const { latinName, stages } = lifeCycle;
  const { food = "food plant", source = "own number" } = options;
  if (finite(leavesPerLarva, ["leavesPerLarva"], "a number of leaves above 0") <= 0) {
    throw new InputError(
      "invalid-number",
      `leavesPerLarva is ${leavesPerLarva}; it must be a number of leaves above 0.`,
      { path: ["leavesPerLarva"], value: leavesPerLarva },
    );
  }
  const feeding = feedingStagesOf(stages);
  const leaves: Partial<Record<FeedingStage, Sourced>> = {};
  let upToHere = leavesPerLarva;
  for (const stage of [...feeding].reverse()) {
    const value = stage === feeding[0] ? upToHere : upToHere * SHARE_OF_THE_LAST;
    upToHere -= value;
    leaves[stage] = { value, mark: "common practice, no source", source };
  }
  return { latinName, food, leaves };
}

/**
 * Monarch: about 7 large leaves a larva. One keeper's account of 6 to 8 large leaves of common milkweed was
 * read; no measurement. Small leaves, other milkweeds and wilted ones count for less.
 */
const MONARCH_LEAVES = { total: 7, source: "6 to 8 large leaves of common milkweed a larva, anecdotal" };

/**
 * What the larvae of a species eat: the caller's own numbers, or else the default of the species.
 * @param own Needs that the caller gave; the first of the species counts.
 * @returns `null` where nothing is known: a plan then names no amounts.
 * @throws {InputError} `invalid-number` where own needs lack one of the species' larval stages, or have a
 *   number below 0.
 */
export function foliageNeedsFor(
  lifeCycle: LifeCycle,
  own: readonly FoliageNeeds[] = [],
): FoliageNeeds | null {
  givenLifeCycle(lifeCycle);
  givenList(own, ["own"]);
  const index = own.findIndex((needs) => isSpecies(lifeCycle, needs.latinName));
  const asGiven = own[index];
  if (asGiven !== undefined) return checked(asGiven, lifeCycle, index);
  if (!isSpecies(lifeCycle, "Danaus plexippus")) return null;
  return foliageFromTotal(lifeCycle, MONARCH_LEAVES.total, {
    food: "milkweed",
    source: MONARCH_LEAVES.source,
  });
}

/** The larval stages of a life cycle, in order. */
export function feedingStagesOf(stages: LifeCycle["stages"]): FeedingStage[] {
  return stages.flatMap(({ stage }) => (isFeeding(stage) ? [stage] : []));
}

/** Whether animals feed in a stage. */
export function isFeeding(stage: StageId): stage is FeedingStage {
  return stage === "larva" || stage.startsWith("instar-");
}

function checked(needs: FoliageNeeds, lifeCycle: LifeCycle, index: number): FoliageNeeds {
  for (const stage of feedingStagesOf(lifeCycle.stages)) {
    const path = ["needs", index, "leaves", stage, "value"];
    const value = finite(needs.leaves[stage]?.value, path, "the leaves that one larva eats in that stage");
    if (value >= 0) continue;
    throw new InputError("invalid-number", `${path.join(".")} is ${value}; it must be 0 or more leaves.`, {
      path,
      value,
    });
  }
  return needs;
}
