import { InputError, LARGEST_NUMBER, finite } from "../errors.ts";
import { given } from "../given.ts";
import { type Method, refusedMethod } from "../diurnal/method.ts";
import { sineAbove, sineExcess } from "../diurnal/sine.ts";
import { triangleAbove, triangleExcess } from "../diurnal/triangle.ts";
import { type LinearResponse, type Thresholds, linearRate, linearResponse } from "../response/linear.ts";

/** Extremes of one day. */
export interface DayExtremes {
  readonly min: number;
  readonly max: number;
  /** Minimum of the next day, for the `double-` methods. Default: this day's own. */
  readonly nextMin?: number;
}

/** Thresholds and method of a degree-day sum. */
export interface DegreeDayOptions extends Thresholds {
  /** Default `single-sine`. The `clamped-` methods hold at the thresholds whatever the cutoff says. */
  readonly method?: Method;
}

// Made once, for years of days.
const AT_DAY = ["day"];

/**
 * Degree-days of one day. Any one unit: extremes and thresholds in °F give degree-days in °F, which are
 * 1.8 times those in °C.
 * @param day Extremes of the day.
 * @param options Thresholds, cutoff and method.
 * @returns Degree-days, 0 or more.
 * @throws {InputError} `invalid-number`, `min-above-max`, `invalid-thresholds`, `invalid-method`.
 * @example
 * degreeDays({ min: 8, max: 24 }, { lower: 10 }) // → 6.304016860415474
 * @example
 * degreeDays({ min: 60, max: 95 }, { lower: 50, upper: 88 }) // → 26.14291756408603
 * @see Baskerville & Emin (1969), Ecology 50, 514-517; Allen (1976), Environ. Entomol. 5, 388-396 (half-day
 *   sine); McMaster & Wilhelm (1997), Agric. For. Meteorol. 87, 291-300 (the averages are not one rule).
 */
export function degreeDays(day: DayExtremes, options: DegreeDayOptions): number {
  given(day, AT_DAY, "an object with min and max");
  const { min, max, nextMin = min } = day;
  const response = linearResponse(options);
  checkExtremes(min, max);
  if (!Number.isFinite(nextMin)) finite(nextMin, ["nextMin"], "the next day's minimum");
  const { method = "single-sine" } = options;
  switch (method) {
    case "average":
      return flatDay(min, max, response);
    case "clamped-average":
      return clampedAverageDay(min, max, response);
    case "clamped-mean":
      return clampedMeanDay(min, max, response);
    case "single-sine":
      return sineDay(min, max, response);
    case "double-sine":
      return doubleSineDay(min, max, nextMin, response);
    case "single-triangle":
      return triangleDay(min, max, response);
    case "double-triangle":
      return doubleTriangleDay(min, max, nextMin, response);
    default:
      throw refusedMethod(method);
  }
}

/** Degree-days of a day at its mean temperature. @internal */
export function flatDay(min: number, max: number, response: LinearResponse): number {
  return linearRate(response, min + (max - min) / 2);
}

/** Degree-days of a day whose extremes are brought between the thresholds first. @internal */
export function clampedAverageDay(min: number, max: number, { lower, upper }: LinearResponse): number {
  return heldExcess(min, lower, upper) / 2 + heldExcess(max, lower, upper) / 2;
}

/** Degree-days of a day whose mean is brought between the thresholds. @internal */
export function clampedMeanDay(min: number, max: number, { lower, upper }: LinearResponse): number {
  return heldExcess(min + (max - min) / 2, lower, upper);
}

/**
 * Degrees of a temperature above the lower threshold, those above the upper one left out. Each case is answered
 * by itself: to bring the temperature between the two and subtract then takes a loop half as long again. @internal
 */
export function heldExcess(temperature: number, lower: number, upper: number): number {
  return temperature <= lower ? 0 : temperature >= upper ? upper - lower : temperature - lower;
}

/** Degree-days of a day on a sine wave, its heat above the upper threshold left out. @internal */
export function sineHeldDay(min: number, max: number, lower: number, upper: number): number {
  const uncut = sineExcess(lower, min, max);
  return max <= upper ? uncut : uncut - sineExcess(upper, min, max);
}

/** Degree-days of a day on a sine wave. @internal */
export function sineDay(min: number, max: number, response: LinearResponse): number {
  const { lower, upper, zero, atUpper, stop } = response;
  const uncut = sineExcess(lower, min, max);
  if (max <= upper || atUpper === 0) return uncut;
  let sum = uncut + atUpper * sineExcess(upper, min, max);
  if (max > zero) sum += sineExcess(zero, min, max);
  if (stop !== 0) sum -= stop * sineAbove(upper, min, max);
  return withoutCrumb(sum, uncut);
}

/** Degree-days of a day on straight lines, its heat above the upper threshold left out. @internal */
export function triangleHeldDay(min: number, max: number, lower: number, upper: number): number {
  const uncut = triangleExcess(lower, min, max);
  return max <= upper ? uncut : uncut - triangleExcess(upper, min, max);
}

/** Degree-days of a day on straight lines. @internal */
export function triangleDay(min: number, max: number, response: LinearResponse): number {
  const { lower, upper, zero, atUpper, stop } = response;
  const uncut = triangleExcess(lower, min, max);
  if (max <= upper || atUpper === 0) return uncut;
  let sum = uncut + atUpper * triangleExcess(upper, min, max);
  if (max > zero) sum += triangleExcess(zero, min, max);
  if (stop !== 0) sum -= stop * triangleAbove(upper, min, max);
  return withoutCrumb(sum, uncut);
}

/** Degree-days of half a sine wave up to the maximum and half a one to the next minimum. @internal */
export function doubleSineDay(min: number, max: number, next: number, response: LinearResponse): number {
  // When warm air moves in, the next night can be warmer than the day: the half wave then rises.
  const fall = next <= max ? sineDay(next, max, response) : sineDay(max, next, response);
  return (sineDay(min, max, response) + fall) / 2;
}

/** Degree-days of a straight line up to the maximum and one to the next minimum. @internal */
export function doubleTriangleDay(min: number, max: number, next: number, response: LinearResponse): number {
  const fall = next <= max ? triangleDay(next, max, response) : triangleDay(max, next, response);
  return (triangleDay(min, max, response) + fall) / 2;
}

// Where a cutoff takes all, rounding leaves a crumb of either sign.
function withoutCrumb(sum: number, uncut: number): number {
  return sum <= 1e-14 * uncut ? 0 : sum;
}

/** As {@link doubleTriangleDay}, the heat above the upper threshold left out. @internal */
export function doubleTriangleHeldDay(
  min: number,
  max: number,
  next: number,
  lower: number,
  upper: number,
): number {
  const fall =
    next <= max ? triangleHeldDay(next, max, lower, upper) : triangleHeldDay(max, next, lower, upper);
  return (triangleHeldDay(min, max, lower, upper) + fall) / 2;
}

function checkExtremes(min: number, max: number): void {
  const range = max - min;
  if (range >= 0 && range <= LARGEST_NUMBER) return;
  finite(min, ["min"], "a temperature");
  finite(max, ["max"], "a temperature");
  finite(range, ["max"], "a temperature within reach of the minimum");
  throw new InputError(
    "min-above-max",
    `min is ${min}, above max ${max}; the minimum must not be above the maximum.`,
    {
      path: ["min"],
      value: min,
    },
  );
}
