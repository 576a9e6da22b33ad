// Ratios of medians, paired in one process. Nothing here is asserted: machines differ.
import { readFileSync } from "node:fs";
import { cpus } from "node:os";
import {
  METHODS,
  accumulateDegreeDays,
  danausPlexippus,
  degreeDays,
  degreeDaysEach,
  dailyTemperatures,
  findSpecies,
  forecast,
  learn,
  logEntry,
  weatherEnsemble,
} from "../../src/index.ts";
import { readTemperatures } from "../../src/read/index.ts";

/** Median times of two or more tasks, ms, each round running all of them one after the other. */
function medians(tasks: readonly (() => unknown)[], rounds: number): number[] {
  const times = tasks.map((): number[] => []);
  for (let round = 0; round < rounds + 3; round++) {
    tasks.forEach((task, i) => {
      const begun = performance.now();
      task();
      // The first rounds are for the compiler.
      if (round >= 3) times[i]?.push(performance.now() - begun);
    });
  }
  return times.map((list) => list.sort((a, b) => a - b)[list.length >> 1] ?? Number.NaN);
}

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

const DAYS = 1_000_000;
const min = Float64Array.from({ length: DAYS }, (_, i) => 12 + 8 * Math.sin(i) - 4 * Math.cos(i * 0.7));
const max = min.map((low, i) => low + 6 + 5 * Math.sin(i * 1.3) ** 2);
const out = new Float64Array(DAYS);

console.log(`${cpus()[0]?.model}, Node ${process.version}, ${DAYS} days`);
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
console.log(`single sine written by hand: ${((floor * 1e6) / DAYS).toFixed(1)} ns a day`);
[...METHODS, "degreeDays, a day at a time"].forEach((name, i) => {
  console.log(`  ${name.padEnd(28)} ${((each[i] ?? Number.NaN) / floor).toFixed(2)} x`);
});

const { series: temperatures } = readTemperatures(
  readFileSync("fixtures/temperatures/new-york-2012-2015.csv", "utf8"),
  {
    unit: "C",
  },
);
const egg = { stage: "egg", on: "2015-06-08" } as const;
const ladybird = findSpecies("coccinella-septempunctata");
const [season = Number.NaN, ...forecasts] = medians(
  [
    () => accumulateDegreeDays(temperatures, { lower: 10, from: "2015-01-01", to: "2015-12-31" }),
    () => forecast({ lifeCycle: danausPlexippus, found: egg, temperatures }),
    () => forecast({ lifeCycle: danausPlexippus, found: egg, temperatures, zone: "America/New_York" }),
    () => forecast({ lifeCycle: ladybird, found: egg, temperatures }),
  ],
  31,
);
console.log(`a year of degree-days: ${(season * 1000).toFixed(0)} µs`);
["forecast, one clock", "forecast, one clock, time zone", "forecast, six clocks"].forEach((name, i) => {
  console.log(`  ${name.padEnd(30)} ${((forecasts[i] ?? Number.NaN) * 1000).toFixed(0)} µs`);
});

if (temperatures.kind !== "daily") throw new Error("the bundled record holds daily extremes");
// Thirty past years, made by laying the four real ones end to end.
const record = temperatures;
const years = (column: Float64Array): number[] => Array.from({ length: 7 }, () => [...column]).flat();
const past = dailyTemperatures("1986-01-01", years(record.min), years(record.max));
const ensemble = weatherEnsemble({ observed: record, until: "2015-06-15", past, exclude: [2015], days: 200 });
const [few = Number.NaN, many = Number.NaN, taught = Number.NaN] = medians(
  [
    () =>
      forecast({
        lifeCycle: danausPlexippus,
        found: { ...egg, count: 10 },
        temperatures: ensemble,
      }),
    () =>
      forecast({
        lifeCycle: danausPlexippus,
        found: { ...egg, count: 10_000 },
        temperatures: ensemble,
      }),
    () =>
      learn({ lifeCycle: danausPlexippus, found: egg, temperatures: ensemble }, [
        logEntry({ stage: "instar-1", on: "2015-06-11", count: 6 }),
        logEntry({ stage: "instar-2", on: "2015-06-13", count: 6 }),
      ]),
  ],
  15,
);
console.log(`ensemble of ${ensemble.groups[0]?.members.length} years, nine milestones, exact quantiles`);
console.log(`  10 animals                     ${few.toFixed(1)} ms`);
console.log(`  10 000 animals                 ${many.toFixed(1)} ms`);
console.log(`  learning from a log of 12      ${taught.toFixed(1)} ms`);
