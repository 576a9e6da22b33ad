import { type Cutoff, METHODS, degreeDaysEach } from "../../src/index.ts";
import { daysOf } from "./days.ts";
import { FLOORS, SINE_FLOORS } from "./floors.ts";
import { medians, ratios } from "./timing.ts";

const DAYS = 200_000;
const LOWER = 10;
const UPPER = 22;

/** Degree-days of columns, each method and cutoff against its own loop written by hand. */
export function benchDegreeDays(): void {
  const { min, max } = daysOf(DAYS);
  const out = new Float64Array(DAYS);
  const cases = [
    ...METHODS.map((method) => ({ method, cutoff: "horizontal" as Cutoff, floor: FLOORS[method] })),
    ...(["none", "intermediate", "vertical"] as const).map((cutoff) => ({
      method: "single-sine" as const,
      cutoff,
      floor: SINE_FLOORS[cutoff],
    })),
  ];
  console.log(`degreeDaysEach, ${DAYS} days, against the same formula written by hand`);
  for (const { method, cutoff, floor } of cases) {
    const options = { lower: LOWER, upper: UPPER, method, cutoff };
    const tasks = [
      () => floor(min, max, LOWER, UPPER, out),
      () => degreeDaysEach(min, max, options, out),
    ];
    const [hand = NaN, own = NaN] = medians(tasks, 31);
    const [ratio = NaN] = ratios(tasks, 31);
    const perDay = (ms: number): string => ((ms * 1e6) / DAYS).toFixed(1).padStart(5);
    console.log(
      `  ${method.padEnd(16)} ${cutoff.padEnd(13)} ${perDay(own)} ns a day, by hand ${perDay(hand)}: ${ratio.toFixed(2)} x`,
    );
  }
}
