// @vitest-environment jsdom
import * as Plot from "@observablehq/plot";
import { describe, expect, test } from "vitest";
import { compareMethods } from "../../src/evaluate/methods/compare-methods.ts";
import {
  cutoffName,
  describeMethodDifferences,
  methodDifferenceRows,
  methodFigure,
  methodName,
} from "../../src/plot/index.ts";
import { CURVE_METHODS } from "../../src/diurnal/method.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";

const series = dailyTemperatures("2026-05-01", [8, 12, 2, 9], [24, 30, 9, 26]);
const compared = (lower: number) => ({
  group: `above ${lower}`,
  comparison: compareMethods(series, { lower }, { amount: 20 }),
});
const rows = methodDifferenceRows([compared(10), compared(14)]);

describe("methodDifferenceRows", () => {
  test("takes every difference from the reference of its own group", () => {
    const { comparison } = compared(14);
    expect(rows).toHaveLength(2 * comparison.rows.length);
    const row = rows.find(({ group, method }) => group === "above 14" && method === "average");
    const average = comparison.rows.find(({ method }) => method === "average");
    expect(row?.degreeDays).toBeCloseTo((average?.degreeDays ?? NaN) - comparison.reference.degreeDays, 12);
    expect(row?.percent).toBe(average?.differencePercent);
    expect(row?.days).toBe(average?.differenceDays);
  });
});

describe("methodFigure", () => {
  test.each([
    [320, "degree-days"],
    [640, "percent"],
    [900, "days"],
  ] as const)("is one named and described image %d pixels wide, in %s", (width, measure) => {
    const drawing = methodFigure(Plot, rows, { measure, width, document }).querySelector("svg");
    expect(drawing?.getAttribute("role")).toBe("img");
    expect(drawing?.getAttribute("width")).toBe(String(width));
    expect(drawing?.getAttribute("aria-description")).toBe(describeMethodDifferences(rows, { measure }));
    for (const group of ["above 10", "above 14"]) expect(drawing?.textContent).toContain(group);
  });

  test("draws a bar from zero to the difference", () => {
    const one = rows.filter(({ group }) => group === "above 10");
    const figure = methodFigure(
      Plot,
      one.map((row) => ({ ...row, group: "" })),
      {
        measure: "degree-days",
        unit: "F",
        document,
      },
    );
    const axis = figure.scale("x");
    const bars = Array.from(figure.querySelectorAll(".method-difference > *"), (bar) => {
      const [x, width] = ["x", "width"].map((name) => Number(bar.getAttribute(name)));
      const ends = [x ?? NaN, (x ?? NaN) + (width ?? NaN)].map((at) => Number(axis?.invert?.(at)));
      return ends.reduce((far, end) => (Math.abs(end) > Math.abs(far) ? end : far));
    });
    bars.forEach((bar, i) => expect(bar).toBeCloseTo((one[i]?.degreeDays ?? NaN) * 1.8, 6));
    expect(bars).toHaveLength(one.length);
  });

  test("says where a date is not reached", () => {
    const late = methodDifferenceRows([
      { group: "", comparison: compareMethods(series, { lower: 10 }, { amount: 24.7 }) },
    ]);
    const missing = late.filter(({ days }) => days === null);
    expect(missing.length).toBeGreaterThan(0);
    const figure = methodFigure(Plot, late, { measure: "days", document });
    expect(figure.querySelectorAll(".no-difference > *")).toHaveLength(missing.length);
    expect(describeMethodDifferences(late, { measure: "days" })).toContain("give no number");
  });
});

test("says that there is no percentage where the reference counts nothing", () => {
  const cold = methodDifferenceRows([{ group: "", comparison: compareMethods(series, { lower: 40 }) }]);
  const figure = methodFigure(Plot, cold, { measure: "percent", document });
  const texts = Array.from(figure.querySelectorAll(".no-difference > *"), (one) => one.textContent);
  expect(new Set(texts)).toEqual(new Set(["no percentage"]));
});

test("one method of several without a number gives none", () => {
  const [first, second] = rows;
  if (first === undefined || second === undefined) throw new Error("there are methods");
  const words = describeMethodDifferences(
    [
      { ...first, days: null },
      { ...second, days: 1 },
    ],
    {
      measure: "days",
    },
  );
  expect(words).toContain(" 1 of 2 gives no number.");
});

test("a method with several cutoffs has a bar for each", () => {
  const comparison = compareMethods(series, { lower: 10, upper: 20 }, { methods: ["average"] });
  const several = methodDifferenceRows([{ group: "", comparison }]);
  const figure = methodFigure(Plot, several, { measure: "degree-days", document });
  const rungs = Array.from(figure.querySelectorAll(".method-difference > *"), (bar) => bar.getAttribute("y"));
  expect(new Set(rungs).size).toBe(4);
  expect(figure.querySelector("svg")?.textContent).toContain("average, vertical");
  expect(describeMethodDifferences(several, { measure: "degree-days" })).toMatch(/\(average, \w+\)/);
});

test("every method has a name of its own, and every cutoff", () => {
  expect(new Set(CURVE_METHODS.map(methodName)).size).toBe(CURVE_METHODS.length);
  expect([cutoffName("none"), cutoffName("vertical")]).toEqual(["no cutoff", "vertical cutoff"]);
});

test("there are words for no methods", () => {
  expect(describeMethodDifferences([], { measure: "percent" })).toBe("There are no methods to compare.");
});
