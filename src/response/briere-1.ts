import { briereFault, briereGuess, briereOptimum } from "./briere-2.ts";
import { type RateModel, atLeastNothing, bestFactor } from "./rate-model.ts";

// Brière, J.-F. et al. (1999), Environ. Entomol. 28, 22-29 (citation second-hand, formula from memory):
//   r = a·T·(T - T0)·sqrt(TL - T), 0 outside T0 to TL. The second model with m = 2.

/**
 * Brière's first model: three parameters, an optimum between two limits. The first to try on trials that reach
 * past the optimum.
 */
export const briere1: RateModel<"a" | "lower" | "upper"> = {
  id: "briere-1",
  parameters: [
    { name: "a", unit: "per day and °C^2.5", meaning: "factor of the whole curve" },
    { name: "lower", unit: "°C", meaning: "temperature at and below which nothing develops" },
    { name: "upper", unit: "°C", meaning: "temperature at and above which nothing develops" },
  ],
  fault: ({ a, lower, upper }) => briereFault(a, lower, upper),
  rate: (temperature, { a, lower, upper }) =>
    temperature <= lower || temperature >= upper
      ? 0
      : atLeastNothing(a * temperature * (temperature - lower) * Math.sqrt(upper - temperature)),
  optimum: ({ lower, upper }) => briereOptimum(lower, upper, 2),
  guess(points) {
    const { least, greatest, starts } = briereGuess(points);
    return {
      least,
      greatest,
      starts: starts.map(({ lower, upper }) => ({
        a: bestFactor(points, (t) => briere1.rate(t, { a: 1, lower, upper })),
        lower,
        upper,
      })),
    };
  },
};
