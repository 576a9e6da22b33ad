import { describe, expect, it } from "vitest";
import { compareMethods } from "../../src/evaluate/methods/compare-methods.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { methodComparisonText } from "../../src/write/pages/method-comparison-text.ts";

const may = dailyTemperatures("2026-05-01", [8, 12, 2], [24, 30, 9]);

describe("methodComparisonText", () => {
  it("prints a table with when and why", () => {
    const comparison = compareMethods(
      may,
      { lower: 10 },
      { amount: 17.1, methods: ["average", "single-sine"] },
    );
    expect(methodComparisonText(comparison)).toBe(`METHODS COMPARED
2026-05-01 to 2026-05-03, lower threshold 10 °C, no upper one.

               cutoff  deg-days  % more  reached     days
  average      none        17.0    -1.8  not            -
  single-sine  none        17.3     0.0  2026-05-02   0.0

Percent and days compare with the single-sine without a cutoff (17.3
degree-days): more (+) or less (-), later (+) or earlier (-). Reached is the day
on which 17.1 degree-days are full.
`);
  });

  it("names the scale of sums in °F", () => {
    const text = methodComparisonText(compareMethods(may, { lower: 10 }, { amount: 10 }), "F");
    expect(text.replace(/\s+/g, " ")).toContain("on which 18 °F·day are full");
    expect(text.replace(/\s+/g, " ")).toContain("(31.1 °F·day)");
  });

  it("leaves the dates out where no amount is wanted", () => {
    const text = methodComparisonText(compareMethods(may, { lower: 10, upper: 28 }));
    expect(text).toContain("upper threshold 28 °C");
    expect(text).not.toContain("reached");
  });

  it("fits on a page with all methods, notes and a measured reference", () => {
    const place = { latitude: 47.6, longitude: -122.3 };
    const comparison = compareMethods(
      may,
      { lower: 10, upper: 28 },
      { zone: "America/Los_Angeles", place, amount: 12345 },
    );
    const lines = methodComparisonText(comparison).split("\n");
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(lines).toContain("GOOD TO KNOW");
  });
});
