import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type DegreeDayOptions, degreeDays } from "../../src/clock/degree-days.ts";
import { degreeDaysEach } from "../../src/clock/degree-days-each.ts";
import { METHODS } from "../../src/diurnal/method.ts";
import { CUTOFFS } from "../../src/response/linear.ts";
import { degreeDayRowsSql, degreeDaysSql } from "../../src/sql/index.ts";
import { civilDay, dayNumber } from "../../src/time/civil-day.ts";
import { cutoff, day, limits } from "../support/arbitraries.ts";
import { city } from "../support/city.ts";
import { type Engine, cell, engines, numberOf, ownFolder } from "./engines.ts";

// The library is checked against quadrature and printed tables elsewhere; here two SQL engines that share no
// code with it must give its numbers.

/** Every way to ask: each method with each cutoff, with one threshold and with both. */
const asked: readonly DegreeDayOptions[] = METHODS.flatMap((method) => [
  { method, lower: 10 },
  ...CUTOFFS.map((one) => ({ method, lower: 10, upper: 22.5, cutoff: one })),
]);

const NEAR = 1e-9;
const [duckdb, postgres] = await engines();
const CITIES = ["new-york", "seattle"] as const;
const source = { table: "days", station: "city", season: "year", day: "on", min: "tmin", max: "tmax" };

interface CityDay {
  readonly on: string;
  readonly min: number;
  readonly max: number;
}

function cityDays(name: (typeof CITIES)[number]): CityDay[] {
  const { start, min, max } = city(name);
  return Array.from(min, (low, i) => ({
    on: civilDay(dayNumber(start) + i),
    min: low,
    max: Number(max[i]),
  }));
}

async function loadCities(engine: Engine): Promise<void> {
  const values = CITIES.flatMap((name) =>
    cityDays(name).map(
      ({ on, min, max }) =>
        `('${name}', ${on.slice(0, 4)}, DATE '${on}', ${min.toFixed(1)}, ${max.toFixed(1)})`,
    ),
  );
  // Tenths, as decimals: the text must not divide them to a few places.
  await engine.run(
    `CREATE TABLE loaded (city VARCHAR(20), year INTEGER, "on" DATE, tmin DECIMAL(5, 1), tmax DECIMAL(5, 1));
     INSERT INTO loaded VALUES ${values.join(",\n")}`,
  );
}

const parquet = `${ownFolder()}/days.parquet`;
await loadCities(duckdb);
await duckdb.run(
  `COPY loaded TO '${parquet}' (FORMAT parquet); CREATE VIEW days AS SELECT * FROM read_parquet('${parquet}')`,
);
await loadCities(postgres);
await postgres.run("CREATE VIEW days AS SELECT * FROM loaded");

/** A city's year, in the order that the queries are read back in. */
const seasons = CITIES.flatMap((name) => {
  const all = cityDays(name);
  return ["2012", "2013", "2014", "2015"].map((year) => {
    const days = all.filter(({ on }) => on.startsWith(year));
    return {
      min: Float64Array.from(days, ({ min }) => min),
      max: Float64Array.from(days, ({ max }) => max),
    };
  });
});

/** Largest difference between the rows of an engine and the library's, over both cities and four years. */
async function cityDifference(engine: Engine, options: DegreeDayOptions): Promise<number> {
  const query = degreeDayRowsSql(source, options);
  const rows = await engine.rows(
    `SELECT station, season, degree_days, total FROM (${query}) AS q ORDER BY station, season, "day"`,
  );
  const expected = seasons.flatMap(({ min, max }) => {
    let total = 0;
    return Array.from(degreeDaysEach(min, max, options), (heat) => ({ heat, total: (total += heat) }));
  });
  expect(rows).toHaveLength(expected.length);
  return Math.max(
    ...expected.flatMap(({ heat, total }, i) => [
      Math.abs(heat - (numberOf(rows[i], "degree_days") ?? Number.NaN)),
      Math.abs(total - (numberOf(rows[i], "total") ?? Number.NaN)),
    ]),
  );
}

