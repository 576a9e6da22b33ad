// A day as one sine wave between its extremes: mean M, half range A. Both numbers depend on the two
// extremes alone, not on when they fall, and a half wave from one extreme to the other has the same two.
// Single sine: Baskerville, G. L. & Emin, P. (1969), Ecology 50, 514-517 (volume and pages read in a text
// that quotes it). The closed forms are derived and checked against quadrature.

/**
 * Mean over the day of the excess above a temperature, max(T - t, 0), on a sine wave. It checks nothing, for
 * loops that have looked at their days: `degreeDays` does. Degree-days with a horizontal cutoff are the
 * excess above the lower threshold less that above the upper one.
 * @param t Temperature to exceed, in the unit of the extremes.
 * @param min Lowest temperature. @param max Highest temperature, not below `min`.
 * @returns Degrees, in the unit of the extremes; NaN where one of the three is NaN.
 * @example
 * sineExcess(10, 12, 30) - sineExcess(22, 12, 30) // → degreeDays({ min: 12, max: 30 }, { lower: 10, upper: 22 })
 */
export function sineExcess(t: number, min: number, max: number): number {
  const above = max - t;
  // A missing minimum is no cold day.
  if (above <= 0) return min <= max ? 0 : Number.NaN;
  const half = (max - min) / 2;
  const below = t - min;
  const overMean = min + half - t;
  if (below <= 0) return overMean;
  // Upside down the wave is the same wave: what is missing below t mirrors what there is above it.
  const near = above < below ? above : below;
  const depth = near / half;
  return (overMean > 0 ? overMean : 0) + near * Math.sqrt(depth) * crest(depth);
}

/** Share of the day above a temperature on a sine wave, 0 to 1. Parameters as {@link sineExcess}. */
export function sineAbove(t: number, min: number, max: number): number {
  if (t >= max) return 0;
  if (t < min) return 1;
  const amplitude = (max - min) / 2;
  const share = (min + amplitude - t) / amplitude;
  return share <= -1 ? 0 : share >= 1 ? 1 : 0.5 + Math.asin(share) / Math.PI;
}

/**
 * The excess of a wave of amplitude 1 above a level that lies s below its top, divided by s^1.5:
 * (sqrt(1 - x²) - x·acos x) / (π·s^1.5) with x = 1 - s, for s from 0 to 1.
 *
 * The quotient is smooth (the nearest s at which it is not is 2), so a short polynomial takes the place of
 * acos at half its cost, and near the top nothing cancels. Derived: interpolation at 15 Chebyshev points in
 * arithmetic of 60 digits; relative error below 3e-15. Terms are paired (Estrin) because a processor adds
 * and multiplies several at a time. @internal
 */
export function crest(s: number): number {
  const s2 = s * s;
  const s4 = s2 * s2;
  const p0 = 0.3001054387190358 + s * 0.015005271935772457;
  const p2 = 0.0024115615744572656 + s * 0.0005582314538663021;
  const p4 = 0.00015542273995319442 + s * 4.836435053357271e-5;
  const p6 = 1.659297283495604e-5 + s * 4.494805310549169e-6;
  const p8 = 5.7479456603915915e-6 - s * 6.376237905608859e-6;
  const p10 = 1.0461338101663576e-5 - s * 9.802648263824954e-6;
  const p12 = 6.523718065047396e-6 - s * 2.531570856225082e-6 + s2 * 4.850872244559667e-7;
  return p0 + s2 * p2 + s4 * (p4 + s2 * p6 + s4 * (p8 + s2 * p10 + s4 * p12));
}
