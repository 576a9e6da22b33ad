/**
 * Chance that Student's t is above a value: the upper tail.
 * @param t Any number. @param degrees Degrees of freedom, a whole number from 1.
 * @see Abramowitz & Stegun (1964), 26.7.3 and 26.7.4 (from memory): finite sums, exact for whole degrees.
 */
export function studentTail(t: number, degrees: number): number {
  const angle = Math.atan(t / Math.sqrt(degrees));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  let term = degrees % 2 === 0 ? sine : sine * cosine;
  let sum = degrees === 1 ? 0 : term;
  for (let k = degrees % 2 === 0 ? 2 : 3; k < degrees; k += 2) {
    term *= ((k - 1) / k) * cosine * cosine;
    sum += term;
  }
  // Twice the share between 0 and t.
  const central = degrees % 2 === 0 ? sum : (2 / Math.PI) * (angle + sum);
  return Math.max(0, (1 - central) / 2);
}
