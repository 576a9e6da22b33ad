import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalDensity } from "../../src/numeric/normal-distribution.ts";
import {
  type Requirement,
  amountAtShare,
  multiplierAt,
  shareWithin,
  sigmaOf,
} from "../../src/cohort/requirement.ts";
import { meanOver } from "../support/quadrature.ts";

const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });

const requirement: fc.Arbitrary<Requirement> = fc
  .record({
    least: fc.oneof(fc.constant(0), fc.double({ min: 0.5, max: 400, noNaN: true })),
    span: fc.oneof(fc.constant(0), fc.double({ min: 0.5, max: 400, noNaN: true })),
    sigma: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 0.6, noNaN: true })),
  })
  .filter(({ least, span }) => least + span > 0)
  .map(({ least, span, sigma }) => ({ least, most: least + span, sigma }));

/**
 * Share within an amount by integrating over the multiplier instead of over the age: for a multiplier
 * exp(sigma z) the age leaves the share of [least, most] below amount / multiplier.
 */
function byQuadrature({ least, most, sigma }: Requirement, amount: number): number {
  const [low, high] = [-9, 9];
  const z = (u: number) => low + (high - low) * u;
  const need = (u: number) => amount / Math.exp(sigma * z(u));
  const within = (u: number) =>
    most === least ? Number(need(u) >= least) : Math.min(1, Math.max(0, (need(u) - least) / (most - least)));
  return (high - low) * meanOver((u) => normalDensity(z(u)) * within(u), need, [least, most]);
}

describe("shareWithin", () => {
  it("agrees with a quadrature over the animals' multipliers to 1e-9", () => {
    fc.assert(
      fc.property(requirement, fc.double({ min: 0.2, max: 2.5, noNaN: true }), (one, times) => {
        fc.pre(one.sigma > 0);
        const amount = ((one.least + one.most) / 2) * times;
        expect(Math.abs(shareWithin(one, amount) - byQuadrature(one, amount))).toBeLessThan(1e-9);
      }),
      { numRuns: 150 },
    );
  });

  it("never falls and stays between 0 and 1", () => {
    fc.assert(
      fc.property(
        requirement,
        fc.double({ min: -5, max: 2000, noNaN: true }),
        fc.double({ min: 0, max: 500, noNaN: true }),
        (one, amount, more) => {
          const [a, b] = [shareWithin(one, amount), shareWithin(one, amount + more)];
          expect(b - a).toBeGreaterThan(-1e-12);
          expect(a).toBeGreaterThanOrEqual(0);
          expect(b).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  it("is uniform when animals do not differ, and a step when their age is known too", () => {
    expect(shareWithin({ least: 10, most: 30, sigma: 0 }, 15)).toBe(0.25);
    expect(shareWithin({ least: 10, most: 30, sigma: 0 }, 9.99)).toBe(0);
    expect(shareWithin({ least: 10, most: 30, sigma: 0 }, 31)).toBe(1);
    const known = { least: 20, most: 20, sigma: 0 };
    expect([19.999, 20, 20.001].map((amount) => shareWithin(known, amount))).toEqual([0, 1, 1]);
  });

  it("is one half at the middle animal's need when the age is known", () => {
    expect(shareWithin({ least: 45, most: 45, sigma: 0.1 }, 45)).toBeCloseTo(0.5, 14);
  });

  it("has nobody done before a need, and everybody where there is none", () => {
    expect(shareWithin({ least: 5, most: 9, sigma: 0.1 }, 0)).toBe(0);
    expect(shareWithin({ least: 0, most: 9, sigma: 0.1 }, 0)).toBe(0);
    expect(shareWithin({ least: 0, most: 0, sigma: 0.1 }, 0)).toBe(1);
    expect(shareWithin({ least: 0, most: 9, sigma: 0.1 }, 1e-9)).toBeLessThan(1e-9);
  });
});

describe("amountAtShare", () => {
  it("is the inverse of shareWithin", () => {
    fc.assert(
      fc.property(requirement, share, (one, wanted) => {
        const amount = amountAtShare(one, wanted);
        if (one.sigma === 0 && one.least === one.most) expect(amount).toBe(one.least);
        else expect(Math.abs(shareWithin(one, amount) - wanted)).toBeLessThan(1e-7);
      }),
    );
  });

  it("never falls with the share, and scales with the need", () => {
    fc.assert(
      fc.property(requirement, share, share, (one, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(amountAtShare(one, high) - amountAtShare(one, low)).toBeGreaterThan(-1e-6);
        const twice = { ...one, least: 2 * one.least, most: 2 * one.most };
        expect(amountAtShare(twice, a)).toBeCloseTo(2 * amountAtShare(one, a), 5);
      }),
    );
  });

  it("is 0 where nothing is needed", () => {
    expect(amountAtShare({ least: 0, most: 0, sigma: 0.1 }, 0.9)).toBe(0);
  });
});

describe("multiplierAt and sigmaOf", () => {
  it("has the middle animal at 1, and 1 for everybody who does not differ", () => {
    expect(multiplierAt(0.5, 0.3)).toBe(1);
    expect(multiplierAt(0.999, 0)).toBe(1);
  });

  it("turns a coefficient of variation into that of the lognormal: cv² = exp(sigma²) - 1", () => {
    for (const cv of [0, 0.05, 0.3, 1]) expect(Math.sqrt(Math.expm1(sigmaOf(cv) ** 2))).toBeCloseTo(cv, 12);
  });
});
