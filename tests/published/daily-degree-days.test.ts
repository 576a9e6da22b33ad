import { describe, expect, it } from "vitest";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { halfLastDigit, published } from "../support/published.ts";

// Worked days of extension services and climate centres; source and address of each in
// fixtures/published/daily-degree-days.json. All are in °F, which degreeDays takes as it takes °C.

describe("worked days in print", () => {
  it.each(published("daily-degree-days").cases)(
    "$id: $rule, $lower to $upper $unit, max $max min $min mean $mean → $printed ($source)",
    ({ method, lower, upper, max, min, mean, printed, beforeZero }) => {
      const day = { min: min ?? mean ?? NaN, max: max ?? mean ?? NaN };
      const middle = (day.min + day.max) / 2;
      const found =
        method === "heating"
          ? // Heating units below b follow from those above: b - mean = excess above b taken from the mean.
            degreeDays(day, { lower, method: "average" }) - (middle - lower)
          : degreeDays(day, { lower, upper, method });
      expect(Math.abs(found - Number(printed))).toBeLessThanOrEqual(halfLastDigit(printed));
      // Whole-degree extremes leave nothing to round, so the printed digits are all there is.
      expect(found).toBeCloseTo(Number(printed), 9);
      if (beforeZero !== undefined) expect(middle - lower).toBeCloseTo(Number(beforeZero), 9);
    },
  );
});

describe("running totals in print", () => {
  it.each(published("accumulation").cases.filter(({ daily }) => daily !== null))(
    "$id: $daily → $total ($source)",
    ({ daily, total }) => {
      expect(daily?.reduce((sum, one) => sum + Number(one), 0)).toBe(Number(total));
    },
  );
});
