import type { Celsius } from "../units.ts";
import {
  MARGIN,
  type RateModel,
  type RateParameters,
  type RatePoint,
  atLeastNothing,
  bestFactor,
  temperatureRange,
} from "./rate-model.ts";

// Brière, J.-F. et al. (1999), Environ. Entomol. 28, 22-29 (citation second-hand, formula from memory):
//   r = a·T·(T - T0)·(TL - T)^(1/m), 0 outside T0 to TL.
// Where T0 is below 0 °C the factor T also ends development at 0 °C.

/**
 * Brière's second model: from nothing at the lower limit through an optimum to nothing at the upper limit, with a
 * fall whose steepness is free.
 */
export const briere2: RateModel<"a" | "lower" | "upper" | "m"> = {
  id: "briere-2",
  parameters: [
    { name: "a", unit: "per day and °C^(2 + 1/m)", meaning: "factor of the whole curve" },
    { name: "lower", unit: "°C", meaning: "temperature at and below which nothing develops" },
    { name: "upper", unit: "°C", meaning: "temperature at and above which nothing develops" },
    { name: "m", unit: "none", meaning: "steepness of the fall near the upper limit, above 0" },
  ],
  fault: ({ a, lower, upper, m }) =>
    briereFault(a, lower, upper) ?? (m > 0 ? null : `m is ${m}, not above 0`),
  rate: (temperature, { a, lower, upper, m }) =>
    temperature <= lower || temperature >= upper
      ? 0
      : atLeastNothing(a * temperature * (temperature - lower) * (upper - temperature) ** (1 / m)),
  optimum: ({ lower, upper, m }) => briereOptimum(lower, upper, m),
  guess(points) {
    const { least, greatest, starts } = briereGuess(points);
    return {
      least: { ...least, m: 0.2 },
      greatest: { ...greatest, m: 50 },
      starts: starts.flatMap(({ lower, upper }) =>
        [1, 2, 4, 10].map((m) => ({
          a: bestFactor(points, (t) => briere2.rate(t, { a: 1, lower, upper, m })),
          lower,
          upper,
          m,
        })),
      ),
    };
  },
};

/** Why Brière's limits are impossible, or `null`. @internal */
export function briereFault(a: number, lower: Celsius, upper: Celsius): string | null {
  if (a <= 0) return `a is ${a}, not above 0`;
  if (lower >= upper) return `the lower limit (${lower}) is not below the upper limit (${upper})`;
  return upper > 0 ? null : `the upper limit (${upper}) is not above 0 °C`;
}

/** Where Brière's curve with exponent 1/m is greatest (from memory, and checked numerically). @internal */
export function briereOptimum(lower: Celsius, upper: Celsius, m: number): Celsius {
  // A lower limit below 0 °C is no limit: the curve then begins at 0 °C, and the same root lies above it.
  const root = Math.sqrt(
    4 * m * m * upper * upper + (m + 1) ** 2 * lower * lower - 4 * m * m * lower * upper,
  );
  return (2 * m * upper + (m + 1) * lower + root) / (4 * m + 2);
}

/** Where limits may lie: whatever developed was between them. @internal */
export function briereGuess(points: readonly RatePoint[]): {
  readonly least: RateParameters<"a" | "lower" | "upper">;
  readonly greatest: RateParameters<"a" | "lower" | "upper">;
  readonly starts: readonly RateParameters<"lower" | "upper">[];
} {
  const [coldest, hottest] = temperatureRange(points);
  return {
    least: { a: 1e-9, lower: coldest - 40, upper: hottest + MARGIN },
    greatest: { a: 1, lower: coldest - MARGIN, upper: hottest + 40 },
    starts: [1, 4, 9].flatMap((below) =>
      [0.5, 3, 8].map((above) => ({ lower: coldest - below, upper: hottest + above })),
    ),
  };
}
