import { InputError, finite, shown } from "../../errors.ts";
import { givenList, given, givenColumn } from "../../given.ts";
import type { Interval } from "../../cohort/binomial-interval.ts";

/**
 * Mean error, observed less predicted, in the unit of the values: above 0 things came later, or were more,
 * than predicted.
 * @param predicted One number for each case.
 * @param observed As long as `predicted`.
 * @throws {InputError} `length-mismatch`; `invalid-number` for a value that is none: a case that was not
 *   predicted must be left out by the caller, who then says so; `invalid-option` for no cases.
 * @example
 * bias([10, 12], [11, 14]) // → 1.5
 */
export function bias(predicted: readonly number[], observed: readonly number[]): number {
  return mean(errors(predicted, observed));
}

/**
 * Mean distance between predicted and observed, in the unit of the values.
 * @throws {InputError} as {@link bias}.
 * @example
 * meanAbsoluteError([10, 12], [11, 10]) // → 1.5
 */
export function meanAbsoluteError(predicted: readonly number[], observed: readonly number[]): number {
  return mean(errors(predicted, observed).map(Math.abs));
}

/**
 * Share of cases whose interval holds what was observed, both bounds included. To be read beside the share
 * that the intervals promise, and with `binomialInterval` for how sure it is.
 * @param intervals One for each case.
 * @param observed As long as `intervals`.
 * @returns 0 to 1.
 * @throws {InputError} as {@link bias}; `invalid-option` for a lower bound above its upper bound.
 * @example
 * coverage([{ lower: 1, upper: 3 }, { lower: 1, upper: 3 }], [3, 4]) // → 0.5
 */
export function coverage(intervals: readonly Interval[], observed: readonly number[]): number {
  givenList(intervals, ["intervals"]);
  givenList(observed, ["observed"]);
  checkLengths(intervals.length, observed.length);
  return mean(
    intervals.map(({ lower, upper }, i) => {
      const low = finite(lower, ["intervals", i, "lower"]);
      const high = finite(upper, ["intervals", i, "upper"]);
      if (low > high) {
        throw new InputError(
          "invalid-option",
          `intervals.${i} runs from ${low} to ${high}; the lower bound must not be above the upper one.`,
          { path: ["intervals", i, "lower"], value: low },
        );
      }
      const value = finite(observed[i], ["observed", i]);
      return Number(low <= value && value <= high);
    }),
  );
}

/**
 * How much better than a reference a forecast is: 1 is perfect, 0 as good as the reference, below 0 worse.
 * @param score Mean score of the forecast, where 0 is perfect: a mean absolute error or a CRPS.
 * @param reference The same score of the reference, such as the mean date of past years.
 * @throws {InputError} `invalid-number` for a score below 0, or a reference that is not above 0: nothing can
 *   be measured against a perfect reference.
 * @example
 * skill(1.5, 6) // → 0.75
 */
export function skill(score: number, reference: number): number {
  if (finite(score, ["score"], "a score from 0") < 0) throw refused("score", score, "0 or more");
  if (finite(reference, ["reference"], "a score above 0") <= 0) {
    throw refused("reference", reference, "above 0");
  }
  return 1 - score / reference;
}

/**
 * Continuous ranked probability score of an ensemble: how far a forecast in the form of several possible
 * values was from what came, in the unit of the values; 0 is perfect. For one member it is the absolute error.
 *
 * Mean distance of the members from the observation, less half the mean distance between members. With
 * weights w the means are weighted, and the fair score divides the second term by 1 - Σw² as well, which for
 * equal weights is the usual N(N - 1) in place of N².
 * @param members The possible values, at least one.
 * @param observed What came.
 * @param options.weights One for each member, 0 or more; they are brought to a sum of 1. Default equal.
 * @param options.fair The fair score does not punish an ensemble for having few members. It takes the
 *   members as draws, which quantiles or nodes of a rule are not; it can fall below 0. Default false.
 * @throws {InputError} `invalid-option` for no members, for weights that cannot be, or for a fair score of
 *   fewer than two members with a weight; `length-mismatch`; `invalid-number`.
 * @example
 * crps([1, 2, 4, 7], 3) // → 0.75
 * @see Gneiting, T. & Raftery, A. E. (2007), J. Am. Stat. Assoc. 102:359-378; Ferro, C. A. T. (2014), Q. J. R.
 *   Meteorol. Soc. 140:1917-1923, for the fair score (both from memory).
 */
