import { DAY_MS } from "../../time/zone.ts";
import { isFeeding } from "./foliage-needs.ts";
import type { PlanAnimals } from "./plan-cohort.ts";
import { HALF_AN_ANIMAL } from "./stage-counts.ts";
import { beganAt } from "./stand-ins.ts";

/** Animals that must not be touched on a day: the most at one time, if all live. */
export interface Rest {
  /** Larvae that sit still before a molt. */
  readonly molting: number;
  /** Prepupae. */
  readonly hanging: number;
  /** Pupae that have not hardened. */
  readonly freshPupae: number;
  /** The most of all three together, as a share of the larvae and pupae at that time. */
  readonly share: number;
}

/** Last share of a larval stage in which it sits still: a fifth (common practice, no source). */
export const REST_BEFORE_MOLT = 0.2;

/** Hours until a pupa may be moved: a day (common practice, no source). */
export const FRESH_PUPA_HOURS = 24;

/** Share of larvae and pupae at rest from which a day is a quiet one (common practice, no source). */
export const QUIET_SHARE = 1 / 3;

/** Share of a cohort from which its rest is told, however few they are: one in ten (common practice, no source). */
const TOLD_SHARE = 0.1;

/**
 * Whether so many resting animals are worth a task: half an animal or, of a few, a tenth of them. One larva alone is
 * hardly ever more likely than not to molt on a day, and still must not be disturbed when it does.
 */
export function isTold(resting: number, { count }: Pick<PlanAnimals, "count">): boolean {
  return resting >= Math.min(HALF_AN_ANIMAL, TOLD_SHARE * count);
}

// A rest of half a day would vanish in the mean of the day, so the day is looked at every three hours.
const LOOKS = [0, 3, 6, 9, 12, 15, 18, 21];

/** Who rests on a civil day. */
export function restOn(animals: PlanAnimals, day: number): Rest {
  let most: Rest = { molting: 0, hanging: 0, freshPupae: 0, share: 0 };
  for (const hour of LOOKS) {
    const rest = restAt(animals, day * DAY_MS + (hour / 24) * DAY_MS);
    most = {
      molting: Math.max(most.molting, rest.molting),
      hanging: Math.max(most.hanging, rest.hanging),
      freshPupae: Math.max(most.freshPupae, rest.freshPupae),
      share: Math.max(most.share, rest.share),
    };
  }
  return most;
}

function restAt({ order, standIns, count }: PlanAnimals, at: number): Rest {
  let [molting, hanging, freshPupae, present] = [0, 0, 0, 0];
  for (const one of standIns) {
    const { begins } = one;
    // The stage that it is in: the last one that has begun.
    const k = begins.findLastIndex((begin) => begin <= at);
    const stage = order[k];
    // A larva that was found near its molt rests from the find on, so the whole stage counts, not what is left of it.
    const [from, to] = [beganAt(one, k), begins[k + 1] ?? Infinity];
    if (stage === undefined || stage === "egg" || stage === "adult") continue;
    present += 1;
    if (stage === "prepupa") hanging += 1;
    else if (stage === "pupa") freshPupae += Number(at - from < (FRESH_PUPA_HOURS / 24) * DAY_MS);
    else if (isFeeding(stage) && order[k + 1] !== "prepupa")
      molting += Number(to < Infinity && to - at <= REST_BEFORE_MOLT * (to - from));
  }
  const each = count / standIns.length;
  return {
    molting: molting * each,
    hanging: hanging * each,
    freshPupae: freshPupae * each,
    share: present === 0 ? 0 : (molting + hanging + freshPupae) / present,
  };
}
