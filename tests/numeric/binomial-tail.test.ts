import { describe, expect, it } from "vitest";
import { binomialTail } from "../../src/numeric/binomial-tail.ts";

/** By counting: every term of the distribution, from the far end. */
function counted(wanted: number, animals: number, share: number): number {
  let sum = 0;
  for (let k = animals; k >= wanted; k--) {
    let term = 1;
    for (let i = 0; i < k; i++) term *= (animals - i) / (i + 1);
    sum += term * share ** k * (1 - share) ** (animals - k);
  }
  return sum;
}

describe("binomialTail", () => {
  it.each([
    [1, 1, 0.3],
    [1, 12, 0.05],
    [6, 12, 0.24],
    [12, 12, 0.9],
    [3, 40, 0.1],
  ])("at least %d of %d at %d is what counting gives", (wanted, animals, share) => {
    expect(binomialTail(wanted, animals, share)).toBeCloseTo(counted(wanted, animals, share), 10);
  });

  it("at the ends", () => {
    expect(binomialTail(0, 5, 0)).toBe(1);
    expect(binomialTail(6, 5, 1)).toBe(0);
    expect(binomialTail(5, 5, 1)).toBe(1);
    expect(binomialTail(1, 5, 0)).toBe(0);
  });

  it("keeps a chance of one in a billion", () => {
    expect(binomialTail(1, 10, 1e-10) / 1e-9).toBeCloseTo(1, 6);
  });
});
