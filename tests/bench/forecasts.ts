// Forecasts, ensembles and learning. Nothing here is asserted: machines differ.
import { readFileSync } from "node:fs";
import {
  type DailyTemperatures,
  danausPlexippus,
  dailyTemperatures,
  findSpecies,
  forecast,
  learn,
  logEntry,
  weatherEnsemble,
} from "../../src/index.ts";
import { readTemperatures } from "../../src/read/index.ts";
import { medians } from "./timing.ts";

const ZONE = "America/New_York";
const FOUND = { stage: "egg", on: "2015-06-08" } as const;

function print(tasks: Readonly<Record<string, () => unknown>>, rounds: number): void {
  const times = medians(Object.values(tasks), rounds);
  Object.keys(tasks).forEach((name, i) => {
    console.log(`  ${name.padEnd(44)} ${(times[i] ?? Number.NaN).toFixed(3).padStart(9)} ms`);
  });
}

/** Thirty past years, made by laying the four real ones end to end. */
function pastYears({ min, max }: DailyTemperatures): DailyTemperatures {
  const often = (column: Float64Array): number[] => Array.from({ length: 7 }, () => [...column]).flat();
  return dailyTemperatures("1986-01-01", often(min), often(max));
}

/** Prints the times of forecasts on the bundled record. */
export function benchForecasts(): void {
  const text = readFileSync("fixtures/temperatures/new-york-2012-2015.csv", "utf8");
  const { series: temperatures } = readTemperatures(text, { unit: "C" });
  if (temperatures.kind !== "daily") throw new Error("the bundled record holds daily extremes");
  const ensemble = weatherEnsemble({
    observed: temperatures,
    until: "2015-06-15",
    past: pastYears(temperatures),
    exclude: [2015],
    days: 200,
  });
  const monarch = { lifeCycle: danausPlexippus, found: FOUND };
  const ladybird = { lifeCycle: findSpecies("coccinella-septempunctata"), found: FOUND };
  const hatched = [logEntry({ stage: "instar-1", on: "2015-06-11", count: 6 })];
  const log = [...hatched, logEntry({ stage: "instar-2", on: "2015-06-13", count: 6 })];
  const learned = learn({ ...monarch, temperatures: ensemble }, log);
  const learnedHere = learn({ ...ladybird, temperatures: ensemble }, hatched);

  console.log("forecast of a season, nine milestones");
  print(
    {
      "one clock": () => forecast({ ...monarch, temperatures }),
      "one clock, time zone": () => forecast({ ...monarch, temperatures, zone: ZONE }),
      "one clock, learned from a log of 12": () => forecast({ ...monarch, temperatures, learned }),
    },
    1001,
  );
  console.log(`ensemble of ${ensemble.groups[0]?.members.length} years, nine milestones, exact quantiles`);
  print(
    {
      "10 animals": () => forecast({ ...monarch, found: { ...FOUND, count: 10 }, temperatures: ensemble }),
      "10 000 animals": () =>
        forecast({ ...monarch, found: { ...FOUND, count: 10_000 }, temperatures: ensemble }),
      "learned from a log of 12": () => forecast({ ...monarch, temperatures: ensemble, learned }),
      "learning from a log of 12": () => learn({ ...monarch, temperatures: ensemble }, log),
    },
    31,
  );
  console.log("six clocks, one for each pair of thresholds");
  print(
    {
      forecast: () => forecast({ ...ladybird, temperatures }),
      "of known age": () => forecast({ ...ladybird, found: { ...FOUND, age: "new" }, temperatures }),
      ensemble: () => forecast({ ...ladybird, temperatures: ensemble }),
      "ensemble, of known age": () =>
        forecast({ ...ladybird, found: { ...FOUND, age: "new" }, temperatures: ensemble }),
      "ensemble, learned from a log of 6": () =>
        forecast({ ...ladybird, temperatures: ensemble, learned: learnedHere }),
    },
    5,
  );
}
