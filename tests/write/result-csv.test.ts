import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { logEntry } from "../../src/cohort/log.ts";
import { compare } from "../../src/evaluate/hindsight/compare.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { comparisonCsv } from "../../src/write/tables/comparison-csv.ts";
import { forecastCsv } from "../../src/write/tables/forecast-csv.ts";
import { city } from "../support/city.ts";

const season = forecast({
  lifeCycle: danausPlexippus,
  found: { stage: "egg", on: "2015-06-08", count: 12 },
  temperatures: city("new-york"),
  zone: "America/New_York",
});

const rowsOf = (text: string): Record<string, string>[] =>
  Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;

describe("results as tables", () => {
  it("a forecast: a row for each stage and sign, the sign before the adult", () => {
    const rows = rowsOf(forecastCsv(season));
    expect(rows.map(({ begins }) => begins)).toEqual([
      ...season.stages.slice(0, -1).map(({ stage }) => stage),
      "darkening",
      "adult",
    ]);
    const adult = season.stages.at(-1);
    expect(rows.at(-1)).toEqual({
      species: "danaus-plexippus",
      ...adult?.begins,
      begins: "adult",
      "degree-days": String(Number(adult?.degreeDays.toFixed(3))),
      reason: "",
    });
  });

  it("a date that is not known is empty, with its reason", () => {
    const short = forecast({
      lifeCycle: danausPlexippus,
      found: { stage: "egg", on: "2015-12-30" },
      temperatures: city("new-york"),
      zone: null,
    });
    for (const { expected, reason } of rowsOf(forecastCsv(short))) {
      expect(expected).toBe("");
      expect(reason).not.toBe("");
    }
  });

  it("a comparison: errors as numbers, whether inside as words", () => {
    const comparison = compare(season, [
      logEntry({ stage: "instar-1", on: "2015-06-10", count: 4 }),
      logEntry({ stage: "egg", on: "2015-06-08" }),
    ]);
    const [hatched, egg] = rowsOf(comparisonCsv(comparison));
    expect(hatched).toMatchObject({
      stage: "instar-1",
      "seen on": "2015-06-10",
      count: "4",
      "inside window": "yes",
    });
    expect(Number(hatched?.["error days"])).toBeCloseTo(comparison.rows[0]?.errorDays ?? NaN, 3);
    expect(egg).toMatchObject({ "error days": "", "inside window": "" });
    expect(egg?.["reason"]).toContain("not ahead");
  });
});
