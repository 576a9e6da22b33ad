import { describe, expect, it } from "vitest";
import { accumulateDegreeDays } from "../../src/clock/accumulate.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { danausPlexippus, ostriniaNubilalis, pierisRapae } from "../../src/species/index.ts";
import {
  type DayTable,
  degreeDayRowsSql,
  reachedSql,
  readingsCheckSql,
  stagesSql,
} from "../../src/sql/index.ts";
import { city } from "../support/city.ts";
import { refusalOf } from "../support/refusal.ts";
import { cell, engines, numberOf } from "./engines.ts";

const [duckdb, postgres] = await engines();
const source: DayTable = { table: "garden", station: "shelf", day: "on", min: "tmin", max: "tmax" };

/** Days of three shelves: whole; with a reading missing; with a day left out and one reversed. */
const SHELVES: readonly (readonly [number, string, number | null, number | null])[] = [
  [1, "2026-05-01", 8, 24],
  [1, "2026-05-02", 12, 30],
  [1, "2026-05-03", 2, 9],
  [2, "2026-05-01", 8, 24],
  [2, "2026-05-02", Number.NaN, 30],
  [2, "2026-05-03", 12, 30],
  [3, "2026-05-01", 8, 24],
  [3, "2026-05-03", 30, 12],
];

for (const engine of [duckdb, postgres]) {
  await engine.run(
    `CREATE TABLE garden (shelf INTEGER, "on" DATE, tmin DOUBLE PRECISION, tmax DOUBLE PRECISION);
     INSERT INTO garden VALUES ${SHELVES.map(([shelf, on, min, max]) => `(${shelf}, DATE '${on}', ${cell(min)}, ${cell(max)})`).join(", ")};
     CREATE VIEW numbered AS SELECT shelf, "on" - DATE '2026-05-01' AS "on", tmin, tmax FROM garden;
     CREATE TABLE season (on_day DATE, tmin DOUBLE PRECISION, tmax DOUBLE PRECISION)`,
  );
  const { rows } = newYork();
  await engine.run(
    `INSERT INTO season VALUES ${rows.map(({ day, min, max }) => `(DATE '${day}', ${cell(min)}, ${cell(max)})`).join(", ")}`,
  );
}

/** The bundled record from 1 June 2015 on. */
function newYork() {
  const series = city("new-york");
  const from = "2015-06-01";
  const days = accumulateDegreeDays(series, { lower: 10, from });
  const offset = series.min.length - days.length;
  const rows = days.map(({ day }, i) => ({
    day,
    min: Number(series.min[offset + i]),
    max: Number(series.max[offset + i]),
  }));
  return { series, from, rows };
}

