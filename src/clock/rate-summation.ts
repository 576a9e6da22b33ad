import { InputError, finite, shown } from "../errors.ts";
import { given, givenFunction } from "../given.ts";
import { type DevelopmentRate, checkedRate } from "./development-clock.ts";
import { integral } from "../numeric/gauss-lobatto.ts";

/** A day's curve for {@link rateSummationEffect}. */
export type DayShape = "single-sine" | "single-triangle";

const SHAPES: readonly DayShape[] = ["single-sine", "single-triangle"];

/**
 * How much a day between two extremes speeds or slows development against a constant day at its mean: the mean
 * rate over the day divided by the rate at the mean temperature, less 1. Above 0 where the rate bends upwards
 * (near the lower threshold), below 0 where it bends downwards (near the optimum and beyond): Jensen's
 * inequality. 0, but for rounding, where the rate is a straight line over the day.
 * @param rate Development per day at a temperature, °C.
 * @param day Extremes, °C. They stand half the range above and below the mean.
 * @param shape How the temperature runs between the extremes. Default `single-sine`.
 * @returns Such as 0.283 for 28.3 % faster; `null` when nothing develops at the mean temperature, where there is
 *   nothing to compare with.
 * @throws {InputError} `invalid-number` for extremes or rates that are none; `min-above-max`; `invalid-method`.
 * @example
 * rateSummationEffect((t) => (t - 10) ** 2, { min: 10, max: 30 })?.toFixed(6) // → "0.500000"
 * @example
 * rateSummationEffect((t) => Math.sqrt(t - 10), { min: 10, max: 30 }, "single-triangle")?.toFixed(6) // → "-0.057191"
 * @see Kaufmann, O. (1932), Z. Morphol. Oekol. Tiere 25, 353-361 (from memory).
 */
export function rateSummationEffect(
  rate: DevelopmentRate,
  day: { readonly min: number; readonly max: number },
  shape: DayShape = "single-sine",
): number | null {
  givenFunction(rate, ["rate"]);
  given(day, ["day"], "an object with min and max");
  const min = finite(day.min, ["min"], "a temperature");
  const max = finite(day.max, ["max"], "a temperature");
  if (min > max) {
    throw new InputError(
      "min-above-max",
      `min is ${min}, above max ${max}; the minimum must not be above the maximum.`,
      { path: ["min"], value: min },
    );
  }
  if (!SHAPES.includes(shape)) {
    throw new InputError(
      "invalid-method",
      `the shape is ${shown(shape)}; it must be one of ${SHAPES.join(", ")}.`,
      { path: ["shape"], value: shape },
    );
  }
  const checked = checkedRate(rate);
  const mean = min + (max - min) / 2;
  const half = (max - min) / 2;
  const atMean = checked(mean);
  if (atMean === 0) return null;
  // All four quarters of a day are one curve away from the mean, twice up and twice down.
  const above =
    shape === "single-sine" ? (u: number) => half * Math.sin((Math.PI / 2) * u) : (u: number) => half * u;
  const change = integral((u) => (checked(mean + above(u)) + checked(mean - above(u))) / 2 / atMean, 0, 1);
  return change - 1;
}
