import type { Method } from "../../src/diurnal/method.ts";
import type { Cutoff } from "../../src/response/linear.ts";

// Degree-days as a textbook writes them, one case after the other; shares no formula with src.

/** Extremes of a day and the next day's minimum. */
export interface PlainDay {
  readonly min: number;
  readonly max: number;
  readonly nextMin: number;
}

type Shape = "sine" | "triangle";

/** Degree-days of one day. */
export function plainDegreeDays(
  { min, max, nextMin }: PlainDay,
  options: {
    readonly lower: number;
    readonly upper: number;
    readonly cutoff: Cutoff;
    readonly method: Method;
  },
): number {
  const { lower, upper, cutoff } = options;
  const held = (t: number): number => Math.min(Math.max(t, lower), upper);
  switch (options.method) {
    case "average":
      return rate(min / 2 + max / 2, lower, upper, cutoff);
    case "clamped-average":
      return (held(min) + held(max)) / 2 - lower;
    case "clamped-mean":
      return held(min / 2 + max / 2) - lower;
    case "single-sine":
      return onCurve("sine", min, max, lower, upper, cutoff);
    case "single-triangle":
      return onCurve("triangle", min, max, lower, upper, cutoff);
    case "double-sine":
    case "double-triangle": {
      const shape = options.method === "double-sine" ? "sine" : "triangle";
      const rise = onCurve(shape, min, max, lower, upper, cutoff);
      const fall = onCurve(shape, Math.min(max, nextMin), Math.max(max, nextMin), lower, upper, cutoff);
      return rise / 2 + fall / 2;
    }
  }
}

function rate(t: number, lower: number, upper: number, cutoff: Cutoff): number {
  if (t <= lower) return 0;
  if (t <= upper || cutoff === "none") return t - lower;
  if (cutoff === "horizontal") return upper - lower;
  return cutoff === "vertical" ? 0 : Math.max(0, 2 * upper - lower - t);
}

function onCurve(
  shape: Shape,
  min: number,
  max: number,
  lower: number,
  upper: number,
  cutoff: Cutoff,
): number {
  const above = (t: number): number => excess(shape, min, max, t);
  switch (cutoff) {
    case "none":
      return above(lower);
    case "horizontal":
      return above(lower) - above(upper);
    case "intermediate":
      return above(lower) - 2 * above(upper) + above(2 * upper - lower);
    case "vertical":
      return above(lower) - above(upper) - (upper - lower) * share(shape, min, max, upper);
  }
}

function excess(shape: Shape, min: number, max: number, t: number): number {
  const mean = min / 2 + max / 2;
  if (t >= max) return 0;
  if (t <= min) return mean - t;
  if (shape === "triangle") return ((max - t) / 2) * share(shape, min, max, t);
  const amplitude = max / 2 - min / 2;
  // The angle at which the sine passes t, counted from the mean; the range of asin is kept.
  const angle = Math.asin(Math.min(1, Math.max(-1, (t - mean) / amplitude)));
  return ((mean - t) * (Math.PI / 2 - angle) + amplitude * Math.cos(angle)) / Math.PI;
}

function share(shape: Shape, min: number, max: number, t: number): number {
  if (t >= max) return 0;
  if (t < min) return 1;
  if (shape === "triangle") return (max - t) / (max - min);
  const angle = Math.asin(Math.min(1, Math.max(-1, (t - (min / 2 + max / 2)) / (max / 2 - min / 2))));
  return 0.5 - angle / Math.PI;
}
