import { describe, expect, it } from "vitest";
import { crest, sineExcess } from "../../src/diurnal/sine.ts";
import { triangleExcess } from "../../src/diurnal/triangle.ts";

/**
 * The excess of a wave of amplitude 1 above a level s below its top, by the power series of
 * acos(1 - s) = 2 asin(sqrt(s / 2)) integrated term by term. Derived; all terms are positive, so nothing
 * cancels.
 */
function seriesExcess(s: number): number {
  let [sum, central] = [0, 1];
  for (let k = 0; k < 80; k++) {
    sum += (central * 2 ** -k * s ** k) / ((2 * k + 1) * (k + 1.5));
    central *= (2 * k + 1) / (2 * k + 2);
  }
  return (Math.SQRT2 / Math.PI) * s ** 1.5 * sum;
}

describe("crest", () => {
  it("gives the excess near the top of a wave to 1e-14 of itself, however near", () => {
    for (let i = 1; i <= 2000; i++) {
      for (const s of [i / 2000, (i / 2000) ** 8, (i / 2000) * 1e-12]) {
        expect(Math.abs((s ** 1.5 * crest(s)) / seriesExcess(s) - 1)).toBeLessThan(1e-14);
      }
    }
  });

  it("meets the closed form where that loses nothing: half way down, 1/π", () => {
    expect(crest(1)).toBeCloseTo(1 / Math.PI, 14);
  });
});

describe("sineExcess", () => {
  it("is the distance from the mean apart on either side of it: E(M - d) = E(M + d) + d", () => {
    for (const d of [0, 0.25, 1, 3.9, 4, 7]) {
      expect(sineExcess(20 - d, 16, 24)).toBeCloseTo(sineExcess(20 + d, 16, 24) + d, 13);
    }
  });

  it("does not swallow a missing reading", () => {
    expect(sineExcess(10, Number.NaN, 24)).toBeNaN();
    expect(sineExcess(10, 5, Number.NaN)).toBeNaN();
    expect(sineExcess(30, Number.NaN, 24)).toBeNaN();
    expect(sineExcess(Number.NaN, 5, 24)).toBeNaN();
  });
});

describe("triangleExcess", () => {
  it("does not swallow a missing reading either", () => {
    for (const [t, min, max] of [
      [10, Number.NaN, 24],
      [30, Number.NaN, 24],
      [10, 5, Number.NaN],
      [Number.NaN, 5, 24],
    ] as const)
      expect(triangleExcess(t, min, max)).toBeNaN();
  });
});
