import { risingRoot } from "./root.ts";

// Lanczos' series with g = 7 and nine terms; the coefficients are Godfrey's (from memory), and the tests
// hold the result to R's.
const LANCZOS_G = 7;
const LANCZOS = [
  0.999_999_999_999_809_93, 676.520_368_121_885_1, -1259.139_216_722_402_8, 771.323_428_777_653_13,
  -176.615_029_162_140_59, 12.507_343_278_686_905, -0.138_571_095_265_720_12, 9.984_369_578_019_571_6e-6,
  1.505_632_735_149_311_6e-7,
];

/**
 * Natural logarithm of the gamma function.
 * @param x Above 0.
 * @see Lanczos, C. (1964), A precision approximation of the gamma function, SIAM J. Numer. Anal. B 1:86-96
 *   (from memory).
 */
export function logGamma(x: number): number {
  // Below a half the series loses digits; Γ(x) = Γ(x + 1) / x.
  if (x < 0.5) return logGamma(x + 1) - Math.log(x);
  const base = x + LANCZOS_G - 0.5;
  const sum = LANCZOS.reduce((total, c, i) => total + (i === 0 ? c : c / (x - 1 + i)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(base) - base + Math.log(sum);
}

/**
 * Share of a beta distribution at or below x: the regularised incomplete beta function, by its continued
 * fraction.
 * @param x 0 to 1.
 * @param a Above 0.
 * @param b Above 0.
 * @see DLMF 8.17.22, dlmf.nist.gov/8.17 (from memory), evaluated by Lentz' method.
 */
export function betaCdf(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The fraction converges fast only below the middle; above it the other tail is computed.
  if (x > (a + 1) / (a + b + 2)) return 1 - betaCdf(1 - x, b, a);
  const front = Math.exp(
    logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x) - Math.log(a),
  );
  let [c, d] = [1, 1 / (1 - ((a + b) * x) / (a + 1))];
  let fraction = d;
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    fraction *= c * d;
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    const change = c * d;
    fraction *= change;
    if (Math.abs(change - 1) < 1e-15) break;
  }
  return Math.min(1, front * fraction);
}

/**
 * The x below which a share of a beta distribution lies; the inverse of {@link betaCdf}.
 * @param share 0 to 1.
 * @returns To about 1e-15. Parameters far below 1/2 put quantiles closer to 0 than that.
 */
export function betaQuantile(share: number, a: number, b: number): number {
  if (share <= 0) return 0;
  if (share >= 1) return 1;
  return risingRoot((x) => betaCdf(x, a, b) - share, 0, 1, 1e-15);
}