describe.each([duckdb, postgres])("queries on $name", (engine) => {
  it("leave a total NULL from a missing day or a hole on", async () => {
    for (const [table, dialect] of [
      [source, undefined],
      [{ ...source, table: "numbered" }, { oneDay: "1" } as const],
    ] as const) {
      const query = degreeDayRowsSql(table, { lower: 10 }, dialect);
      const rows = await engine.rows(`SELECT * FROM (${query}) AS q ORDER BY station, "day"`);
      const whole = accumulateDegreeDays(
        {
          ...city("new-york"),
          start: "2026-05-01",
          min: Float64Array.of(8, 12, 2),
          max: Float64Array.of(24, 30, 9),
        },
        { lower: 10 },
      );
      const total = (i: number): number => whole[i]?.total ?? Number.NaN;
      const seen = rows.map((row) => numberOf(row, "total"));
      const expected = [total(0), total(1), total(2), total(0), null, null, total(0), null];
      expected.forEach((one, i) => {
        if (one === null) expect(seen[i]).toBeNull();
        else expect(seen[i]).toBeCloseTo(one, 9);
      });
      expect(rows.map((row) => row["degree_days"] === null)).toEqual([
        false,
        false,
        false,
        false,
        true,
        false,
        false,
        true,
      ]);
    }
  });

  it("take the next minimum by LEAD, and none across a hole", async () => {
    const query = degreeDayRowsSql(source, { lower: 10, method: "double-triangle" });
    const rows = await engine.rows(`SELECT * FROM (${query}) AS q ORDER BY station, "day"`);
    expect(rows.map((row) => row["degree_days"] === null)).toEqual(
      // The last day of shelf 2 ends its season and takes its own minimum.
      [false, false, false, true, true, false, true, true],
    );
  });

  it("count what the library would refuse", async () => {
    const rows = await engine.rows(`SELECT * FROM (${readingsCheckSql(source)}) AS q ORDER BY station`);
    const counts = rows.map((row) =>
      ["days", "missing", "reversed", "breaks"].map((name) => numberOf(row, name)),
    );
    expect(counts).toEqual([
      [3, 0, 0, 0],
      [3, 1, 0, 0],
      [2, 0, 1, 1],
    ]);
  });

  it("say why an amount is not reached, and leave no station out", async () => {
    const query = reachedSql(source, { lower: 10, amount: 17.3 });
    const rows = await engine.rows(
      `SELECT station, CAST(reached_on AS VARCHAR) AS reached, absence FROM (${query}) AS q ORDER BY station`,
    );
    expect(rows).toEqual([
      { station: 1, reached: "2026-05-02", absence: null },
      { station: 2, reached: null, absence: "gap" },
      { station: 3, reached: null, absence: "gap" },
    ]);
    const never = await engine.rows(
      `SELECT absence FROM (${reachedSql(source, { lower: 10, amount: 99 })}) AS q ORDER BY station`,
    );
    expect(never.map(({ absence }) => absence)).toEqual(["series-ends", "gap", "gap"]);
  });

  it("reach each stage on the library's day", async () => {
    const table = { table: "season", day: "on_day", min: "tmin", max: "tmax" };
    const { series, from } = newYork();
    for (const lifeCycle of [danausPlexippus, pierisRapae]) {
      const rows = await engine.rows(
        `SELECT stage, degree_days, CAST(reached_on AS VARCHAR) AS reached FROM (${stagesSql(table, lifeCycle)}) AS q ORDER BY ordinal`,
      );
      const { stages } = forecast({
        lifeCycle,
        found: { stage: "egg", age: "new", on: from, count: 1 },
        temperatures: series,
      });
      const reached = rows.map(({ stage }) => stage).filter((stage) => stage !== "darkening");
      expect(reached).toEqual(stages.map(({ stage }) => stage));
      const first = lifeCycle.stages[0];
      const days = accumulateDegreeDays(series, {
        from,
        lower: first?.lower.value ?? 0,
        upper: first?.upper?.value ?? null,
        cutoff: first?.cutoff ?? "none",
      });
      for (const row of rows) {
        const amount = numberOf(row, "degree_days") ?? Number.NaN;
        expect(row["reached"]).toBe(days.find(({ total }) => total >= amount)?.day);
      }
    }
  });

  it("reach later stages from a given one on", async () => {
    const table = { table: "season", day: "on_day", min: "tmin", max: "tmax" };
    const query = stagesSql(table, danausPlexippus, { stage: "pupa", method: "double-sine" });
    const rows = await engine.rows(`SELECT stage, degree_days FROM (${query}) AS q ORDER BY ordinal`);
    expect(rows.map(({ stage }) => stage)).toEqual(["darkening", "adult"]);
    expect(numberOf(rows[1], "degree_days")).toBeCloseTo(120.1, 9);
  });
});

describe("queries are refused", () => {
  it("for a life cycle on several clocks, naming the stage", () => {
    const { code, message } = refusalOf(() => stagesSql(source, ostriniaNubilalis));
    expect(code).toBe("invalid-life-cycle");
    expect(message).toContain("cannot hold two clocks");
  });

  it.each([0, -1, Number.NaN, Infinity])("for an amount of %s", (amount) => {
    expect(refusalOf(() => reachedSql(source, { lower: 10, amount })).path).toEqual(["amount"]);
  });

  it("for thresholds, a method or a stage that the library refuses", () => {
    expect(refusalOf(() => degreeDayRowsSql(source, { lower: 10, upper: 9 })).code).toBe(
      "invalid-thresholds",
    );
    // @ts-expect-error a name that is not a method
    expect(refusalOf(() => degreeDayRowsSql(source, { lower: 10, method: "sunrise-sine" })).code).toBe(
      "invalid-method",
    );
    // @ts-expect-error a name that is not a stage
    expect(refusalOf(() => stagesSql(source, danausPlexippus, { stage: "'; DROP" })).code).toBe(
      "unknown-stage",
    );
  });
});
