import { describe, expect, it } from "vitest";
import { celsiusDegreesToFahrenheit, fahrenheitDegreesToCelsius } from "../../src/units.ts";
import { halfLastDigit, published } from "../support/published.ts";

// The same requirement printed in both units (fixtures/published/unit-conversions.json).
const { pairs, sums } = published("unit-conversions");

describe("requirements printed in both units", () => {
  it.each(pairs)("$id: $celsius °C·d is $fahrenheit °F·d", ({ celsius, fahrenheit }) => {
    // Each side was rounded, and the first one's rounding grows by 1.8 on the way.
    const tolerance = halfLastDigit(fahrenheit) + 1.8 * halfLastDigit(celsius);
    expect(tolerance).toBeLessThan(0.15);
    expect(Math.abs(celsiusDegreesToFahrenheit(Number(celsius)) - Number(fahrenheit))).toBeLessThanOrEqual(
      0.1,
    );
    expect(Math.abs(fahrenheitDegreesToCelsius(Number(fahrenheit)) - Number(celsius))).toBeLessThanOrEqual(
      0.1,
    );
  });

  it.each(sums)("$id: $terms add up to $printed", ({ terms, printed }) => {
    expect(terms.reduce((sum, term) => sum + Number(term), 0)).toBeCloseTo(Number(printed), 9);
  });

  it("a day of 22.5 °F·d is one of 12.5 °C·d", () => {
    // European corn borer day 85/60 °F, base 50: Iowa State, ICM 28 Jun 1999.
    expect(fahrenheitDegreesToCelsius(22.5)).toBeCloseTo(12.5, 12);
  });
});
