const RATIO = (Math.sqrt(5) - 1) / 2;

/**
 * Where a function that rises to one top and falls again is highest, by golden section: each step keeps the
 * better part of the bracket and needs one more value.
 * @param f The function.
 * @param low,high Bracket of the top.
 * @param tolerance Width of the bracket at which to stop.
 * @example
 * goldenSection((x) => -((x - 2) ** 2), 0, 5, 1e-6).toFixed(3) // → "2.000"
 * @see Kiefer, J. (1953), Proc. Am. Math. Soc. 4:502-506 (from memory).
 */
export function goldenSection(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number {
  let [a, b] = [low, high];
  let [c, d] = [b - RATIO * (b - a), a + RATIO * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  while (b - a > tolerance) {
    if (fc >= fd) {
      [b, d, fd] = [d, c, fc];
      c = b - RATIO * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + RATIO * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
}
