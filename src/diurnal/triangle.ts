// A day as straight lines between its extremes. Lindsey, A. A. & Newman, J. E. (1956), Ecology 37, 812-823
// (citation from memory); Sevacherian, V., Stern, V. M. & Mueller, A. J. (1977), J. Econ. Entomol. 70,
// 399-402 (volume and pages read). The closed forms are derived and checked against quadrature.

/**
 * Mean over the day of the excess above a temperature, max(T - t, 0), on straight lines. It checks nothing, as
 * `sineExcess`.
 * @param t Temperature to exceed, in the unit of the extremes.
 * @param min Lowest temperature. @param max Highest temperature, not below `min`.
 * @returns Degrees, in the unit of the extremes; NaN where one of the three is NaN.
 * @example
 * triangleExcess(10, 0, 20) // → 2.5
 */
export function triangleExcess(t: number, min: number, max: number): number {
  if (t >= max) return min <= max ? 0 : Number.NaN;
  const range = max - min;
  if (t <= min) return min + range / 2 - t;
  return ((max - t) / range) * ((max - t) / 2);
}

/** Share of the day above a temperature on straight lines, 0 to 1. Parameters as {@link triangleExcess}. */
export function triangleAbove(t: number, min: number, max: number): number {
  if (t >= max) return 0;
  if (t < min) return 1;
  return (max - t) / (max - min);
}
