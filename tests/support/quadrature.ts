// Integrals by Gauss-Legendre rules between numerically found kinks: shares no formula with src.

const NODES: readonly (readonly [number, number])[] = legendre(24);

/** Mean over u from 0 to 1 of f, which may have kinks or jumps where one of `levels` - g changes sign. */
export function meanOver(
  f: (u: number) => number,
  g: (u: number) => number,
  levels: readonly number[],
): number {
  const cuts = [0, 0.25, 0.5, 0.75, 1];
  const scan = 400;
  for (const level of levels) {
    for (let i = 0; i < scan; i++) {
      let [a, b] = [i / scan, (i + 1) / scan];
      if (g(a) > level === g(b) > level) continue;
      const risen = g(b) > level;
      for (let k = 0; k < 60; k++) {
        const middle = (a + b) / 2;
        if (g(middle) > level === risen) b = middle;
        else a = middle;
      }
      cuts.push((a + b) / 2);
    }
  }
  cuts.sort((a, b) => a - b);
  let sum = 0;
  for (let i = 1; i < cuts.length; i++) {
    const [a, b] = [cuts[i - 1] ?? 0, cuts[i] ?? 0];
    // The square root of a sine's bend at a crossing near its top needs a fine rule: four panels.
    for (let panel = 0; panel < 4; panel++) {
      const [p, q] = [a + ((b - a) * panel) / 4, a + ((b - a) * (panel + 1)) / 4];
      for (const [x, w] of NODES) sum += ((q - p) / 2) * w * f((p + q) / 2 + ((q - p) / 2) * x);
    }
  }
  return sum;
}

/** Nodes and weights of the Gauss-Legendre rule on -1 to 1, by Newton's method on the polynomial. */
function legendre(n: number): [number, number][] {
  return Array.from({ length: n }, (_, i): [number, number] => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let k = 0; k < 100; k++) {
      let [p0, p1] = [1, x];
      for (let j = 2; j <= n; j++) [p0, p1] = [p1, ((2 * j - 1) * x * p1 - (j - 1) * p0) / j];
      slope = (n * (x * p1 - p0)) / (x * x - 1);
      const step = p1 / slope;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    return [x, 2 / ((1 - x * x) * slope * slope)];
  });
}
