import { describe, expect, it } from "vitest";
import { published } from "../support/published.ts";
import { straightLine } from "../support/straight-line.ts";

// The figures of fixtures/published/thresholds.json and nist-norris.json against each other by plain arithmetic:
// what was carried over is right, whatever src makes of it.
const { rows, durations, constants, sums } = published("thresholds");

describe("printed thresholds", () => {
  it.each(rows)("$id: $what, base $lower and $degreeDays ($source)", (row) => {
    const { intercept, slope } =
      row.from === "data"
        ? straightLine((row.data ?? []).map(([temperature, days]) => [temperature, 1 / days] as const))
        : { intercept: Number(row.intercept), slope: Number(row.slope) };
    expect(Math.abs(-intercept / slope - Number(row.lower))).toBeLessThanOrEqual(row.tolerance.lower);
    expect(Math.abs(1 / slope - Number(row.degreeDays))).toBeLessThanOrEqual(row.tolerance.degreeDays);
  });

  it.each(durations)(
    "$id: $printed d at $temperature °C",
    ({ lower, degreeDays, temperature, printed, tolerance }) => {
      expect(Math.abs(degreeDays / (temperature - lower) - Number(printed))).toBeLessThanOrEqual(tolerance);
    },
  );

  it.each(constants)("$id: $days d come to $printed", ({ lower, temperature, days, printed, tolerance }) => {
    expect(Math.abs(days * (temperature - lower) - Number(printed))).toBeLessThanOrEqual(tolerance);
  });

  it.each(sums)("$id: $terms add up to $printed", ({ terms, printed }) => {
    expect(terms.reduce((sum, term) => sum + Number(term), 0)).toBeCloseTo(Number(printed), 9);
  });
});

describe("NIST StRD Norris", () => {
  it("has pairs that meet the certified line to eleven digits", () => {
    const norris = published("nist-norris");
    const { intercept, slope } = straightLine(norris.rows);
    expect(norris.rows.length).toBe(36);
    expect(intercept / Number(norris.certified["intercept"])).toBeCloseTo(1, 11);
    expect(slope / Number(norris.certified["slope"])).toBeCloseTo(1, 13);
  });
});
