import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { risingRoot } from "../../src/numeric/root.ts";

describe("risingRoot", () => {
  it("finds where a rising function is 0", () => {
    expect(risingRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 9);
    expect(risingRoot((x) => Math.exp(x) - 1e6, 0, 100)).toBeCloseTo(Math.log(1e6), 6);
  });

  it("answers an end that is past the root already", () => {
    expect(risingRoot((x) => x + 1, 0, 5)).toBe(0);
    expect(risingRoot((x) => x - 9, 0, 5)).toBe(5);
    expect(risingRoot((x) => x, 0, 5)).toBe(0);
  });

  it("finds a jump and a bend, wherever they are", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.99, noNaN: true }), (at) => {
        expect(risingRoot((x) => (x < at ? -1e-6 : 1), 0, 1)).toBeCloseTo(at, 7);
        expect(risingRoot((x) => (x < at ? (x - at) * 1e-6 : (x - at) * 1e6), 0, 1)).toBeCloseTo(at, 7);
      }),
    );
  });
});
