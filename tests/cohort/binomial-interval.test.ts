import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SHARE_INTERVALS, binomialInterval } from "../../src/cohort/binomial-interval.ts";
import { fromR } from "../support/reference.ts";
import { refusalOf } from "../support/refusal.ts";

describe("binomialInterval", () => {
  // R's binom.test, prop.test without correction, and qbeta with Jeffreys' prior.
  test.each(fromR.shares)("$successes of $trials at $level as R", (row) => {
    const { successes, trials, level } = row;
    const of = (method: (typeof SHARE_INTERVALS)[number]): number[] => {
      const { lower, upper } = binomialInterval(successes, trials, { method, level });
      return [lower, upper];
    };
    of("clopper-pearson").forEach((bound, i) => {
      expect(bound).toBeCloseTo(row.clopperPearson[i] ?? Number.NaN, 11);
    });
    of("wilson").forEach((bound, i) => {
      expect(bound).toBeCloseTo(row.wilson[i] ?? Number.NaN, 11);
    });
    // At the ends the bound is set to the end here, and is not in R's plain quantile.
    const inside = [successes > 0, successes < trials];
    of("jeffreys").forEach((bound, i) => {
      expect(bound).toBeCloseTo(inside[i] === true ? (row.jeffreys[i] ?? Number.NaN) : i, 11);
    });
  });

  // The rule of three, 1 - 0.05^(1/n) for a one-sided bound: two-sided it is 1 - 0.025^(1/n) (derived).
  test("no success", () => {
    expect(binomialInterval(0, 10)).toEqual({ lower: 0, upper: expect.closeTo(1 - 0.025 ** 0.1, 12) });
  });

  test("holds the share, swaps with its mirror image, and widens with the level", () => {
    const counts = fc
      .integer({ min: 1, max: 200 })
      .chain((trials) => fc.tuple(fc.integer({ min: 0, max: trials }), fc.constant(trials)));
    fc.assert(
      fc.property(counts, fc.constantFrom(...SHARE_INTERVALS), ([successes, trials], method) => {
        const here = binomialInterval(successes, trials, { method });
        const mirrored = binomialInterval(trials - successes, trials, { method });
        const surer = binomialInterval(successes, trials, { method, level: 0.99 });
        expect(here.lower).toBeLessThanOrEqual(successes / trials);
        expect(here.upper).toBeGreaterThanOrEqual(successes / trials);
        expect(here.lower).toBeGreaterThanOrEqual(0);
        expect(here.upper).toBeLessThanOrEqual(1);
        expect(mirrored.lower).toBeCloseTo(1 - here.upper, 10);
        expect(surer.lower).toBeLessThanOrEqual(here.lower);
        expect(surer.upper).toBeGreaterThanOrEqual(here.upper);
      }),
    );
  });

  // What the name promises (derived): over all outcomes the interval holds the true share often enough.
  test.each([0.02, 0.3, 0.76, 0.95])("Clopper and Pearson hold a share of %d", (share) => {
    const trials = 29;
    let [held, chance] = [0, (1 - share) ** trials];
    for (let k = 0; k <= trials; k++) {
      const { lower, upper } = binomialInterval(k, trials);
      if (lower <= share && share <= upper) held += chance;
      chance *= ((trials - k) / (k + 1)) * (share / (1 - share));
    }
    expect(held).toBeGreaterThanOrEqual(0.95);
  });

  test.each([
    [5, 4, {}, "invalid-number", "successes"],
    [-1, 4, {}, "invalid-number", "successes"],
    [1, 0, {}, "invalid-number", "trials"],
    [1, 2.5, {}, "invalid-number", "trials"],
    [1, 2, { level: 1 }, "invalid-option", "level"],
    [1, 2, { level: 95 }, "invalid-option", "level"],
    [1, 2, { method: "wald" }, "invalid-option", "method"],
  ])("refuses %j of %j with %j", (successes, trials, options, code, field) => {
    // @ts-expect-error values that a program without types could pass
    const error = refusalOf(() => binomialInterval(successes, trials, options));
    expect(error).toMatchObject({ code, path: [field] });
  });
});
