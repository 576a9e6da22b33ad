import { readFileSync } from "node:fs";
import { join } from "node:path";
import { forecast } from "../../src/forecast/forecast.ts";
import { readLog, readTemperatures } from "../../src/read/index.ts";
import { findSpecies } from "../../src/species/catalogue.ts";

const fixture = (name: string): string =>
  readFileSync(join(import.meta.dirname, "../../fixtures", name), "utf8");

/** Daily extremes of New York, 2012 to 2015. */
export const newYork = readTemperatures(fixture("temperatures/new-york-2012-2015.csv"), { unit: "C" }).series;

/** The invented log of the first notebook. */
export const log = readLog(fixture("logs/invented-season.csv")).entries;

/** The forecast of the first notebook's invented season. */
export const season = forecast({
  lifeCycle: findSpecies("monarch"),
  found: { stage: "egg", on: "2014-06-12", count: 12 },
  temperatures: newYork,
  zone: "America/New_York",
});
