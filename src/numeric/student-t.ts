/**
 * The t below which a share of Student's distribution lies.
 * @param share Above 0 and below 1.
 * @param freedom Degrees of freedom, a whole number from 1.
 * @see Abramowitz & Stegun (1964), Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (from memory): the
 *   distribution function for whole degrees of freedom is a finite sum.
 */
export function studentQuantile(share: number, freedom: number): number {
  if (share < 0.5) return -studentQuantile(1 - share, freedom);
  let [low, high] = [0, 1];
  while (studentCdf(high, freedom) < share && high < 1e12) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-12 * Math.max(1, high); i++) {
    const middle = (low + high) / 2;
    if (studentCdf(middle, freedom) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Share of Student's distribution at or below t, for whole degrees of freedom. */
export function studentCdf(t: number, freedom: number): number {
  const angle = Math.atan(t / Math.sqrt(freedom));
  const cosine = Math.cos(angle) ** 2;
  const even = freedom % 2 === 0;
  let [sum, term] = [even || freedom > 1 ? 1 : 0, 1];
  for (let k = even ? 2 : 3; k <= freedom - 2; k += 2) {
    term *= (cosine * (k - 1)) / k;
    sum += term;
  }
  const between = even
    ? Math.sin(angle) * sum
    : (2 / Math.PI) * (angle + Math.sin(angle) * Math.cos(angle) * sum);
  return 0.5 + between / 2;
}

/** Share of Student's distribution above t, for whole degrees of freedom: the upper tail, small ones too. */
export function studentTail(t: number, freedom: number): number {
  return Math.max(0, studentCdf(-t, freedom));
}
