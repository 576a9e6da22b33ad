import { readFileSync } from "node:fs";
import {
  accumulateDegreeDays,
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

/** Forecasts, ensembles and learning on the bundled record. */
export function benchForecasts(): void {
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
  const ensemble = weatherEnsemble({
    observed: record,
    until: "2015-06-15",
    past,
    exclude: [2015],
    days: 200,
  });
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
}
