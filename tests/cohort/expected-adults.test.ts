import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectedAdults } from "../../src/cohort/expected-adults.ts";
import { lifeTable } from "../../src/cohort/life-table.ts";
import { fromR } from "../support/reference.ts";
import { published } from "../support/published.ts";
import { refusalOf } from "../support/refusal.ts";

const counts = fc
  .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }))
  .filter(([survived, died]) => survived + died > 0)
  .map(([survived, died]) => ({ survived, of: survived + died }));

describe("expectedAdults", () => {
  // R, by matrices of beta-binomial and binomial chances from lchoose, lbeta and dbinom.
  test.each(fromR.adults)("$alive animals through $stages.length stages as R", (row) => {
    const ours = expectedAdults(row.alive, row.stages);
    expect(ours.mean).toBeCloseTo(row.mean, 9);
    expect(ours.standardDeviation).toBeCloseTo(row.sd, 8);
    expect(ours.median).toBe(row.median);
    expect(ours.interval).toEqual({ lower: row.lower, upper: row.upper });
    ours.probabilities.forEach((chance, n) => {
      expect(chance).toBeCloseTo(row.probabilities[n] ?? Number.NaN, 12);
    });
  });

  test("mean of a chain is the product of the shares, and chances add up", () => {
    const chain = fc.array(counts, { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 80 }), chain, (alive, stages) => {
        const { mean, interval, median, probabilities } = expectedAdults(alive, stages);
        // Jeffreys' prior: (survived + 1/2) / (all + 1).
        const share = stages.reduce((product, one) => product * ((one.survived + 0.5) / (one.of + 1)), 1);
        expect(mean).toBeCloseTo(alive * share, 8);
        expect(probabilities.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 10);
        expect(probabilities).toHaveLength(alive + 1);
        const held = probabilities.slice(interval.lower, interval.upper + 1);
        expect(held.reduce((sum, one) => sum + one, 0)).toBeGreaterThanOrEqual(0.95 - 1e-9);
        expect(interval.lower).toBeLessThanOrEqual(median);
        expect(median).toBeLessThanOrEqual(interval.upper);
      }),
    );
  });

  test("the order of stages does not matter, known shares multiply, and more animals give more", () => {
    fc.assert(
      fc.property(counts, fc.double({ min: 0, max: 1, noNaN: true }), (one, share) => {
        const [a, b] = [expectedAdults(30, [one, share]), expectedAdults(30, [share, one])];
        a.probabilities.forEach((chance, n) => {
          expect(chance).toBeCloseTo(b.probabilities[n] ?? Number.NaN, 10);
        });
        const [twice, product] = [expectedAdults(20, [share, 0.7]), expectedAdults(20, 0.7 * share)];
        twice.probabilities.forEach((chance, n) => {
          expect(chance).toBeCloseTo(product.probabilities[n] ?? Number.NaN, 10);
        });
        expect(expectedAdults(31, one).interval.upper).toBeGreaterThanOrEqual(
          expectedAdults(30, one).interval.upper,
        );
      }),
    );
  });

  test("counts are less sure than a share, and many counts become one", () => {
    const width = (survival: Parameters<typeof expectedAdults>[1]): number => {
      const { lower, upper } = expectedAdults(100, survival).interval;
      return upper - lower;
    };
    expect(width({ survived: 8, of: 10 })).toBeGreaterThan(width(0.8));
    expect(width({ survived: 8e6, of: 1e7 })).toBe(width(0.8));
  });

  test("nobody, nobody dies, everybody dies, and a large cohort", () => {
    expect(expectedAdults(0, 0.5)).toMatchObject({ mean: 0, interval: { lower: 0, upper: 0 } });
    expect(expectedAdults(7, [1, 1])).toMatchObject({ mean: 7, median: 7, standardDeviation: 0 });
    expect(expectedAdults(7, [0.9, 0])).toMatchObject({ mean: 0, median: 0 });
    const large = expectedAdults(2000, [{ survived: 900, of: 1000 }, 0.001]);
    expect(large.mean).toBeCloseTo((2000 * 0.001 * 900.5) / 1001, 8);
    expect(expectedAdults(5, []).mean).toBe(5);
  });

  test("takes the rows of a life table", () => {
    const rows = lifeTable([
      { stage: "larva", entered: 30, died: 3, censored: 4 },
      { stage: "pupa", entered: 23, died: 1 },
    ]);
    const stages = rows.map(({ atRisk, died }) => ({ survived: atRisk - died, of: atRisk }));
    expect(stages).toEqual([
      { survived: 25, of: 28 },
      { survived: 22, of: 23 },
    ]);
    expect(expectedAdults(10, stages).mean).toBeCloseTo((10 * 25.5 * 22.5) / (29 * 24), 10);
  });

  // Open data of constant incubators (Ragonese et al. 2024; see fixtures/published/monarch-rearing.json):
  // from the counts of all other temperatures the number alive at each one lies in a 99 % interval. Heat and
  // cold do differ, so that this only asks whether the intervals are of the right size.
  test("counts of monarchs reared in incubators", () => {
    const rows = published("monarch-rearing").constant.rows.flatMap(({ alive }) => (alive ? [alive] : []));
    expect(rows.length).toBeGreaterThanOrEqual(3);
    rows.forEach(([alive, of], i) => {
      const others = rows.filter((_, k) => k !== i);
      const known = {
        survived: others.reduce((sum, [one]) => sum + one, 0),
        of: others.reduce((sum, [, one]) => sum + one, 0),
      };
      const { lower, upper } = expectedAdults(of, known, { level: 0.99 }).interval;
      expect(alive).toBeGreaterThanOrEqual(lower);
      expect(alive).toBeLessThanOrEqual(upper);
    });
  });

  test.each([
    [-1, 0.5, ["alive"]],
    [2.5, 0.5, ["alive"]],
    [10_001, 0.5, ["alive"]],
    [5, 1.2, ["survival", 0]],
    [5, [0.5, NaN], ["survival", 1]],
    [5, { survived: 3, of: 2 }, ["survival", 0, "survived"]],
    [5, { survived: 0, of: 0 }, ["survival", 0, "of"]],
  ])("refuses %j with %j", (alive, survival, path) => {
    expect(refusalOf(() => expectedAdults(alive, survival))).toMatchObject({ code: "invalid-number", path });
  });
});
