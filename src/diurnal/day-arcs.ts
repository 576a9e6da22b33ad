import type { Origin } from "../temperature/series.ts";
import type { Instant } from "../time/zone.ts";
import { type Arc, DrawnArc } from "./arc.ts";
import { type Method, clamp } from "./method.ts";

/** Extremes of a day with their neighbours; a missing neighbour is the day's own value. */
export interface DayContext {
  readonly min: number;
  readonly max: number;
  readonly previousMax: number;
  readonly nextMin: number;
}

/** Where a civil day lies in time and where its temperatures come from. */
export interface DayPlace {
  readonly from: Instant;
  readonly to: Instant;
  readonly origin: Origin;
}

/**
 * When a day's minimum and maximum fall, as shares of the day: 03:00 and 15:00. Common practice, no
 * source; the methods put them half a day apart. Sums over whole days do not depend on it, only the hour
 * at which a sum is reached.
 */
const MIN_AT = 3 / 24;
const MAX_AT = 15 / 24;

/**
 * The temperature curve that a method draws through a civil day. Its degree-days over the day are those of
 * the method's closed form; for the `double-` methods the form's day runs from one minimum to the next.
 * @param limits Thresholds, which the `clamped-` methods bring the temperatures between.
 */
export function dayArcs(
  method: Method,
  day: DayContext,
  place: DayPlace,
  limits: { readonly lower: number; readonly upper: number },
): Arc[] {
  const { min, max, previousMax, nextMin } = day;
  const { lower, upper } = limits;
  const mean = min + (max - min) / 2;
  switch (method) {
    case "average":
      return [flat(mean, place)];
    case "clamped-mean":
      return [flat(clamp(mean, lower, upper), place)];
    case "clamped-average":
      return [flat((clamp(min, lower, upper) + clamp(max, lower, upper)) / 2, place)];
    case "single-sine":
      return rounds("wave", max, min, max, min, place);
    case "single-triangle":
      return rounds("line", max, min, max, min, place);
    case "double-sine":
      return rounds("wave", previousMax, min, max, nextMin, place);
    case "double-triangle":
      return rounds("line", previousMax, min, max, nextMin, place);
  }
}

function flat(temperature: number, { from, to, origin }: DayPlace): Arc {
  return new DrawnArc({
    shape: "line",
    start: temperature,
    end: temperature,
    u0: 0,
    u1: 1,
    from,
    to,
    origin,
  });
}

// The end of last night's fall, the rise, and the fall until midnight. The fall takes half a day, so at
// midnight this much of it is done:
const FALLEN_AT_MIDNIGHT = (1 - MAX_AT) / (1 - MAX_AT + MIN_AT);

function rounds(
  shape: Arc["shape"],
  previousMax: number,
  min: number,
  max: number,
  nextMin: number,
  { from, to, origin }: DayPlace,
): Arc[] {
  const lowest = from + MIN_AT * (to - from);
  const highest = from + MAX_AT * (to - from);
  const dusk = FALLEN_AT_MIDNIGHT;
  return [
    new DrawnArc({ shape, start: previousMax, end: min, u0: dusk, u1: 1, from, to: lowest, origin }),
    new DrawnArc({ shape, start: min, end: max, u0: 0, u1: 1, from: lowest, to: highest, origin }),
    new DrawnArc({ shape, start: max, end: nextMin, u0: 0, u1: dusk, from: highest, to, origin }),
  ];
}
