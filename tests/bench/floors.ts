// The loops that a careful person writes for one method, one cutoff and clean data: the textbook closed form,
// no checks, no options. What the library costs on top of them is the price of its generality.
import type { Method } from "../../src/index.ts";

type Column = Float64Array;

/** Degree-days of each day between two thresholds, written to `out`. */
export type Floor = (min: Column, max: Column, lower: number, upper: number, out: Column) => void;

function sine(t: number, low: number, high: number): number {
  if (t >= high) return 0;
  const amplitude = (high - low) / 2;
  const below = low + amplitude - t;
  if (t <= low) return below;
  return (
    (below * (Math.PI / 2 + Math.asin(below / amplitude)) +
      Math.sqrt(amplitude * amplitude - below * below)) /
    Math.PI
  );
}

function triangle(t: number, low: number, high: number): number {
  if (t >= high) return 0;
  return t <= low ? (low + high) / 2 - t : ((high - t) * (high - t)) / (2 * (high - low));
}

function held(t: number, lower: number, upper: number): number {
  return t < lower ? lower : t > upper ? upper : t;
}

/** Horizontal cutoff, by method. */
export const FLOORS: Readonly<Record<Method, Floor>> = {
  average(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const mean = ((min[i] ?? 0) + (max[i] ?? 0)) / 2;
      out[i] = mean <= lower ? 0 : mean >= upper ? upper - lower : mean - lower;
    }
  },
  "clamped-average"(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      out[i] = (held(min[i] ?? 0, lower, upper) + held(max[i] ?? 0, lower, upper)) / 2 - lower;
    }
  },
  "clamped-mean"(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      out[i] = held(((min[i] ?? 0) + (max[i] ?? 0)) / 2, lower, upper) - lower;
    }
  },
  "single-sine"(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const low = min[i] ?? 0;
      const high = max[i] ?? 0;
      out[i] = sine(lower, low, high) - sine(upper, low, high);
    }
  },
  "double-sine"(min, max, lower, upper, out) {
    const last = out.length - 1;
    for (let i = 0; i <= last; i++) {
      const low = min[i] ?? 0;
      const high = max[i] ?? 0;
      const next = min[i < last ? i + 1 : i] ?? 0;
      const night = next <= high ? next : high;
      const day = next <= high ? high : next;
      const rise = sine(lower, low, high) - sine(upper, low, high);
      out[i] = (rise + sine(lower, night, day) - sine(upper, night, day)) / 2;
    }
  },
  "single-triangle"(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const low = min[i] ?? 0;
      const high = max[i] ?? 0;
      out[i] = triangle(lower, low, high) - triangle(upper, low, high);
    }
  },
  "double-triangle"(min, max, lower, upper, out) {
    const last = out.length - 1;
    for (let i = 0; i <= last; i++) {
      const low = min[i] ?? 0;
      const high = max[i] ?? 0;
      const next = min[i < last ? i + 1 : i] ?? 0;
      const night = next <= high ? next : high;
      const day = next <= high ? high : next;
      const rise = triangle(lower, low, high) - triangle(upper, low, high);
      out[i] = (rise + triangle(lower, night, day) - triangle(upper, night, day)) / 2;
    }
  },
};

/** Single sine with the cutoffs that FLOORS leaves out. */
export const SINE_FLOORS: Readonly<Record<"none" | "intermediate" | "vertical", Floor>> = {
  none(min, max, lower, _upper, out) {
    for (let i = 0; i < out.length; i++) out[i] = sine(lower, min[i] ?? 0, max[i] ?? 0);
  },
  intermediate(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const low = min[i] ?? 0;
      const high = max[i] ?? 0;
      out[i] = sine(lower, low, high) - 2 * sine(upper, low, high) + sine(2 * upper - lower, low, high);
    }
  },
  vertical(min, max, lower, upper, out) {
    for (let i = 0; i < out.length; i++) {
      const low = min[i] ?? 0;
      const high = max[i] ?? 0;
      const half = (high - low) / 2;
      const share = (low + half - upper) / half;
      const above = upper >= high ? 0 : upper < low ? 1 : 0.5 + Math.asin(share) / Math.PI;
      out[i] = sine(lower, low, high) - sine(upper, low, high) - (upper - lower) * above;
    }
  },
};
