import type { DegreeDays } from "../units.ts";
import { normalCdf, normalQuantile } from "../numeric/normal-distribution.ts";

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
export function shareWithin(requirement: Requirement, amount: DegreeDays): number {
  const { least, most, sigma } = requirement;
  if (amount <= 0) return least > 0 ? 0 : most > 0 ? 0 : 1;
  if (most === least) {
    if (least <= 0) return 1;
    return sigma === 0 ? Number(amount >= least) : normalCdf(Math.log(amount / least) / sigma);
  }
  if (sigma === 0) return Math.min(1, Math.max(0, (amount - least) / (most - least)));
  return meanShare(requirement, amount, atMost(least, amount, sigma), atMost(most, amount, sigma));
}

/** What multipliers of at most amount / v make up: of the animals, and of the mean of their multipliers. */
interface AtMost {
  readonly animals: number;
  readonly mean: number;
}

function atMost(v: number, amount: number, sigma: number): AtMost {
  if (v <= 0) return { animals: 1, mean: 1 };
  const z = Math.log(amount / v) / sigma;
  return { animals: normalCdf(z), mean: normalCdf(z + sigma) };
}

/** Mean over v from least to most of P(multiplier ≤ amount / v), integrated by parts. */
function meanShare(
  { least, most, sigma }: Requirement,
  amount: DegreeDays,
  old: AtMost,
  young: AtMost,
): number {
  const mean = amount * Math.exp((sigma * sigma) / 2);
  const [low, high] = [least * old.animals - mean * old.mean, most * young.animals - mean * young.mean];
  return Math.min(1, Math.max(0, (high - low) / (most - least)));
}

/**
 * The amount that a share of animals does not exceed; the inverse of {@link shareWithin}.
 * @param share Above 0 and below 1.
 */
export function amountAtShare(requirement: Requirement, share: number): DegreeDays {
  const { least, most, sigma } = requirement;
  const multiplier = multiplierAt(share, sigma);
  if (most === least) return least * multiplier;
  if (sigma === 0) return least + share * (most - least);
  // Newton's steps, kept inside a shrinking bracket: the share within is smooth and rises.
  const scale = (most - least) / Math.exp((sigma * sigma) / 2);
  let [low, high] = [least * multiplier, most * multiplier];
  // From where a normal distribution with about the same mean and spread has the share.
  const middle = (least + most) / 2;
  const deviation = Math.sqrt((most - least) ** 2 / 12 + (middle * sigma) ** 2);
  let amount = Math.min(high, Math.max(low, middle + deviation * normalQuantile(share)));
  for (let i = 0; i < 60; i++) {
    const [young, old] = [atMost(most, amount, sigma), atMost(least, amount, sigma)];
    const short = share - meanShare(requirement, amount, old, young);
    if (short > 0) low = amount;
    else high = amount;
    const next = amount + (short * scale) / (old.mean - young.mean);
    const step = (next >= low && next <= high ? next : (low + high) / 2) - amount;
    amount += step;
    // Steps shrink by squares: what is left after so small a one is below rounding.
    if (Math.abs(step) <= 1e-8 * amount) break;
  }
  return amount;
}
