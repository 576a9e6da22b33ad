import type { Celsius } from "../units.ts";
import { MARGIN, type RateModel, type RateParameters, bestFactor, temperatureRange } from "./rate-model.ts";

// Logan, J. A. et al. (1976), Environ. Entomol. 5, 1133-1140 (from memory), equation 6:
//   r = psi·[exp(rho·T) - exp(rho·Tm - (Tm - T)/delta)], 0 at and above Tm.
// In the paper T counts from a base temperature. A base only multiplies psi, by exp(rho·base), so T is in °C here.

type Name = "psi" | "rho" | "upper" | "delta";

/**
 * Logan's sixth equation: exponential rise, then a fall within `delta` of the upper limit. It has no lower limit:
 * in the cold its rate dwindles without ever being 0.
 */
export const logan6: RateModel<Name> = {
  id: "logan-6",
  parameters: [
    { name: "psi", unit: "per day", meaning: "factor of the whole curve: rate of the rise at 0 °C" },
    { name: "rho", unit: "per °C", meaning: "relative rise of the rate with temperature in the cold" },
    { name: "upper", unit: "°C", meaning: "temperature at and above which nothing develops" },
    { name: "delta", unit: "°C", meaning: "width of the fall below the upper limit" },
  ],
  fault: (parameters) =>
    parameters.psi > 0 ? fallFault(parameters) : `psi is ${parameters.psi}, not above 0`,
  rate: (temperature, { psi, ...fall }) =>
    temperature >= fall.upper ? 0 : psi * riseLessFall(temperature, fall),
  optimum: riseOptimum,
  guess(points) {
    const { least, greatest, starts } = fallGuess(points, [0.03, 0.07, 0.12, 0.17]);
    return {
      // Below a gap of 1e-3 the curve is its own limit to a thousandth.
      least: { ...least, psi: 1e-9, delta: 1e-3 },
      greatest: { psi: 100, ...greatest },
      starts: starts.map((fall) => ({
        psi: bestFactor(points, (t) => logan6.rate(t, { psi: 1, ...fall })),
        ...fall,
      })),
    };
  },
  // As rho nears 1/delta, psi grows beyond bounds while psi times their gap stays put: the curve tends to
  // psi·gap·(Tm - T)·exp(rho·T).
  search: {
    to: ({ psi, ...fall }) => ({ psi: psi * gapOf(fall), ...fallSearch.to(fall) }),
    from: ({ psi, ...coordinates }) => ({ psi: psi / coordinates.delta, ...fallSearch.from(coordinates) }),
  },
};

type Fall = RateParameters<"rho" | "upper" | "delta">;

/** exp(rho·T) - exp(rho·Tm - (Tm - T)/delta). @internal */
export function riseLessFall(temperature: Celsius, { rho, upper, delta }: Fall): number {
  return Math.exp(rho * temperature) - Math.exp(rho * upper - (upper - temperature) / delta);
}

/** Where the rise less the fall is greatest: the root of its derivative. @internal */
export function riseOptimum({ rho, upper, delta }: Fall): Celsius {
  return upper + (delta * Math.log(rho * delta)) / (1 - rho * delta);
}

/** Why a rise and a fall are impossible together, or `null`. @internal */
export function fallFault({ rho, delta }: Fall): string | null {
  if (rho <= 0) return `rho is ${rho}, not above 0`;
  if (delta <= 0) return `delta is ${delta}, not above 0`;
  return rho * delta < 1 ? null : `rho times delta is ${rho * delta}, not below 1, so that nothing falls`;
}

/** 1/delta less rho, which is above 0 where a rise has its fall. */
function gapOf({ rho, delta }: Fall): number {
  return 1 / delta - rho;
}

/**
 * The gap in place of `delta`: it alone sets the height of the curve where rho and 1/delta are nearly equal, as fits
 * often have them. @internal
 */
export const fallSearch = {
  to: (fall: Fall): Fall => ({ ...fall, delta: gapOf(fall) }),
  from: ({ rho, upper, delta: gap }: Fall): Fall => ({ rho, upper, delta: 1 / (rho + gap) }),
};

/** Where a rise and a fall may lie; the limits of `delta` are those of the gap. @internal */
export function fallGuess(
  points: Parameters<typeof temperatureRange>[0],
  rises: readonly number[],
): { readonly least: Fall; readonly greatest: Fall; readonly starts: readonly Fall[] } {
  const [, hottest] = temperatureRange(points);
  return {
    least: { rho: 1e-4, upper: hottest + MARGIN, delta: 1e-5 },
    greatest: { rho: 0.5, upper: hottest + 40, delta: 20 },
    starts: rises.flatMap((rho) =>
      [0.5, 2, 5, 10].flatMap((above) =>
        [3e-4, 1e-3, 3e-3, 0.01, 0.05, 0.2, 0.5, 1].map((gap) =>
          fallSearch.from({ rho, upper: hottest + above, delta: gap }),
        ),
      ),
    ),
  };
}
