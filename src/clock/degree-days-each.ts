import { type Method, knownMethod } from "../diurnal/method.ts";
import { InputError } from "../errors.ts";
import { type LinearResponse, linearResponse } from "../response/linear.ts";
import {
  type DegreeDayOptions,
  clampedAverageDay,
  clampedMeanDay,
  doubleSineDay,
  doubleTriangleDay,
  flatDay,
  sineDay,
  triangleDay,
} from "./degree-days.ts";

type Column = Float64Array;
type Loop = (min: Column, max: Column, response: LinearResponse, out: Column) => void;

/**
 * Degree-days of each day of a column of extremes; the columnar form of `degreeDays`. A `double-` method
 * takes the next day's minimum from the column, and the last day's own.
 * @param min Minimum of each day. @param max Maximum of each day, as long as `min`; same unit.
 * @param options Thresholds, cutoff and method, as for `degreeDays`.
 * @param out Column to write to, as long as `min`. Default: a new one.
 * @returns `out`: degree-days of each day, never NaN.
 * @throws {InputError} `length-mismatch`; `invalid-thresholds`, `invalid-method`; `missing-temperature` or
 *   `min-above-max` naming the first such index. A missing day is never taken for a day without heat.
 * @example
 * Array.from(degreeDaysEach(Float64Array.of(12, 2), Float64Array.of(30, 9), { lower: 10 })) // → [11, 0]
 */
export function degreeDaysEach(
  min: Float64Array,
  max: Float64Array,
  options: DegreeDayOptions,
  out: Float64Array = new Float64Array(min.length),
): Float64Array {
  if (max.length !== min.length || out.length !== min.length) {
    throw new InputError(
      "length-mismatch",
      `min has ${min.length} days, max ${max.length} and out ${out.length}; all must be as long.`,
      { path: ["max"], value: max.length },
    );
  }
  const response = linearResponse(options);
  const method = knownMethod(options.method ?? "single-sine");
  const wrong = firstBadDay(min, max);
  if (wrong >= 0) throw badDay(min, max, wrong);
  LOOPS[method](min, max, response, out);
  return out;
}

// One loop for each method: handed the day's formula as a parameter, a single loop runs several times
// slower once it has seen more than one method, because the engine stops inlining it.
const LOOPS: Readonly<Record<Method, Loop>> = {
  average(min, max, response, out) {
    for (let i = 0; i < out.length; i++) out[i] = flatDay(at(min, i), at(max, i), response);
  },
  "clamped-average"(min, max, response, out) {
    for (let i = 0; i < out.length; i++) out[i] = clampedAverageDay(at(min, i), at(max, i), response);
  },
  "clamped-mean"(min, max, response, out) {
    for (let i = 0; i < out.length; i++) out[i] = clampedMeanDay(at(min, i), at(max, i), response);
  },
  "single-sine"(min, max, response, out) {
    for (let i = 0; i < out.length; i++) out[i] = sineDay(at(min, i), at(max, i), response);
  },
  "single-triangle"(min, max, response, out) {
    for (let i = 0; i < out.length; i++) out[i] = triangleDay(at(min, i), at(max, i), response);
  },
  "double-sine"(min, max, response, out) {
    const last = out.length - 1;
    for (let i = 0; i <= last; i++) {
      out[i] = doubleSineDay(at(min, i), at(max, i), at(min, i < last ? i + 1 : i), response);
    }
  },
  "double-triangle"(min, max, response, out) {
    const last = out.length - 1;
    for (let i = 0; i <= last; i++) {
      out[i] = doubleTriangleDay(at(min, i), at(max, i), at(min, i < last ? i + 1 : i), response);
    }
  },
};

// Indexes stay inside the columns; the fallback is for the type checker and never reached.
function at(column: Column, index: number): number {
  return column[index] ?? Number.NaN;
}

function firstBadDay(min: Column, max: Column): number {
  for (let i = 0; i < min.length; i++) {
    const range = at(max, i) - at(min, i);
    if (!(range >= 0 && range < Infinity)) return i;
  }
  return -1;
}

function badDay(min: Column, max: Column, i: number): InputError {
  const [low, high] = [at(min, i), at(max, i)];
  const place = { path: [i], value: low };
  if (low > high) {
    return new InputError(
      "min-above-max",
      `day ${i} has a minimum of ${low} above its maximum of ${high}.`,
      place,
    );
  }
  return new InputError(
    "missing-temperature",
    `day ${i} has a minimum of ${low} and a maximum of ${high}; fill or leave out missing days first, they are not days without heat.`,
    place,
  );
}
