import { InputError, shown } from "../errors.ts";

/** The methods for daily extremes by name. */
export const METHODS = [
  "average",
  "clamped-average",
  "clamped-mean",
  "single-sine",
  "double-sine",
  "single-triangle",
  "double-triangle",
] as const;

/**
 * How the temperature of a day is taken from its extremes.
 * - `average`: the mean of the two, all day.
 * - `clamped-average`: each extreme is first brought between the thresholds, then the mean.
 * - `clamped-mean`: the mean is brought between the thresholds.
 * - `single-sine`, `single-triangle`: a sine wave, or straight lines, between the two.
 * - `double-sine`, `double-triangle`: half a day from the minimum to the maximum, half a day from the
 *   maximum to the next day's minimum.
 */
export type Method = (typeof METHODS)[number];

/**
 * The method itself when it is one.
 * @throws {InputError} `invalid-method` otherwise.
 */
export function knownMethod(method: string): Method {
  const found = METHODS.find((known) => known === method);
  if (found !== undefined) return found;
  throw new InputError(
    "invalid-method",
    `method is ${shown(method)}; it must be one of ${METHODS.join(", ")}.`,
    {
      path: ["method"],
      value: method,
    },
  );
}

/** Value brought between two limits. @internal */
export function clamp(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}
