import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shareWithin } from "../../src/cohort/requirement.ts";
import { needBelief, needTable } from "../../src/forecast/arrivals/need-belief.ts";

const requirement = fc
  .record({
    least: fc.oneof(fc.constant(0), fc.double({ min: 1, max: 400, noNaN: true })),
    span: fc.oneof(fc.constant(0), fc.double({ min: 1, max: 100, noNaN: true })),
    sigma: fc.double({ min: 0.01, max: 0.4, noNaN: true }),
  })
  .filter(({ least, span }) => least + span > 0)
  .map(({ least, span, sigma }) => ({ least, most: least + span, sigma }));

const paces = [
  { pace: 0.93, weight: 0.3 },
  { pace: 1.02, weight: 0.5 },
  { pace: 1.15, weight: 0.2 },
];

describe("needBelief", () => {
  it("is the share within, averaged over the paces", () => {
    const needed = { least: 300, most: 345, sigma: 0.06 };
    const sum = paces.reduce((mean, { pace, weight }) => mean + weight * shareWithin(needed, 330 / pace), 0);
    expect(needBelief(needed, paces)(330)).toBeCloseTo(sum, 15);
    expect(needBelief(needed, [{ pace: 1, weight: 1 }])(330)).toBe(shareWithin(needed, 330));
  });
});

describe("needTable", () => {
  it("is within 1e-9 of the sum", () => {
    fc.assert(
      fc.property(requirement, fc.double({ min: 0.2, max: 3, noNaN: true }), (needed, share) => {
        const amount = share * needed.most;
        const off = needTable(needed, paces)(amount) - needBelief(needed, paces)(amount);
        expect(Math.abs(off)).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it("keeps the sharp edges of animals that are all alike", () => {
    const table = needTable({ least: 100, most: 100, sigma: 0 }, [{ pace: 1, weight: 1 }]);
    expect([table(99.999), table(100), table(-1), table(0)]).toEqual([0, 1, 0, 0]);
  });

  it("leaves none done before anything was given", () => {
    const table = needTable({ least: 0, most: 45, sigma: 0.1 }, paces);
    expect([table(0), table(-3)]).toEqual([0, 0]);
  });
});
