import { METHODS, degreeDays, degreeDaysEach } from "../../src/index.ts";
import { medians } from "./timing.ts";

/** The floor: single sine with a horizontal cutoff, written out for one pair of thresholds. */
function byHand(min: Float64Array, max: Float64Array, lower: number, upper: number, out: Float64Array): void {
  const excess = (t: number, low: number, high: number): number => {
    if (t >= high) return 0;
    const amplitude = (high - low) / 2;
    const below = low + amplitude - t;
    if (t <= low) return below;
    return (
      (below * (Math.PI / 2 + Math.asin(below / amplitude)) +
        Math.sqrt(amplitude * amplitude - below * below)) /
      Math.PI
    );
  };
  for (let i = 0; i < out.length; i++) {
    const low = min[i] ?? 0;
    const high = max[i] ?? 0;
    out[i] = excess(lower, low, high) - excess(upper, low, high);
  }
}

/** Degree-days of columns, against the same formula written by hand. */
export function benchDegreeDays(): void {
  const DAYS = 1_000_000;
  const min = Float64Array.from({ length: DAYS }, (_, i) => 12 + 8 * Math.sin(i) - 4 * Math.cos(i * 0.7));
  const max = min.map((low, i) => low + 6 + 5 * Math.sin(i * 1.3) ** 2);
  const out = new Float64Array(DAYS);

  const [floor = Number.NaN, ...each] = medians(
    [
      () => byHand(min, max, 10, 22, out),
      ...METHODS.map((method) => () => degreeDaysEach(min, max, { lower: 10, upper: 22, method }, out)),
      () => {
        for (let i = 0; i < DAYS; i++)
          out[i] = degreeDays({ min: min[i] ?? 0, max: max[i] ?? 0 }, { lower: 10, upper: 22 });
      },
    ],
    15,
  );
  console.log(`${DAYS} days, single sine written by hand: ${((floor * 1e6) / DAYS).toFixed(1)} ns a day`);
  [...METHODS, "degreeDays, a day at a time"].forEach((name, i) => {
    console.log(`  ${name.padEnd(28)} ${((each[i] ?? Number.NaN) / floor).toFixed(2)} x`);
  });
}
