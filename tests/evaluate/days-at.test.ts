import { describe, expect, it } from "vitest";
import { daysAt } from "../../src/evaluate/threshold/days-at.ts";
import { estimateThreshold } from "../../src/evaluate/threshold/estimate-threshold.ts";
import { relativeError, thresholdsFromR, trialsOf } from "../support/r-thresholds.ts";
import { refusalOf } from "../support/refusal.ts";

const exact = [15, 20, 25].map((temperature) => ({ temperature, days: 200 / (temperature - 10) }));

describe("daysAt", () => {
  it.each(thresholdsFromR.lines)("$id: R's predict for lm, turned into days, to nine digits", (set) => {
    const { temperature, level, rate, low, high } = set.means;
    daysAt(trialsOf(set), temperature, { level }).forEach((row, i) => {
      expect(row.beyond).toBe(true);
      expect(relativeError(1 / (row.days ?? NaN), rate[i] ?? NaN)).toBeLessThan(1e-9);
      expect(relativeError(1 / (row.early ?? NaN), high[i] ?? NaN)).toBeLessThan(1e-9);
      const least = low[i] ?? NaN;
      if (least <= 0) expect(row.late).toBeNull();
      else expect(relativeError(1 / (row.late ?? NaN), least)).toBeLessThan(1e-9);
    });
  });

  it("agrees with threshold and constant", () => {
    const trials = trialsOf(thresholdsFromR.lines[0] ?? { temperature: [], days: [] });
    const { lower, thermalConstant } = estimateThreshold(trials);
    const [row] = daysAt(trials, [20]);
    expect(row?.days).toBeCloseTo(thermalConstant / (20 - lower), 9);
    expect(row?.beyond).toBe(false);
  });

  it("has no days at the threshold and below it", () => {
    for (const row of daysAt(exact, [9, 5]))
      expect(row).toMatchObject({ days: null, early: null, late: null });
  });

  it("has no interval with two trials, and a wider one the surer it is", () => {
    expect(daysAt(exact.slice(0, 2), [18])[0]).toMatchObject({ early: null, late: null });
    const trials = [...exact, { temperature: 28, days: 12 }];
    const [some, more] = [0.8, 0.95].map((level) => daysAt(trials, [18], { level })[0]);
    expect(more?.early ?? NaN).toBeLessThan(some?.early ?? NaN);
    expect(more?.late ?? NaN).toBeGreaterThan(some?.late ?? NaN);
  });

  it("refuses what gives no line", () => {
    expect(refusalOf(() => daysAt(exact.slice(0, 1), [20])).code).toBe("invalid-trials");
    expect(refusalOf(() => daysAt(exact, [NaN])).code).toBe("invalid-number");
    expect(refusalOf(() => daysAt(exact, [20], { level: 1 })).code).toBe("invalid-option");
    const falling = [15, 20, 25].map((temperature, i) => ({ temperature, days: 20 + i }));
    expect(refusalOf(() => daysAt(falling, [20])).message).toContain("no faster");
  });
});