describe.each([duckdb, postgres])("four years of two cities on $name", (engine) => {
  it.each(asked)("$method, upper $upper, cutoff $cutoff", async (options) => {
    expect(await cityDifference(engine, options)).toBeLessThan(NEAR);
  });
});

const days = fc.array(day, { minLength: 1, maxLength: 60 });

/** Rows of one engine for days that are written into the text itself. */
async function heatsOf(
  engine: Engine,
  given: readonly { min: number | null; max: number | null; nextMin: number | null }[],
  options: DegreeDayOptions,
): Promise<(number | null)[]> {
  const rows = given.map(
    ({ min, max, nextMin }, i) =>
      `SELECT ${i} AS i, ${cell(min)} AS tmin, ${cell(max)} AS tmax, ${cell(nextMin)} AS night`,
  );
  const heat = degreeDaysSql({ min: "tmin", max: "tmax", nextMin: "night" }, options);
  const found = await engine.rows(
    `WITH given AS (${rows.join(" UNION ALL ")}) SELECT ${heat} AS heat FROM given ORDER BY i`,
  );
  return found.map((row) => numberOf(row, "heat"));
}

describe.each([duckdb, postgres])("random days on $name", (engine) => {
  it.each(METHODS)("%s", async (method) => {
    await fc.assert(
      fc.asyncProperty(days, limits, cutoff, async (given, { lower, upper }, rule) => {
        const options = { method, lower, upper, cutoff: rule };
        const heats = await heatsOf(engine, given, options);
        heats.forEach((heat, i) => {
          const one = given[i];
          if (one === undefined) throw new Error("more rows than days");
          expect(heat).not.toBeNull();
          expect(heat).toBeGreaterThanOrEqual(0);
          expect(Math.abs((heat ?? Number.NaN) - degreeDays(one, options))).toBeLessThan(NEAR);
        });
      }),
      { numRuns: 25 },
    );
  });

  it.each(METHODS)("%s, readings a rounding step beside the thresholds", async (method) => {
    const [lower, upper] = [10.1, 30.3];
    const beside = [lower, upper, 2 * upper - lower].flatMap((t) => [
      t,
      t * (1 - 2 ** -52),
      t * (1 + 2 ** -52),
    ]);
    const given = beside.flatMap((min) =>
      beside.filter((max) => max >= min).map((max) => ({ min, max, nextMin: min })),
    );
    for (const rule of CUTOFFS) {
      const options = { method, lower, upper, cutoff: rule };
      const heats = await heatsOf(engine, given, options);
      // The time above a crossing begins as the root of the distance from it: a step of the last binary digit
      // in a temperature is 1e-7 of the day, and so is the library's rounding. Only a vertical cutoff counts it.
      const near = rule === "vertical" ? 1e-6 : NEAR;
      given.forEach((one, i) =>
        expect(Math.abs((heats[i] ?? Number.NaN) - degreeDays(one, options))).toBeLessThan(near),
      );
    }
  });

  it.each(METHODS)("%s gives NULL for what is no day", async (method) => {
    const gone = [null, Number.NaN, Infinity, -Infinity];
    const given = [
      ...gone.flatMap((none) => [
        { min: none, max: 30, nextMin: 12 },
        { min: 12, max: none, nextMin: 12 },
      ]),
      { min: 30, max: 12, nextMin: 12 },
    ];
    const heats = await heatsOf(engine, given, { method, lower: 10, upper: 22 });
    expect(heats).toEqual(given.map(() => null));
    const nights = gone.map((none) => ({ min: 12, max: 30, nextMin: none }));
    const asksForNight = method.startsWith("double-");
    for (const heat of await heatsOf(engine, nights, { method, lower: 10, upper: 22 }))
      expect(heat === null).toBe(asksForNight);
  });
});
