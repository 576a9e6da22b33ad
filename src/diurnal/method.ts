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

/** The methods that need to know where the sun stands, and so a place. */
export const SUN_METHODS = ["sunrise-sine", "sunrise-exponential"] as const;

/**
 * How the temperature of a day is drawn between its extremes when the place is known. Both have the
 * minimum at sunrise and no jump from one day to the next.
 * - `sunrise-sine`: half a cosine wave up to the maximum two hours after the sun's highest, half a one
 *   down to the next minimum at the next sunrise.
 * - `sunrise-exponential`: part of a sine wave by day, exponential decay by night.
 *
 * They are curves over hours only: where the sun decides, a day's sum has no closed form in its extremes.
 */
export type SunMethod = (typeof SUN_METHODS)[number];

/** Every way to draw a curve through days of which the extremes are known. */
export const CURVE_METHODS = [...METHODS, ...SUN_METHODS] as const;

/** A method that needs a day's extremes only, or one that needs a place too. */
export type CurveMethod = Method | SunMethod;

/**
 * The method itself when it is one of the closed forms.
 * @throws {InputError} `invalid-method` otherwise.
 */
export function knownMethod(method: string): Method {
  const found = METHODS.find((known) => known === method);
  if (found === undefined) throw refusedMethod(method);
  return found;
}

/** Why a name is none of the closed forms. @internal */
export function refusedMethod(method: string): InputError {
  const why = SUN_METHODS.some((known) => known === method)
    ? ", which draws hours at a place and has no closed form for a day"
    : "";
  return new InputError(
    "invalid-method",
    `method is ${shown(method)}${why}; it must be one of ${METHODS.join(", ")}.`,
    { path: ["method"], value: method },
  );
}

/**
 * The method itself when a curve can be drawn by it.
 * @throws {InputError} `invalid-method` otherwise.
 */
export function knownCurveMethod(method: string): CurveMethod {
  const found = CURVE_METHODS.find((known) => known === method);
  if (found !== undefined) return found;
  throw new InputError(
    "invalid-method",
    `method is ${shown(method)}; it must be one of ${CURVE_METHODS.join(", ")}.`,
    { path: ["method"], value: method },
  );
}

/** Whether a method needs a place. */
export function isSunMethod(method: CurveMethod): method is SunMethod {
  return SUN_METHODS.some((known) => known === method);
}

/** Value brought between two limits. @internal */
export function clamp(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}
