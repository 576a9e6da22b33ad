import { betaCdf } from "./beta-distribution.ts";

/**
 * Chance that at least so many of some animals do what each does with the same chance, independently.
 * @param wanted A whole number.
 * @param animals A whole number from 1.
 * @param share Chance of each, 0 to 1.
 * @example
 * binomialTail(1, 2, 0.5) // → 0.75
 * @see Abramowitz & Stegun (1964), Handbook of Mathematical Functions, 26.5.24 (from memory): the tail of a
 *   binomial distribution is an incomplete beta function.
 */
export function binomialTail(wanted: number, animals: number, share: number): number {
  if (wanted <= 0) return 1;
  if (wanted > animals || share <= 0) return 0;
  if (share >= 1) return 1;
  // Exact also where one in a million is asked for, which the beta function is not.
  if (wanted === 1) return -Math.expm1(animals * Math.log1p(-share));
  return betaCdf(share, wanted, animals - wanted + 1);
}
