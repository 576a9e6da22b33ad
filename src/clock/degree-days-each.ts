import { knownMethod } from "../diurnal/method.ts";
import { InputError } from "../errors.ts";
import { givenColumn } from "../given.ts";
import { linearResponse } from "../response/linear.ts";
import { BENT_LOOPS, HELD_LOOPS } from "./day-loops.ts";
import type { DegreeDayOptions } from "./degree-days.ts";

/**
 * Degree-days of each day of a column of extremes; the columnar form of `degreeDays`. A `double-` method
 * takes the next day's minimum from the column, and the last day's own.
 * @param min Minimum of each day. @param max Maximum of each day, as long as `min`; same unit.
 * @param options Thresholds, cutoff and method, as for `degreeDays`.
 * @param out Column to write to, as long as `min`. Default: a new one.
 * @returns `out`: degree-days of each day, never NaN. After an error it holds the days before the refused one.
 * @throws {InputError} `length-mismatch`; `invalid-thresholds`, `invalid-method`; `missing-temperature` or
 *   `min-above-max` naming the first such index. A missing day is never taken for a day without heat.
 * @example
 * Array.from(degreeDaysEach(Float64Array.of(12, 2), Float64Array.of(30, 9), { lower: 10 })) // → [11, 0]
 */
export function degreeDaysEach(
  min: Float64Array,
  max: Float64Array,
  options: DegreeDayOptions,
  out: Float64Array = columnAsLong(min),
): Float64Array {
  givenColumn(max, ["max"]);
  if (max.length !== min.length || out.length !== min.length) {
    throw new InputError(
      "length-mismatch",
      `min has ${min.length} days, max ${max.length} and out ${out.length}; all must be as long.`,
      { path: ["max"], value: max.length },
    );
  }
  const response = linearResponse(options);
  const method = knownMethod(options.method ?? "single-sine");
  const { lower, upper, cutoff } = response;
  let refused: number;
  if (method === "clamped-average" || method === "clamped-mean") {
    refused = HELD_LOOPS[method](min, max, lower, upper, out);
  } else if (cutoff === "none" || cutoff === "horizontal") {
    refused = HELD_LOOPS[method](min, max, lower, cutoff === "none" ? Infinity : upper, out);
  } else {
    refused = BENT_LOOPS[method](min, max, response, out);
  }
  if (refused >= 0) throw badDay(min, max, refused);
  return out;
}

function columnAsLong(min: Float64Array): Float64Array {
  givenColumn(min, ["min"]);
  return new Float64Array(min.length);
}

function badDay(min: Float64Array, max: Float64Array, i: number): InputError {
  const [low, high] = [min[i] ?? Number.NaN, max[i] ?? Number.NaN];
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
