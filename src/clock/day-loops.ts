import type { Method } from "../diurnal/method.ts";
import { LARGEST_NUMBER } from "../errors.ts";
import type { LinearResponse } from "../response/linear.ts";
import {
  doubleTriangleDay,
  doubleTriangleHeldDay,
  flatDay,
  heldExcess,
  sineDay,
  sineHeldDay,
  triangleDay,
  triangleHeldDay,
} from "./degree-days.ts";

// One loop for each method: handed the day's formula as a parameter, a single loop runs several times
// slower once it has seen more than one method, because the engine stops inlining it. For the same reason the
// double sine has its formula in one place and comes by it twice. Each loop looks at a day before it
// counts it, which costs less there than a pass of its own.

type Column = Float64Array;

/**
 * Where temperatures above the upper threshold count as the threshold; infinite where there is none.
 * Writes each day's degree-days to `out` and returns the first day that is none, or -1.
 */
type HeldLoop = (min: Column, max: Column, lower: number, upper: number, out: Column) => number;

/** As {@link HeldLoop}, for every response. */
type BentLoop = (min: Column, max: Column, response: LinearResponse, out: Column) => number;

/** Loops for a horizontal cutoff or none, by method. */
export const HELD_LOOPS: Readonly<Record<Method, HeldLoop>> = {
  // The mean held between the thresholds: as `clamped-mean`.
  average(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = heldExcess(low + (high - low) / 2, lower, upper);
    }
    return -1;
  },
  "clamped-average"(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = heldExcess(low, lower, upper) / 2 + heldExcess(high, lower, upper) / 2;
    }
    return -1;
  },
  "clamped-mean"(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = heldExcess(low + (high - low) / 2, lower, upper);
    }
    return -1;
  },
  "single-sine"(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = sineHeldDay(low, high, lower, upper);
    }
    return -1;
  },
  "single-triangle"(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = triangleHeldDay(low, high, lower, upper);
    }
    return -1;
  },
  "double-sine"(min, max, lower, upper, out) {
    const last = out.length - 1;
    for (let i = 0; i <= last; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      let night = low;
      let sum = 0;
      for (let half = 0; half < 2; half++) {
        sum += sineHeldDay(night <= high ? night : high, night <= high ? high : night, lower, upper);
        night = at(min, i < last ? i + 1 : i);
      }
      out[i] = sum / 2;
    }
    return -1;
  },
  "double-triangle"(min, max, lower, upper, out) {
    const last = out.length - 1;
    for (let i = 0; i <= last; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = doubleTriangleHeldDay(low, high, at(min, i < last ? i + 1 : i), lower, upper);
    }
    return -1;
  },
};

/** Loops for the cutoffs under which the rate falls again, by method; the clamped methods know none. */
export const BENT_LOOPS: Readonly<Record<Exclude<Method, "clamped-average" | "clamped-mean">, BentLoop>> = {
  average(min, max, response, out) {
    for (let i = 0; i < out.length; i++) {
      const low = at(min, i);
      const high = at(max, i);
      if (!isDay(low, high)) return i;
      out[i] = flatDay(low, high, response);
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
      let night = low;
      let sum = 0;
      for (let half = 0; half < 2; half++) {
        sum += sineDay(night <= high ? night : high, night <= high ? high : night, response);
        night = at(min, i < last ? i + 1 : i);
      }
      out[i] = sum / 2;
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

// Not so where a reading is missing: NaN is neither 0 or more nor less than anything.
function isDay(min: number, max: number): boolean {
  const range = max - min;
  return range >= 0 && range <= LARGEST_NUMBER;
}
