import { givenOneOf } from "../../given.ts";
import { type CurveMethod, knownCurveMethod } from "../../diurnal/method.ts";
import type { MethodRow } from "../../evaluate/methods/compare-methods.ts";
import { CUTOFFS, type Cutoff } from "../../response/linear.ts";

const NAMES: Readonly<Record<CurveMethod | "measured", string>> = {
  measured: "the hours themselves",
  average: "average",
  "clamped-average": "clamped extremes",
  "clamped-mean": "clamped mean",
  "single-sine": "single sine",
  "double-sine": "double sine",
  "single-triangle": "single triangle",
  "double-triangle": "double triangle",
  "sunrise-sine": "sunrise sine",
  "sunrise-exponential": "sunrise exponential",
};

/**
 * A method as words for a list, a table or a figure, such as `single sine`.
 * @throws {InputError} `invalid-method`.
 */
export function methodName(method: MethodRow["method"]): string {
  return NAMES[method === "measured" ? method : knownCurveMethod(method)];
}

/**
 * A cutoff as words, such as `horizontal cutoff`.
 * @throws {InputError} `invalid-option`.
 */
export function cutoffName(cutoff: Cutoff): string {
  givenOneOf(cutoff, ["cutoff"], CUTOFFS);
  return cutoff === "none" ? "no cutoff" : `${cutoff} cutoff`;
}
