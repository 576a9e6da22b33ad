import {
  METHODS,
  type Method,
  accumulateDegreeDays,
  dailyTemperatures,
  degreeDays,
  degreeDaysEach,
  linearResponse,
  thermalClock,
  timelineOf,
} from "../../src/index.ts";
import { daysOf } from "./days.ts";
import { FLOORS, type Floor, SINE_FLOORS } from "./floors.ts";
import { paired } from "./timing.ts";

const DAYS = 100_000;
const ROUNDS = 41;
const LIMITS = { lower: 10, upper: 22 };

const perDay = (ms: number | undefined, days: number): string =>
  `${(((ms ?? Number.NaN) * 1e6) / days).toFixed(1).padStart(7)} ns a day`;

/** Degree-days of columns, each method and cutoff against its own loop written by hand. */
export function benchColumns(): void {
  const { min, max } = daysOf(DAYS);
  const out = new Float64Array(DAYS);
  const against = (
    method: Method,
    cutoff: "none" | "horizontal" | "intermediate" | "vertical",
    floor: Floor,
  ) => {
    const options = { ...LIMITS, method, cutoff };
    const { medians, ratios } = paired(
      [() => floor(min, max, LIMITS.lower, LIMITS.upper, out), () => degreeDaysEach(min, max, options, out)],
      ROUNDS,
    );
    const [hand, own] = medians.map((ms) => perDay(ms, DAYS));
    console.log(
      `  ${method.padEnd(16)} ${cutoff.padEnd(13)} ${own}, by hand ${hand}: ${ratios[1]?.toFixed(2)} x`,
    );
  };
  console.log(
    `\nColumns: degreeDaysEach, ${DAYS} days, against the textbook formula written by hand, unchecked`,
  );
  for (const method of METHODS) against(method, "horizontal", FLOORS[method]);
  for (const cutoff of ["none", "intermediate", "vertical"] as const) {
    against("single-sine", cutoff, SINE_FLOORS[cutoff]);
  }
}

/** The same degree-days day by day as objects, and clocks over them. */
export function benchObjects(): void {
  const count = 1461;
  const { min, max } = daysOf(count);
  const out = new Float64Array(count);
  const series = dailyTemperatures("2013-01-01", min, max);
  const days = Array.from(min, (low, i) => ({ min: low, max: max[i] ?? low }));
  const response = linearResponse(LIMITS);
  const from = Date.UTC(2013, 0, 1);
  const timeline = timelineOf(series, { method: "single-sine", zone: null, from, limits: response });
  let total = 0;
  const { medians, ratios } = paired(
    [
      () => degreeDaysEach(min, max, LIMITS, out),
      () => {
        for (const day of days) total += degreeDays(day, LIMITS);
      },
      () => accumulateDegreeDays(series, LIMITS),
      () => timelineOf(series, { method: "single-sine", zone: null, from, limits: response }),
      () => thermalClock(timeline, response),
    ],
    10 * ROUNDS,
    2000,
  );
  console.log(
    `\nDays as objects, four years, against the columns (a running total of ${Math.round(total)} kept it honest)`,
  );
  [
    "degreeDaysEach",
    "degreeDays",
    "accumulateDegreeDays",
    "timelineOf, three arcs a day",
    "thermalClock on it",
  ].forEach((name, i) => {
    console.log(`  ${name.padEnd(30)} ${perDay(medians[i], count)}: ${ratios[i]?.toFixed(2)} x`);
  });
}
