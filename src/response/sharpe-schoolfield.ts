import type { Celsius } from "../units.ts";
import {
  type RateModel,
  type RateParameters,
  type RatePoint,
  atLeastNothing,
  bestFactor,
  temperatureRange,
} from "./rate-model.ts";

// Schoolfield, R. M., Sharpe, P. J. H. & Magnuson, C. E. (1981), J. theor. Biol. 88, 719-731 (citation read, formula
// from memory), T in kelvin:
//                    (T/298)·exp[(HA/R)·(1/298 - 1/T)]
//   r = rho · ------------------------------------------------------
//             1 + exp[(HL/R)·(1/TL - 1/T)] + exp[(HH/R)·(1/TH - 1/T)]

/** Gas constant as the model's authors have it, cal per kelvin and mole (from memory). */
const R = 1.987;
/** 0 °C and the temperature to which `rate298` belongs, kelvin. */
const ZERO = 273.15;
const STANDARD = 298;

type HotName = "rate298" | "activation" | "hotHalf" | "hotEnthalpy";

const RATE = {
  name: "rate298",
  unit: "per day",
  meaning: "rate at 298 K if no enzyme were inactive",
} as const;
const ACTIVATION = { name: "activation", unit: "cal/mol", meaning: "enthalpy of activation" } as const;
const HOT_HALF = {
  name: "hotHalf",
  unit: "K",
  meaning: "temperature at which heat inactivates one half",
} as const;
const HOT = { name: "hotEnthalpy", unit: "cal/mol", meaning: "enthalpy of inactivation by heat" } as const;

/** Sharpe and Schoolfield's model with inactivation by heat alone: four parameters, no end in the cold. */
export const sharpeSchoolfieldHot: RateModel<HotName> = {
  id: "sharpe-schoolfield-hot",
  parameters: [RATE, ACTIVATION, HOT_HALF, HOT],
  fault: hotFault,
  rate: (temperature, parameters) => inactivated(temperature, parameters, 0),
  optimum: (parameters) => optimumBelow(parameters, () => [0, 0]),
  guess(points) {
    const { least, greatest, starts } = hotGuess(points);
    return {
      least,
      greatest,
      starts: starts.map((hot) => ({
        rate298: bestFactor(points, (t) => inactivated(t, { rate298: 1, ...hot }, 0)),
        ...hot,
      })),
    };
  },
};

/** Sharpe and Schoolfield's model with inactivation by heat and by cold: six parameters. */
export const sharpeSchoolfield: RateModel<HotName | "coldHalf" | "coldEnthalpy"> = {
  id: "sharpe-schoolfield",
  parameters: [
    RATE,
    ACTIVATION,
    { name: "coldHalf", unit: "K", meaning: "temperature at which cold inactivates one half" },
    { name: "coldEnthalpy", unit: "cal/mol", meaning: "enthalpy of inactivation by cold, below 0" },
    HOT_HALF,
    HOT,
  ],
  fault(parameters) {
    const { coldHalf, hotHalf, coldEnthalpy } = parameters;
    if (coldEnthalpy >= 0) return `coldEnthalpy is ${coldEnthalpy}, not below 0`;
    if (coldHalf <= 0 || coldHalf >= hotHalf)
      return `coldHalf (${coldHalf} K) is not between 0 K and hotHalf (${hotHalf} K)`;
    return hotFault(parameters);
  },
  rate: (temperature, { coldHalf, coldEnthalpy, ...hot }) =>
    inactivated(temperature, hot, inactive(temperature + ZERO, coldHalf, coldEnthalpy)),
  optimum: ({ coldHalf, coldEnthalpy, ...hot }) =>
    optimumBelow(hot, (kelvin) => [inactive(kelvin, coldHalf, coldEnthalpy), coldEnthalpy]),
  guess(points) {
    const { least, greatest, starts } = hotGuess(points);
    const [coldest, hottest] = temperatureRange(points);
    return {
      least: { ...least, coldHalf: coldest + ZERO - 30, coldEnthalpy: -500_000 },
      greatest: { ...greatest, coldHalf: (coldest + hottest) / 2 + ZERO, coldEnthalpy: -1000 },
      starts: starts.flatMap((hot) =>
        [-3, 3].flatMap((above) =>
          [-30_000, -100_000].map((coldEnthalpy) => {
            const cold = { coldHalf: coldest + ZERO + above, coldEnthalpy };
            const shape = { rate298: 1, ...hot, ...cold };
            return { ...shape, rate298: bestFactor(points, (t) => sharpeSchoolfield.rate(t, shape)) };
          }),
        ),
      ),
    };
  },
};

