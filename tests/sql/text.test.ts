import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { METHODS } from "../../src/diurnal/method.ts";
import { CUTOFFS } from "../../src/response/linear.ts";
import { degreeDayRowsSql, degreeDaysSql, reversedDaySql } from "../../src/sql/index.ts";
import { decimalLiteral } from "../../src/sql/literal.ts";
import { refusalOf } from "../support/refusal.ts";
import { duckdb, numberOf, postgres } from "./engines.ts";

const HOSTILE = [
  'tmin" ) ; DROP TABLE days; --',
  "tmin' OR '1'='1",
  "a`b",
  "a\\",
  "a--b",
  "a/*b",
  "a;b",
  "${a}",
  ":a",
  "a%s",
  "a?",
  "a\nb",
  "a\u0000b",
  "a\u2028b",
  "\ud800",
  "",
  "x".repeat(129),
];

describe("names", () => {
  it.each(HOSTILE)("%j is refused", (name) => {
    const refusal = refusalOf(() => degreeDaysSql({ min: name, max: "tmax" }, { lower: 10 }));
    expect([refusal.code, refusal.path]).toEqual(["invalid-option", ["columns", "min"]]);
    for (const field of ["table", "station", "season", "day", "min", "max"]) {
      const source = { table: "t", day: "d", min: "a", max: "b", [field]: name };
      expect(refusalOf(() => degreeDayRowsSql(source, { lower: 10 })).path).toEqual(["source", field]);
    }
  });

  it.each([[[]], [["a", 'b"']], [null], [7]])("%j is refused", (name) => {
    // @ts-expect-error what no type lets through
    expect(refusalOf(() => degreeDaysSql({ min: "a", max: name }, { lower: 1 })).code).toBe("invalid-option");
  });

  it("whatever they are, stay within their quotes or are refused", () => {
    const skeleton = reversedDaySql({ min: "a", max: "b" });
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: "binary" })), (name) => {
        let text: string;
        try {
          text = reversedDaySql({ min: name, max: "b" });
        } catch {
          return;
        }
        expect(name).not.toMatch(/["'`\\;]|--|\/\*/);
        expect(text.replaceAll(`"${name}"`, '"a"')).toBe(skeleton);
      }),
      { numRuns: 2000 },
    );
  });

  it("of odd columns and qualified tables reach the engines as they are", async () => {
    for (const engine of [await duckdb(), await postgres()]) {
      await engine.run(
        `CREATE SCHEMA "my weather"; CREATE TABLE "my weather"."select" ("Größe (min)" REAL, "order" REAL, "day" DATE);
         INSERT INTO "my weather"."select" VALUES (8, 24, DATE '2026-05-01')`,
      );
      const query = degreeDayRowsSql(
        { table: ["my weather", "select"], day: "day", min: "Größe (min)", max: "order" },
        { lower: 10 },
      );
      const [row] = await engine.rows(query);
      expect(numberOf(row, "total")).toBeCloseTo(6.304016860415474, 9);
    }
  });
});

describe("a double method", () => {
  it("asks for the next day's minimum, and says why", () => {
    const { message, path } = refusalOf(() =>
      degreeDaysSql({ min: "a", max: "b" }, { lower: 10, method: "double-sine" }),
    );
    expect(path).toEqual(["columns", "nextMin"]);
    expect(message).toContain("stands in another row");
  });
});

describe("the dialect", () => {
  it("is one of the known texts", () => {
    for (const [field, value] of [
      ["names", "]"],
      ["names", "toString"],
      ["double", "REAL); --"],
      ["oneDay", "2"],
    ] as const) {
      const dialect: object = { [field]: value };
      expect(refusalOf(() => reversedDaySql({ min: "a", max: "b" }, dialect)).path).toEqual([
        "dialect",
        field,
      ]);
    }
  });

  it("writes backticks and another type where told to", () => {
    const text = reversedDaySql({ min: ["t", "a"], max: "b" }, { names: "backtick", double: "FLOAT64" });
    expect(text).toContain("CAST(`t`.`a` AS FLOAT64)");
    expect(text).not.toContain('"');
  });
});

describe("the text", () => {
  const all = METHODS.flatMap((method) =>
    CUTOFFS.map((cutoff) =>
      degreeDaysSql(
        { min: "a", max: "b", nextMin: "c" },
        { method, cutoff, lower: -5.5, upper: 1e-7, ...(cutoff === "none" ? { upper: null } : {}) },
      ),
    ),
  );

  it("calls only functions that the page names, and never begins a comment", () => {
    const words = new Set(all.flatMap((text) => [...text.matchAll(/([A-Z]+)\(/g)].map(([, word]) => word)));
    expect([...words].sort()).toEqual(["ASIN", "CAST", "GREATEST", "LEAST", "NULLIF", "SQRT"]);
    for (const text of all) expect(text).not.toMatch(/--|\/\*|e-|Infinity|NaN|undefined/);
  });

  it("has decimals that stand for the same double", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const text = decimalLiteral(value);
        expect(Number(text.replace(/^\((.*)\)$/, "$1"))).toBe(value + 0);
        expect(text).toMatch(/^(\d+(\.\d+)?|\(-\d+(\.\d+)?\))$/);
      }),
    );
  });
});
