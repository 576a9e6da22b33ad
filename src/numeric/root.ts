/**
 * Where a function that rises from at most 0 to at least 0 is 0. It steps by inverse quadratic interpolation
 * while the last three points promise that it works and halves the bracket otherwise, so that a jump or a sharp
 * bend, such as the end of a cold spell, costs no more than halving would.
 * @param tolerance Of the root, relative where it is above 1.
 * @see Chandrupatla, T. R. (1997), Adv. Eng. Softw. 28, 145-149 (from memory).
 */
export function risingRoot(f: (x: number) => number, low: number, high: number, tolerance = 1e-10): number {
  const scale = Math.max(1, Math.abs(low), Math.abs(high));
  return rootBetween(f, { x: low, f: f(low) }, { x: high, f: f(high) }, tolerance * scale);
}

/** {@link risingRoot} between two points at which the function was asked already, to an absolute tolerance. */
export function rootBetween(
  f: (x: number) => number,
  low: { readonly x: number; readonly f: number },
  high: { readonly x: number; readonly f: number },
  tolerance: number,
): number {
  let [a, b, fa, fb] = [low.x, high.x, low.f, high.f];
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  // The root lies between a, the newest point, and b; c is the point before. The first step is a secant.
  let t = fa / (fa - fb);
  for (let i = 0; i < 200; i++) {
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const least = tolerance / Math.abs(b - a);
    if (fa === 0 || fb === 0 || least > 0.5) return best;
    const x = a + Math.min(1 - least, Math.max(least, t)) * (b - a);
    const fx = f(x);
    let [c, fc] = [a, fa];
    if (fx > 0 !== fa > 0) [c, b, fc, fb] = [b, a, fb, fa];
    [a, fa] = [x, fx];
    const [xi, phi] = [(a - b) / (c - b), (fa - fb) / (fc - fb)];
    t =
      phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
        ? (fa / (fb - fa)) * (fc / (fb - fc)) + (((c - a) / (b - a)) * (fa / (fc - fa)) * fb) / (fc - fb)
        : 0.5;
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