/** exp[(H/R)·(1/half - 1/T)], the odds of being inactive. */
function inactive(kelvin: number, half: number, enthalpy: number): number {
  return Math.exp((enthalpy / R) * (1 / half - 1 / kelvin));
}

function inactivated(temperature: Celsius, hot: RateParameters<HotName>, cold: number): number {
  const kelvin = temperature + ZERO;
  if (kelvin <= 0) return 0;
  const rise = (kelvin / STANDARD) * Math.exp((hot.activation / R) * (1 / STANDARD - 1 / kelvin));
  return atLeastNothing((hot.rate298 * rise) / (1 + cold + inactive(kelvin, hot.hotHalf, hot.hotEnthalpy)));
}

/**
 * The root of the derivative of ln r, which is T + HA/R less the inactive shares' enthalpies over R, over T squared:
 * above 0 in the cold and below 0 in the heat.
 */
function optimumBelow(
  { activation, hotHalf, hotEnthalpy }: RateParameters<HotName>,
  coldAt: (kelvin: number) => readonly [odds: number, enthalpy: number],
): Celsius {
  let [low, high] = [150, 450];
  for (let i = 0; i < 60; i++) {
    const kelvin = (low + high) / 2;
    const [cold, coldEnthalpy] = coldAt(kelvin);
    const hot = inactive(kelvin, hotHalf, hotEnthalpy);
    const taken = (cold * coldEnthalpy + hot * hotEnthalpy) / (1 + cold + hot);
    if (kelvin + (activation - taken) / R > 0) low = kelvin;
    else high = kelvin;
  }
  return (low + high) / 2 - ZERO;
}

function hotFault({ rate298, activation, hotHalf, hotEnthalpy }: RateParameters<HotName>): string | null {
  if (rate298 <= 0) return `rate298 is ${rate298}, not above 0`;
  if (activation <= 0) return `activation is ${activation}, not above 0`;
  if (hotHalf < 200 || hotHalf > 400) return `hotHalf is ${hotHalf}; it is in kelvin, such as 305`;
  // With less, the rate would rise on in the heat.
  return hotEnthalpy > activation + 1000
    ? null
    : `hotEnthalpy (${hotEnthalpy}) is not well above activation (${activation}), so that there is no optimum`;
}

function hotGuess(points: readonly RatePoint[]): {
  readonly least: RateParameters<HotName>;
  readonly greatest: RateParameters<HotName>;
  readonly starts: readonly Omit<RateParameters<HotName>, "rate298">[];
} {
  const [coldest, hottest] = temperatureRange(points);
  return {
    least: { rate298: 1e-6, activation: 500, hotHalf: (coldest + hottest) / 2 + ZERO, hotEnthalpy: 5000 },
    greatest: { rate298: 100, activation: 100_000, hotHalf: hottest + 30 + ZERO, hotEnthalpy: 500_000 },
    starts: [8000, 16_000, 26_000].flatMap((activation) =>
      [-4, 0, 4].flatMap((above) =>
        [50_000, 100_000].map((hotEnthalpy) => ({
          activation,
          hotHalf: hottest + ZERO + above,
          hotEnthalpy,
        })),
      ),
    ),
  };
}
