import { readFileSync } from "node:fs";
import { readTemperatures } from "../../src/read/index.ts";
import type { DailyTemperatures } from "../../src/temperature/series.ts";

/** The bundled daily temperatures of a city, 2012 to 2015. */
export function city(name: "new-york" | "seattle"): DailyTemperatures {
  const text = readFileSync(`fixtures/temperatures/${name}-2012-2015.csv`, "utf8");
  const { series } = readTemperatures(text, { unit: "C" });
  if (series.kind !== "daily") throw new Error("the fixture holds daily extremes");
  return series;
}
