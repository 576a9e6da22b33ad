// A day as one sine wave between its extremes: mean M, half range A. Both numbers depend on the two
// extremes alone, not on when they fall, and a half wave from one extreme to the other has the same two.
// Single sine: Baskerville, G. L. & Emin, P. (1969), Ecology 50, 514-517 (volume and pages read in a text
// that quotes it). The closed forms are derived and checked against quadrature.

/**
 * Mean over the day of the excess above a temperature, max(T - t, 0), on a sine wave.
 * @param t Temperature to exceed, in the unit of the extremes.
 * @param min Lowest temperature. @param max Highest temperature, not below `min`.
 * @returns Degrees, in the unit of the extremes.
 */
export function sineExcess(t: number, min: number, max: number): number {
  if (t >= max) return 0;
  const amplitude = (max - min) / 2;
  const below = min + amplitude - t;
  if (t <= min) return below;
  // A temperature within a rounding step of an extreme can come out just beyond it.
  if (below <= -amplitude) return 0;
  if (below >= amplitude) return below;
  // sqrt(A² - d²) is A·cos(asin(d / A)) without the second trigonometric call.
  return (
    (below * (Math.PI / 2 + Math.asin(below / amplitude)) +
      Math.sqrt(amplitude * amplitude - below * below)) /
    Math.PI
  );
}

/** Share of the day above a temperature on a sine wave, 0 to 1. Parameters as {@link sineExcess}. */
export function sineAbove(t: number, min: number, max: number): number {
  if (t >= max) return 0;
  if (t < min) return 1;
  const amplitude = (max - min) / 2;
  const share = (min + amplitude - t) / amplitude;
  return share <= -1 ? 0 : share >= 1 ? 1 : 0.5 + Math.asin(share) / Math.PI;
}
