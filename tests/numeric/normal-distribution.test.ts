import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalCdf, normalDensity, normalQuantile } from "../../src/numeric/normal-distribution.ts";
import { meanOver } from "../support/quadrature.ts";

describe("normalCdf", () => {
  // Table of the normal probability function P(x): Abramowitz & Stegun (1964), Handbook of Mathematical
  // Functions, Table 26.1 (from memory). Digits as recalled; the tolerance is half of the last one.
  it.each([
    [0, "0.5"],
    [0.25, "0.59870632568"],
    [0.5, "0.69146246127"],
    [1, "0.84134474606854"],
    [1.5, "0.93319279873"],
    [2, "0.97724986805182"],
    [2.5, "0.99379033467"],
    [3, "0.99865010196837"],
    [4, "0.99996832875817"],
  ])("P(%d) is %s", (z, printed) => {
    const tolerance = 0.5 * 10 ** -(printed.length - 2);
    expect(Math.abs(normalCdf(z) - Number(printed))).toBeLessThanOrEqual(tolerance);
    expect(Math.abs(normalCdf(-z) - (1 - Number(printed)))).toBeLessThanOrEqual(tolerance);
  });

  it("agrees with the integral of the density by a Gauss-Legendre rule", () => {
    fc.assert(
      fc.property(fc.double({ min: -7.5, max: 7.5, noNaN: true }), (z) => {
        const integral =
          0.5 +
          z *
            meanOver(
              (u) => normalDensity(u * z),
              (u) => u,
              [],
            );
        expect(Math.abs(normalCdf(z) - integral)).toBeLessThan(1e-13);
      }),
      { numRuns: 200 },
    );
  });

  it("never falls, adds up to 1 with its mirror, and ends far out", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -9, max: 9, noNaN: true }),
        fc.double({ min: -9, max: 9, noNaN: true }),
        (a, b) => {
          // Neighbours may differ by a rounding error.
          expect(normalCdf(Math.max(a, b)) - normalCdf(Math.min(a, b))).toBeGreaterThan(-1e-15);
          expect(normalCdf(a) + normalCdf(-a)).toBeCloseTo(1, 14);
        },
      ),
    );
    expect([normalCdf(-Infinity), normalCdf(-40), normalCdf(40), normalCdf(Infinity)]).toEqual([0, 0, 1, 1]);
  });

  it("answers NaN with NaN instead of never", () => {
    expect(normalCdf(Number.NaN)).toBeNaN();
  });
});

describe("normalQuantile", () => {
  // Percentage points of the normal distribution: Abramowitz & Stegun, Table 26.5 (from memory).
  it.each([
    [0.75, "0.67449"],
    [0.9, "1.28155"],
    [0.95, "1.64485"],
    [0.975, "1.95996"],
    [0.99, "2.32635"],
    [0.995, "2.57583"],
    [0.999, "3.09023"],
    [0.9995, "3.29053"],
  ])("%d of animals lie below %s", (share, printed) => {
    expect(Math.abs(normalQuantile(share) - Number(printed))).toBeLessThanOrEqual(0.5e-5);
    expect(normalQuantile(1 - share)).toBeCloseTo(-Number(printed), 4);
  });

  it("is the inverse of the distribution function", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }), (share) => {
        expect(Math.abs(normalCdf(normalQuantile(share)) - share)).toBeLessThan(1e-14);
      }),
    );
    expect(normalQuantile(0.5)).toBe(0);
  });
});
