import type { DegreeDays } from "../units.ts";
import { normalCdf, normalQuantile } from "./normal-distribution.ts";

/**
 * Degree-days that the animals of a cohort still need to reach a stage. Two things differ between them: an
 * animal needs `multiplier` times what the middle animal needs (lognormal, middle 1), and its age within
 * the stage it was found in lies anywhere in a range. So the need of an animal is multiplier times an
 * amount that is uniform between `least` and `most`.
 */
export interface Requirement {
  /** Middle animal's need at the greatest age. */
  readonly least: DegreeDays;
  /** Middle animal's need at the smallest age; equal to `least` when the age is known. */
  readonly most: DegreeDays;
  /** Standard deviation of the multiplier's logarithm. */
  readonly sigma: number;
}

/** Sigma of a lognormal multiplier with a coefficient of variation. */
export function sigmaOf(cv: number): number {
  return Math.sqrt(Math.log1p(cv * cv));
}

/** The multiplier that a share of animals does not exceed. */
export function multiplierAt(share: number, sigma: number): number {
  return sigma === 0 ? 1 : Math.exp(sigma * normalQuantile(share));
}

/**
 * Share of animals that need no more than an amount.
 * @param amount Degree-days, 0 or more.
 */
export function shareWithin({ least, most, sigma }: Requirement, amount: DegreeDays): number {
  if (amount <= 0) return least > 0 ? 0 : most > 0 ? 0 : 1;
  if (most === least) {
    if (least <= 0) return 1;
    return sigma === 0 ? Number(amount >= least) : normalCdf(Math.log(amount / least) / sigma);
  }
  if (sigma === 0) return Math.min(1, Math.max(0, (amount - least) / (most - least)));
  // Mean over v from least to most of P(multiplier ≤ amount / v), integrated by parts.
  const upTo = (v: number): number => {
    if (v <= 0) return 0;
    const z = Math.log(amount / v) / sigma;
    return v * normalCdf(z) - amount * Math.exp((sigma * sigma) / 2) * normalCdf(z + sigma);
  };
  const belowZero = amount * Math.exp((sigma * sigma) / 2);
  const start = least <= 0 ? -belowZero : upTo(least);
  return Math.min(1, Math.max(0, (upTo(most) - start) / (most - least)));
}

/**
 * The amount that a share of animals does not exceed; the inverse of {@link shareWithin}.
 * @param share Above 0 and below 1.
 */
export function amountAtShare(requirement: Requirement, share: number): DegreeDays {
  const { least, most, sigma } = requirement;
  if (most === least) return least * multiplierAt(share, sigma);
  const low = least * multiplierAt(share, sigma);
  const high = most * multiplierAt(share, sigma);
  return risingRoot((amount) => shareWithin(requirement, amount) - share, low, high);
}

/**
 * Where a function that rises from at most 0 to at least 0 is 0: false position with the stale end's value
 * halved (the Illinois rule), which keeps its bracket. Every third step halves the bracket instead: at a jump
 * or a sharp bend, such as the end of a cold spell, the rule alone can creep.
 */
export function risingRoot(f: (x: number) => number, low: number, high: number, tolerance = 1e-10): number {
  let [a, b, fa, fb] = [low, high, f(low), f(high)];
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  let side = 0;
  for (let i = 0; i < 200 && b - a > tolerance * Math.max(1, Math.abs(b)); i++) {
    const x = i % 3 === 2 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0) {
      [b, fb] = [x, fx];
      if (side === 1) fa /= 2;
      side = 1;
    } else {
      [a, fa] = [x, fx];
      if (side === -1) fb /= 2;
      side = -1;
    }
  }
  return (a + b) / 2;
}
