/** Invented parameters for each rate model: no animal's, only curves of the usual shape between 10 and 37 °C. */
export const INVENTED_RATES: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  "briere-1": { a: 7.5e-5, lower: 11, upper: 38.5 },
  "briere-2": { a: 1.2e-4, lower: 9.5, upper: 36.5, m: 3.5 },
  "lactin-2": { rho: 0.008, upper: 40, delta: 2.5, lambda: -1.06 },
  "logan-6": { psi: 0.01, rho: 0.12, upper: 38, delta: 4 },
  "sharpe-schoolfield-hot": { rate298: 0.2, activation: 22000, hotHalf: 305, hotEnthalpy: 60000 },
  "sharpe-schoolfield": {
    rate298: 0.2,
    activation: 18000,
    coldHalf: 285,
    coldEnthalpy: -60000,
    hotHalf: 307,
    hotEnthalpy: 90000,
  },
};
