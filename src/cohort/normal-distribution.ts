/**
 * Share of a standard normal distribution at or below z.
 * @see Marsaglia, G. (2004), Evaluating the normal distribution, J. Stat. Softw. 11(4) (from memory); its
 *   series is exact to about 1e-15 here.
 */
export function normalCdf(z: number): number {
  // The series below would never settle on NaN.
  if (Number.isNaN(z)) return z;
  if (z < -8) return 0;
  if (z > 8) return 1;
  let [sum, previous, term] = [z, 0, z];
  for (let i = 3; sum !== previous; i += 2) {
    previous = sum;
    term *= (z * z) / i;
    sum += term;
  }
  return 0.5 + sum * normalDensity(z);
}

/** Density of a standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/**
 * The z below which a share of a standard normal distribution lies.
 * @param share Above 0 and below 1.
 */
export function normalQuantile(share: number): number {
  if (share < 0.5) return -normalQuantile(1 - share);
  // Above the middle the distribution function is concave, so Newton's steps come up to the root from below.
  let z = 0;
  for (let i = 0; i < 60; i++) {
    const step = (share - normalCdf(z)) / normalDensity(z);
    z += step;
    if (Math.abs(step) < 1e-14) break;
  }
  return z;
}
