/**
 * Share of a standard normal distribution at or below z, to about 1e-15. A forecast asks for it thousands of
 * times, so it takes a fixed number of steps.
 * @see Hart, J. F. et al. (1968), Computer Approximations, function 5666 (coefficients from memory; the tests
 *   hold it to a printed table and to an integral of the density).
 */
export function normalCdf(z: number): number {
  if (z < -8) return 0;
  if (z > 8) return 1;
  const x = Math.abs(z);
  const over =
    (((((0.0352624965998911 * x + 0.700383064443688) * x + 6.37396220353165) * x + 33.912866078383) * x +
      112.079291497871) *
      x +
      221.213596169931) *
      x +
    220.206867912376;
  const under =
    ((((((0.0883883476483184 * x + 1.75566716318264) * x + 16.064177579207) * x + 86.7807322029461) * x +
      296.564248779674) *
      x +
      637.333633378831) *
      x +
      793.826512519948) *
      x +
    440.413735824752;
  const tail = (Math.exp(-0.5 * x * x) * over) / under;
  return z > 0 ? 1 - tail : tail;
}

const ROOT = 1 / Math.sqrt(2 * Math.PI);

/** Density of a standard normal distribution. */
export function normalDensity(z: number): number {
  return ROOT * Math.exp(-0.5 * z * z);
}

// A forecast asks for the same three shares for each of its milestones.
const quantiles = new Map<number, number>();
const MOST_QUANTILES = 100;

/**
 * The z below which a share of a standard normal distribution lies.
 * @param share Above 0 and below 1.
 */
export function normalQuantile(share: number): number {
  if (share < 0.5) return -normalQuantile(1 - share);
  const known = quantiles.get(share);
  if (known !== undefined) return known;
  // Above the middle the distribution function is concave, so Newton's steps come up to the root from below.
  let z = 0;
  for (let i = 0; i < 60; i++) {
    const step = (share - normalCdf(z)) / normalDensity(z);
    z += step;
    if (Math.abs(step) < 1e-14) break;
  }
  if (quantiles.size >= MOST_QUANTILES) quantiles.clear();
  quantiles.set(share, z);
  return z;
}
