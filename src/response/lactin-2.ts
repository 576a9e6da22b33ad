import { fallFault, fallGuess, fallSearch, riseLessFall, riseOptimum } from "./logan-6.ts";
import { type RateModel, atLeastNothing } from "./rate-model.ts";

// Lactin, D. J. et al. (1995), Environ. Entomol. 24, 68-75 (from memory):
//   r = exp(rho·T) - exp(rho·Tm - (Tm - T)/delta) + lambda, 0 where that is negative.

/**
 * Lactin's second model: Logan's rise and fall without their factor, moved down by `lambda`, so that the curve meets
 * zero in the cold as well. Its limits are where it meets zero; the upper one lies a little below `upper`.
 */
export const lactin2: RateModel<"rho" | "upper" | "delta" | "lambda"> = {
  id: "lactin-2",
  parameters: [
    { name: "rho", unit: "per °C", meaning: "rise of the rate with temperature" },
    { name: "upper", unit: "°C", meaning: "temperature at which rise and fall are equal" },
    { name: "delta", unit: "°C", meaning: "width of the fall below it" },
    { name: "lambda", unit: "per day", meaning: "shift of the whole curve, 0 or below" },
  ],
  fault: ({ lambda, ...fall }) =>
    lambda <= 0 ? fallFault(fall) : `lambda is ${lambda}, above 0, so that the curve never ends in the cold`,
  rate: (temperature, { lambda, ...fall }) => atLeastNothing(riseLessFall(temperature, fall) + lambda),
  optimum: riseOptimum,
  guess(points) {
    const { least, greatest, starts } = fallGuess(
      points,
      [0.002, 0.004, 0.006, 0.008, 0.01, 0.015, 0.03, 0.06, 0.1, 0.14],
    );
    return {
      least: { ...least, lambda: -5 },
      greatest: { ...greatest, lambda: 0 },
      starts: starts.map((fall) => ({
        ...fall,
        lambda: Math.min(
          0,
          points.reduce((sum, { temperature, rate }) => sum + rate - riseLessFall(temperature, fall), 0) /
            points.length,
        ),
      })),
    };
  },
  search: {
    to: ({ lambda, ...fall }) => ({ ...fallSearch.to(fall), lambda }),
    from: ({ lambda, ...coordinates }) => ({ ...fallSearch.from(coordinates), lambda }),
  },
};
