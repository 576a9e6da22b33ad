import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { integral } from "../../src/numeric/gauss-lobatto.ts";
import { meanOver } from "../support/quadrature.ts";

describe("integral", () => {
  it("is exact for polynomials up to the 13th degree", () => {
    for (let degree = 0; degree <= 13; degree++)
      expect(integral((x) => x ** degree, 0, 2)).toBeCloseTo((2 ** (degree + 1) / (degree + 1)) * 1, 8);
    expect(integral((x) => x ** 13, 0, 1)).toBeCloseTo(1 / 14, 15);
  });

  it("is a quadrature of another order on smooth functions, to 1e-12", () => {
    const smooth = (x: number): number => Math.exp(Math.sin(6 * x)) / (1 + x * x);
    expect(integral(smooth, 0, 1)).toBeCloseTo(
      meanOver(smooth, (x) => x, []),
      12,
    );
  });

  it("finds bends, jumps and square roots wherever they lie, to 1e-8", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 0.98, noNaN: true }), (at) => {
        expect(integral((x) => Math.max(0, x - at), 0, 1)).toBeCloseTo((1 - at) ** 2 / 2, 8);
        expect(integral((x) => Math.sqrt(Math.max(0, at - x)), 0, 1)).toBeCloseTo((2 / 3) * at ** 1.5, 8);
        // The last halving is 6e-8 wide, which is all that a jump can cost.
        expect(integral((x) => (x > at ? 1 : 0), 0, 1)).toBeCloseTo(1 - at, 6);
      }),
    );
  });

  it("is nothing over nothing, and does not chase rounding", () => {
    expect(integral(() => 1, 0.3, 0.3)).toBe(0);
    let asked = 0;
    const noise = (x: number): number => {
      asked++;
      return Math.max(0, x * 1e-15 + 20 - 20);
    };
    integral(noise, 0, 1);
    expect(asked).toBeLessThan(100);
  });
});
