import { given } from "../given.ts";
import { type Arc, arcAbove, arcExcess } from "../diurnal/arc.ts";
import type { Timeline } from "../diurnal/timeline.ts";
import { type LinearResponse, linearRate } from "../response/linear.ts";
import type { Instant } from "../time/zone.ts";
import type { DegreeDays } from "../units.ts";
import { accumulationClock } from "./accumulation-clock.ts";

/** Degree-days as a function of time, and its inverse. Both never fall. */
export interface ThermalClock {
  readonly from: Instant;
  readonly to: Instant;
  /** Degree-days from `from` to `to`. */
  readonly total: DegreeDays;
  /** Degree-days from `from` to an instant; the instant is brought between `from` and `to`. */
  amountAt(instant: Instant): DegreeDays;
  /** The first instant at which an amount is reached, or `null` when it is not reached by `to`. */
  when(amount: DegreeDays): Instant | null;
}

/**
 * The thermal clock of a curve: exact integrals, arc by arc. Degree-days count elapsed time, so a civil day
 * of 23 or 25 hours gives 23 or 25 hours' worth.
 */
export function thermalClock(timeline: Timeline, response: LinearResponse): ThermalClock {
  given(timeline, ["timeline"], "what timelineOf returns", "arcs");
  given(response, ["response"], "what linearResponse returns", "lower", "upper");
  return accumulationClock(timeline, {
    rate: (temperature) => linearRate(response, temperature),
    over: (arc, p, q) => heatBetween(arc, response, p, q),
  });
}

/** Integral over the position of the rate of development. */
function heatBetween(arc: Arc, response: LinearResponse, p: number, q: number): number {
  const { lower, upper, zero, atUpper, atZero, stop } = response;
  const uncut = arcExcess(arc, lower, p, q);
  let sum = uncut;
  if (arc.start > upper || arc.end > upper) {
    sum += atUpper * arcExcess(arc, upper, p, q);
    if (atZero !== 0) sum += atZero * arcExcess(arc, zero, p, q);
    if (stop !== 0) sum -= stop * arcAbove(arc, upper, p, q);
  }
  // Where a cutoff takes all, rounding leaves a crumb of either sign, which must not pass for development.
  return sum > 1e-12 * uncut ? sum : 0;
}
