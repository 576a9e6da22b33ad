import { describe, expect, test } from "vitest";
import { forecast } from "../../src/forecast/forecast.ts";
import { degreeDayRows, forecastDays, stageTotalRows, stageWindowRows } from "../../src/plot/index.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { log, season } from "./season.ts";

describe("degreeDayRows", () => {
  test("are the tables of the forecast, day for day", () => {
    const rows = degreeDayRows(season);
    const [table] = season.tables;
    expect(rows.map((row) => row.day)).toEqual(table?.days);
    expect(rows.map((row) => row.degreeDays)).toEqual(table?.degreeDays);
    expect(rows.map((row) => row.total)).toEqual(table?.total);
    expect(rows[0]).toMatchObject({ lower: 11.5, upper: 33, cutoff: "horizontal", origin: "observed" });
  });

  test("cover every pair of thresholds", () => {
    const moth = forecast({
      lifeCycle: findSpecies("codling moth"),
      found: { stage: "egg", on: "2026-05-01" },
      temperatures: constantTemperature(24),
    });
    expect(degreeDayRows(moth)).toHaveLength(moth.tables.reduce((sum, { days }) => sum + days.length, 0));
  });
});

describe("forecastDays", () => {
  test("run from the find to the last day that counts", () => {
    expect(forecastDays(season)).toEqual({
      from: "2014-06-12",
      to: season.tables[0]?.days.at(-1),
      zone: "America/New_York",
    });
  });
});

describe("stageTotalRows", () => {
  test("stand where the forecast has the middle animal", () => {
    const [found, ...later] = stageTotalRows(season);
    expect(found).toEqual({ stage: "egg", name: "egg", at: season.found.at, total: 0 });
    expect(later.map(({ stage, at, total }) => [stage, at, total])).toEqual(
      season.stages.map(({ stage, begins, degreeDays }) => [stage, begins.expected, degreeDays]),
    );
  });

  test("on several pairs of thresholds lie on the total of the pair that led up to the stage", () => {
    // At 24 °C held, the total on a lower threshold L grows by 24 - L a day, so the total at an instant is known.
    const helicoverpa = forecast({
      lifeCycle: findSpecies("helicoverpa-armigera"),
      found: { stage: "egg", on: "2026-05-01T00:00", age: "new" },
      temperatures: constantTemperature(24),
    });
    const rows = stageTotalRows(helicoverpa);
    rows.slice(1).forEach(({ at, total }, i) => {
      const before = rows[i]?.stage;
      const table = helicoverpa.tables.find(({ stages }) => stages.some((stage) => stage === before));
      if (!table) return;
      const days = (Date.parse(`${at}Z`) - Date.parse("2026-05-01T00:00Z")) / 86_400_000;
      expect(total).toBeCloseTo(days * (24 - table.lower), 2);
    });
  });
});

describe("stageWindowRows", () => {
  test("hold the windows of the forecast in the order of life, signs before the adult", () => {
    const rows = stageWindowRows(season);
    expect(rows.map((row) => row.begins).slice(-3)).toEqual(["pupa", "darkening", "adult"]);
    for (const { stage, begins } of season.stages) {
      expect(rows.find((row) => row.begins === stage)).toMatchObject(begins);
    }
  });

  test("hold what a log has of each stage, day by day", () => {
    const rows = stageWindowRows(season, log);
    expect(rows.find((row) => row.begins === "pupa")?.seen).toEqual([
      { day: "2014-07-01", count: 8 },
      { day: "2014-07-02", count: 2 },
    ]);
    expect(rows.find((row) => row.begins === "darkening")?.seen).toEqual([]);
  });

  test("say why a date is missing", () => {
    const short = forecast({
      lifeCycle: findSpecies("monarch"),
      found: { stage: "egg", on: "2026-05-01" },
      temperatures: dailyTemperatures("2026-05-01", [15, 15, 15, 15, 15], [25, 25, 25, 25, 25]),
    });
    const adult = stageWindowRows(short).find((row) => row.begins === "adult");
    expect(adult).toMatchObject({ early: null, expected: null, late: null });
    expect(adult?.absence).toMatch(/^The temperatures end/);
  });

  test("are plain data", () => {
    const rows = stageWindowRows(season, log);
    expect(JSON.parse(JSON.stringify(rows))).toEqual(rows);
  });
});
