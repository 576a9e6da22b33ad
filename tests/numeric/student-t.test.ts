import { describe, expect, it } from "vitest";
import { studentCdf, studentQuantile } from "../../src/numeric/student-t.ts";
import { meanOver } from "../support/quadrature.ts";

describe("Student's distribution", () => {
  it.each([
    // Standard tables, from memory: t for a one-sided 10, 5 and 2.5 %.
    [1, 0.9, 3.078],
    [2, 0.9, 1.886],
    [3, 0.9, 1.638],
    [5, 0.95, 2.015],
    [10, 0.975, 2.228],
    [29, 0.9, 1.311],
    [30, 0.975, 2.042],
  ])("%d degrees of freedom, %d: %d", (freedom, share, t) => {
    expect(studentQuantile(share, freedom)).toBeCloseTo(t, 3);
    expect(studentQuantile(1 - share, freedom)).toBeCloseTo(-t, 3);
  });

  it("is the integral of its density", () => {
    for (const freedom of [1, 2, 3, 4, 7, 12]) {
      const height = (t: number): number => (1 + (t * t) / freedom) ** (-(freedom + 1) / 2);
      // Over the whole line by t = tan(θ).
      const integral = (to: number): number =>
        (to + Math.PI / 2) *
        meanOver(
          (u) => {
            const angle = -Math.PI / 2 + (to + Math.PI / 2) * u;
            return Math.abs(angle) >= Math.PI / 2 ? 0 : height(Math.tan(angle)) / Math.cos(angle) ** 2;
          },
          () => 0,
          [],
        );
      for (const t of [-2, -0.5, 0, 1, 3]) {
        expect(studentCdf(t, freedom)).toBeCloseTo(integral(Math.atan(t)) / integral(Math.PI / 2), 8);
      }
    }
  });
});
