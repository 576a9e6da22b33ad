import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { betaCdf, betaQuantile, logGamma } from "../../src/numeric/beta-distribution.ts";
import { fromR } from "../support/reference.ts";

const shape = fc.double({ min: 0.5, max: 500, noNaN: true });

describe("beta distribution", () => {
  // R prints 15 digits; the fraction loses a few of them where a and b are in the hundreds.
  test.each(fromR.betas)("as R's pbeta and qbeta for $a, $b", ({ x, a, b, cdf, quantile05, quantile975 }) => {
    expect(betaCdf(x, a, b)).toBeCloseTo(cdf, 11);
    expect(betaQuantile(0.05, a, b)).toBeCloseTo(quantile05, 11);
    expect(betaQuantile(0.975, a, b)).toBeCloseTo(quantile975, 11);
  });

  test("logarithms of gamma as R's lgamma", () => {
    fromR.gammas.x.forEach((x, i) => {
      const expected = fromR.gammas.logGamma[i] ?? Number.NaN;
      expect(Math.abs(logGamma(x) - expected)).toBeLessThan(1e-13 * Math.max(10, Math.abs(expected)));
    });
  });

  test("its ends, and a uniform", () => {
    expect([betaCdf(0, 2, 3), betaCdf(1, 2, 3), betaQuantile(0, 2, 3), betaQuantile(1, 2, 3)]).toEqual([
      0, 1, 0, 1,
    ]);
    expect(betaCdf(0.3, 1, 1)).toBeCloseTo(0.3, 14);
  });

  test("the mirror image, and the quantile undoes the share", () => {
    fc.assert(
      fc.property(shape, shape, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (a, b, share) => {
        const x = betaQuantile(share, a, b);
        expect(betaCdf(x, a, b)).toBeCloseTo(share, 8);
        expect(betaCdf(1 - x, b, a)).toBeCloseTo(1 - share, 8);
      }),
    );
  });
});