export function crps(
  members: readonly number[],
  observed: number,
  options: { readonly weights?: readonly number[]; readonly fair?: boolean } = {},
): number {
  givenList(members, ["members"]);
  given(options, ["options"], "an object of options");
  const came = finite(observed, ["observed"]);
  if (options.weights !== undefined) givenColumn(options.weights, ["weights"]);
  const weights = checkedWeights(members, options.weights);
  const ranked = members
    .map((member, i) => ({ value: finite(member, ["members", i]), weight: weights[i] ?? 0 }))
    .sort((a, b) => a.value - b.value);
  let [distance, between, below, squares] = [0, 0, 0, 0];
  ranked.forEach(({ value, weight }, i) => {
    distance += weight * Math.abs(value - came);
    // Half the mean distance between two members is the integral of F(1 - F), a step at a time.
    if (i > 0) between += below * (1 - below) * (value - (ranked[i - 1]?.value ?? value));
    below += weight;
    squares += weight * weight;
  });
  if (options.fair !== true) return Math.max(0, distance - between);
  // Beside an enormous weight the others are lost, as though it stood alone.
  if (!(squares < 1)) {
    throw new InputError("invalid-option", "a fair score needs at least two members with a weight.", {
      path: ["fair"],
      value: true,
    });
  }
  return distance - between / (1 - squares);
}

function checkedWeights(members: readonly number[], given: readonly number[] | undefined): readonly number[] {
  if (members.length === 0) {
    throw new InputError("invalid-option", "there are no members; an ensemble needs at least one.", {
      path: ["members"],
      value: 0,
    });
  }
  if (given === undefined) return members.map(() => 1 / members.length);
  if (given.length !== members.length) {
    throw new InputError(
      "length-mismatch",
      `there are ${members.length} members and ${given.length} weights; each member needs one.`,
      { path: ["weights"], value: given.length },
    );
  }
  const total = given.reduce((sum, weight, i) => {
    if (finite(weight, ["weights", i], "a weight from 0") < 0)
      throw refused(`weights.${i}`, weight, "0 or more");
    return sum + weight;
  }, 0);
  if (total > 0 && total < Infinity) return given.map((weight) => weight / total);
  throw new InputError("invalid-option", `the weights add up to ${total}; at least one must be above 0.`, {
    path: ["weights"],
    value: total,
  });
}

function errors(predicted: readonly number[], observed: readonly number[]): number[] {
  givenList(predicted, ["predicted"]);
  givenList(observed, ["observed"]);
  checkLengths(predicted.length, observed.length);
  return predicted.map((one, i) => finite(observed[i], ["observed", i]) - finite(one, ["predicted", i]));
}

function checkLengths(predicted: number, observed: number): void {
  if (predicted !== observed) {
    throw new InputError(
      "length-mismatch",
      `there are ${predicted} predictions and ${observed} observations; each case needs one of each.`,
      { path: ["observed"], value: observed },
    );
  }
  if (predicted > 0) return;
  throw new InputError("invalid-option", "there are no cases; at least one is needed.", {
    path: ["predicted"],
    value: 0,
  });
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function refused(place: string, value: unknown, mustBe: string): InputError {
  return new InputError("invalid-number", `${place} is ${shown(value)}; it must be ${mustBe}.`, {
    path: place.split("."),
    value,
  });
}
