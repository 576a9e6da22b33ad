import type { CurveMethod } from "../../diurnal/method.ts";
import type { MethodRow } from "../../evaluate/methods/compare-methods.ts";
import type { Cutoff } from "../../response/linear.ts";

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

/** A method as words for a list, a table or a figure, such as `single sine`. */
export function methodName(method: MethodRow["method"]): string {
  return NAMES[method];
}

/** A cutoff as words, such as `horizontal cutoff`. */
export function cutoffName(cutoff: Cutoff): string {
  return cutoff === "none" ? "no cutoff" : `${cutoff} cutoff`;
}
