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
/** Writes each day's degree-days to `out`; returns the first day that is none, or -1. */
type Loop = (min: Column, max: Column, response: LinearResponse, out: Column) => number;

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
  const refused = LOOPS[method](min, max, response, out);
  if (refused >= 0) throw badDay(min, max, refused);
  return out;
}

// One loop for each method: handed the day's formula as a parameter, a single loop runs several times
// slower once it has seen more than one method, because the engine stops inlining it. Each looks at a day
// before it counts it, which costs nothing there and a second pass over the columns elsewhere.
const LOOPS: Readonly<Record<Method, Loop>> = {
  average(min, max, response, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = flatDay(low, high, response);
    }
    return -1;
  },
  "clamped-average"(min, max, response, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = clampedAverageDay(low, high, response);
    }
    return -1;
  },
  "clamped-mean"(min, max, response, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = clampedMeanDay(low, high, response);
    }
    return -1;
  },
  "single-sine"(min, max, response, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = sineDay(low, high, response);
    }
    return -1;
  },
  "single-triangle"(min, max, response, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = triangleDay(low, high, response);
    }
    return -1;
  },
  "double-sine"(min, max, response, out) {
    const last = out.length - 1;
    for (let i = 0; i <= last; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = doubleSineDay(low, high, at(min, i < last ? i + 1 : i), response);
    }
    return -1;
  },
  "double-triangle"(min, max, response, out) {
    const last = out.length - 1;
    for (let i = 0; i <= last; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = doubleTriangleDay(low, high, at(min, i < last ? i + 1 : i), response);
    }
    return -1;
  },
};

// Indexes stay inside the columns; the fallback is for the type checker and never reached.
function at(column: Column, index: number): number {
  return column[index] ?? Number.NaN;
}

// False where a reading is missing too: NaN is neither 0 or more nor less than infinite.
function isDay(min: number, max: number): boolean {
  const range = max - min;
  return range >= 0 && range < Infinity;
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
