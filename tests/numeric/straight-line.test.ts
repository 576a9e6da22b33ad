import { describe, expect, it } from "vitest";
import { straightLine } from "../../src/numeric/straight-line.ts";
import { published } from "../support/published.ts";
import { relativeError, thresholdsFromR } from "../support/r-thresholds.ts";

describe("straightLine", () => {
  it("meets the certified values of NIST StRD Norris to nine digits", () => {
    const { rows, certified } = published("nist-norris");
    const line = straightLine(
      rows.map(([x]) => x),
      rows.map(([, y]) => y),
    );
    const found: Readonly<Record<string, number | null>> = {
      intercept: line.intercept,
      slope: line.slope,
      interceptError: line.interceptError,
      slopeError: line.slopeError,
      residualSumOfSquares: line.residualSumOfSquares,
      residualMeanSquare: line.residualMeanSquare,
      rSquared: line.r2,
    };
    expect(Object.keys(certified).sort()).toEqual(Object.keys(found).sort());
    for (const [name, value] of Object.entries(certified)) {
      expect(relativeError(found[name] ?? Number.NaN, Number(value)), name).toBeLessThan(1e-9);
    }
  });

  it.each(thresholdsFromR.lines)("$id: R's lm to nine digits, weights included", (set) => {
    const line = straightLine(
      set.temperature,
      set.days.map((days) => 1 / days),
      set.weight,
    );
    for (const name of [
      "intercept",
      "slope",
      "interceptError",
      "slopeError",
      "r2",
      "residualMeanSquare",
    ] as const)
      expect(relativeError(line[name] ?? Number.NaN, set[name]), name).toBeLessThan(1e-9);
  });

  it("knows no errors with two points, and explains nothing where y does not vary", () => {
    expect(straightLine([1, 3], [2, 8])).toMatchObject({
      slope: 3,
      intercept: -1,
      slopeError: null,
      interceptError: null,
      residualMeanSquare: null,
    });
    expect(straightLine([1, 2, 4], [5, 5, 5])).toMatchObject({ slope: 0, intercept: 5, r2: 0 });
    expect(straightLine([1, 2, 4], [3e100, 5e100, 9e100]).r2).toBe(1);
  });
});
