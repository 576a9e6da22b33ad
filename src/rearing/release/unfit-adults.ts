import { InputError, shown } from "../../errors.ts";
import type { Emergence } from "./emergences.ts";
import type { ReleasePlan } from "./release-plan.ts";

/** How many adults a plan is about. */
export type AdultCounts = Pick<ReleasePlan, "healthy" | "unfit">;

/**
 * Adults that are fit and adults that are not.
 * @param given.found How many animals a forecast is about: the most that can emerge.
 * @param given.healthy Healthy adults as counted by the caller; otherwise all less the unfit ones.
 * @param given.unfit Unfit adults besides those marked in the list.
 * @throws {InputError} `invalid-option` for counts that are no whole numbers, or more adults than there are.
 */
export function adultCounts(
  emergences: readonly Emergence[],
  given: {
    readonly seen: boolean;
    readonly found: number | null;
    readonly healthy: number | undefined;
    readonly unfit: number | undefined;
  },
): AdultCounts {
  const marked = emergences.filter(({ unfit }) => unfit);
  const unfit = countOf(given.unfit ?? 0, "unfit") + total(marked);
  const all = given.seen ? total(emergences) : given.found;
  if (all !== null && unfit > all) {
    throw new InputError(
      "invalid-option",
      `unfit is ${unfit}, more than the ${all} adults there are at most; count them again.`,
      { path: ["unfit"], value: unfit },
    );
  }
  const healthy =
    given.healthy === undefined ? (all === null ? null : all - unfit) : countOf(given.healthy, "healthy");
  if (all !== null && healthy !== null && healthy + unfit > all) {
    throw new InputError(
      "invalid-option",
      `healthy is ${healthy}${unfit === 0 ? "" : ` and unfit ${unfit}`}, more than the ${all} adults there are at most; count them again.`,
      { path: ["healthy"], value: healthy },
    );
  }
  const animals = marked.flatMap(({ animal }) => (animal === null ? [] : [animal]));
  return { healthy, unfit: unfit === 0 ? null : { count: unfit, animals, message: STAY_IN } };
}

const STAY_IN =
  "Adults that are crumpled, weak or known to be infected are not planned for: they stay out of the wild.";

function total(emergences: readonly Emergence[]): number {
  return emergences.reduce((sum, { count }) => sum + (count ?? 0), 0);
}

function countOf(value: number, name: string): number {
  if (Number.isSafeInteger(value) && value >= 0) return value;
  throw new InputError("invalid-option", `${name} is ${shown(value)}; it must be a whole number from 0.`, {
    path: [name],
    value,
  });
}
