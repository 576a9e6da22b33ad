import { InputError, shown } from "../../errors.ts";
import type { Mark } from "../../species/life-cycle.ts";

/** How many larvae one cage may hold, and why. */
export interface CageLimit {
  readonly larvae: number;
  readonly mark: Mark;
  readonly source: string;
  /** A plain sentence. */
  readonly reason: string;
}

/**
 * At most ten larvae to a container. The advice read is for monarchs: one is better still. For other species it
 * is common practice.
 */
export const USUAL_CAGE_LIMIT: CageLimit = {
  larvae: 10,
  mark: "read",
  source: "monarchparasites.org and monarchparasites.uga.edu: ideally one larva a tub, at most 10",
  reason: "Disease passes from larva to larva, and many in one cage bite, strip the leaves and soil them.",
};

/**
 * The limit that a plan keeps to: the usual one, or the caller's number.
 * @throws {InputError} `invalid-option` for a number that is not a whole one from 1.
 */
export function cageLimit(perCage: number | undefined): CageLimit {
  if (perCage === undefined) return USUAL_CAGE_LIMIT;
  if (Number.isSafeInteger(perCage) && perCage >= 1) {
    const { reason } = USUAL_CAGE_LIMIT;
    return { larvae: perCage, mark: "common practice, no source", source: "own number", reason };
  }
  throw new InputError("invalid-option", `perCage is ${shown(perCage)}; it must be a whole number from 1.`, {
    path: ["perCage"],
    value: perCage,
  });
}

/** Cages that a number of larvae needs. */
export function cagesFor(larvae: number, { larvae: most }: CageLimit): number {
  // Numbers of animals are sums of shares: 10.000000001 larvae are ten.
  return Math.max(1, Math.ceil(larvae / most - 1e-6));
}
