import { expect } from "vitest";

/** Expects as many numbers as there should be, each within a distance of its own. */
export function near(values: readonly number[], expected: readonly number[], within = 1e-6): void {
  expect(values).toHaveLength(expected.length);
  values.forEach((value, i) => expect(Math.abs(value - (expected[i] ?? NaN))).toBeLessThan(within));
}
