import fc from "fast-check";
import { CUTOFFS } from "../../src/response/linear.ts";

/** A number with two decimals, as temperatures are written. */
export function degrees(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100);
}

/** Extremes of a day, °C. */
export const day = fc
  .tuple(degrees(-20, 45), degrees(-20, 45), degrees(-20, 45))
  .map(([a, b, next]) => ({ min: Math.min(a, b), max: Math.max(a, b), nextMin: next }));

/** Lower and upper threshold, °C. */
export const limits = fc
  .tuple(degrees(-5, 20), degrees(0.5, 25))
  .map(([lower, span]) => ({ lower, upper: lower + span }));

export const cutoff = fc.constantFrom(...CUTOFFS);
