import { describe, expect, it } from "vitest";
import { studentTail } from "../../src/numeric/student-t.ts";
import { thresholdsFromR } from "../support/r-thresholds.ts";

describe("studentTail", () => {
  it.each(thresholdsFromR.tails)("is R's pt with $degrees degrees of freedom", ({ degrees, t, tail }) => {
    t.forEach((value, i) => {
      // The tail is 1 less a sum near 1, so far out only its absolute size is right.
      expect(Math.abs(studentTail(value, degrees) - (tail[i] ?? Number.NaN))).toBeLessThan(1e-14);
    });
  });
});
