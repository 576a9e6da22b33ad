/**
 * Akaike's information criterion with the correction for few observations, for least squares with normal errors:
 * n·ln(RSS/n) + 2k + 2k(k + 1)/(n - k - 1). Constants that all models of the same data share are left out.
 * @param residualSumOfSquares Weighted residual sum of squares, above 0.
 * @param n Observations.
 * @param k Parameters of the curve and one more for the variance.
 * @returns Without a unit; only differences have a meaning. `null` where n is k + 1 or less.
 * @see Hurvich, C. M. & Tsai, C.-L. (1989), Biometrika 76, 297-307 (from memory).
 */
export function correctedAkaike(residualSumOfSquares: number, n: number, k: number): number | null {
  if (n <= k + 1) return null;
  return n * Math.log(residualSumOfSquares / n) + 2 * k + (2 * k * (k + 1)) / (n - k - 1);
}

/**
 * Relative sizes of criteria among models of the same data: exp(-Δ/2), divided by their sum.
 */
export function akaikeWeights(criteria: readonly number[]): number[] {
  const least = Math.min(...criteria);
  const likelihoods = criteria.map((criterion) => Math.exp((least - criterion) / 2));
  const sum = likelihoods.reduce((total, likelihood) => total + likelihood, 0);
  return likelihoods.map((likelihood) => likelihood / sum);
}
