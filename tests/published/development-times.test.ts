import { describe, expect, it } from "vitest";
import { findSpecies } from "../../src/species/catalogue.ts";
import { daysAt, degreeDaysOf, needsOf, ratePerDay } from "../support/constant-temperature.ts";
import { published } from "../support/published.ts";

// Durations and sums that were observed or printed, against the species' constants alone. Tolerance and
// reason stand in each row of fixtures/published/development-times.json.

const rows = published("development-times").rows;

function expectWithin(found: number, { value, tolerance }: { value: number; tolerance: number }): void {
  expect(Math.abs(found / value - 1)).toBeLessThanOrEqual(tolerance + 1e-9);
}

describe("published durations and sums", () => {
  it.each(rows.filter(({ kind }) => kind !== "record"))("$id: $what ($source; $reason)", (row) => {
    switch (row.kind) {
      case "days": {
        expectWithin(daysAt(needsOf(findSpecies(row.species), row.stages), row.temperature), row);
        return;
      }
      case "days-range": {
        const days = daysAt(needsOf(findSpecies(row.species), row.stages), row.temperature);
        expect(days).toBeGreaterThanOrEqual(row.range[0]);
        expect(days).toBeLessThanOrEqual(row.range[1]);
        return;
      }
      case "days-ratio": {
        const needs = needsOf(findSpecies(row.species), row.stages);
        const [cool, warm] = row.temperatures;
        expectWithin(daysAt(needs, cool) / daysAt(needs, warm), row);
        return;
      }
      case "alternating": {
        const needs = needsOf(findSpecies(row.species), row.stages);
        const days = needs.map((one) => {
          const [night, day] = row.temperatures.map((temperature) => ratePerDay(one, temperature));
          return (2 * one.degreeDays.value) / ((night ?? NaN) + (day ?? NaN));
        });
        expectWithin(
          days.reduce((sum, one) => sum + one, 0),
          row,
        );
        return;
      }
      case "degree-days": {
        expectWithin(degreeDaysOf(needsOf(findSpecies(row.species), row.stages)), row);
        return;
      }
      case "formula": {
        expectWithin(row.degreeDays / (row.temperature - row.lower), row);
        return;
      }
      case "days-at-rate": {
        expectWithin(row.degreeDays / row.perDay, row);
        return;
      }
      case "whole-life": {
        const value = row.degreeDays / (row.temperature - row.lower);
        expectWithin(daysAt(findSpecies(row.species).stages, row.temperature), { ...row, value });
        return;
      }
      case "record":
        throw new Error("records are kept for other tests");
    }
  });

  it("keeps the rows that need more than constants", () => {
    expect(rows.filter(({ kind }) => kind === "record").map(({ id }) => id)).toEqual(["F9", "F28"]);
  });

  it("larval sums of two seasons agree to a few percent over 11.5 °C", () => {
    // DuBose et al. 2025, open data: what F9 says, from the sums themselves.
    const [summer, fall] = published("monarch-rearing").outdoor.onPlant;
    const f9 = rows.find(({ id }) => id === "F9");
    if (!summer || !fall || f9?.kind !== "record" || !f9.range) throw new Error("rows are missing");
    const ratio = fall.degreeDays / summer.degreeDays;
    expect(ratio.toFixed(3)).toBe(f9.value.toFixed(3));
    expect(ratio).toBeGreaterThan(f9.range[0]);
    expect(ratio).toBeLessThan(f9.range[1]);
  });
});
