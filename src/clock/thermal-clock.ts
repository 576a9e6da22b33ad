import { type Arc, aboveOn, arcExcess, arcTemperature } from "../diurnal/arc.ts";
import type { Timeline } from "../diurnal/timeline.ts";
import { type LinearResponse, linearRate } from "../response/linear.ts";
import { DAY_MS, type Instant } from "../time/zone.ts";
import type { DegreeDays } from "../units.ts";

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
 * Degree-days that rounding can leave out of a sum. While the clock stands still, a crumb would otherwise
 * move an instant to the next morning.
 */
const CRUMB = 1e-11;

/**
 * The thermal clock of a curve: one prefix sum, and one search in it for the inverse. Degree-days count
 * elapsed time, so a civil day of 23 or 25 hours gives 23 or 25 hours' worth.
 */
export function thermalClock(timeline: Timeline, response: LinearResponse): ThermalClock {
  const { arcs, from, to } = timeline;
  const sums = new Float64Array(arcs.length + 1);
  arcs.forEach((arc, i) => {
    sums[i + 1] = (sums[i] ?? 0) + heatOf(arc, response, arc.u1);
  });
  const total = sums[arcs.length] ?? 0;

  const amountAt = (instant: Instant): DegreeDays => {
    if (instant <= from) return 0;
    if (instant >= to) return total;
    const i = lastWhere(arcs.length, (k) => (arcs[k]?.from ?? Infinity) <= instant);
    const arc = arcs[i];
    if (arc === undefined) return total;
    const u = arc.u0 + ((arc.u1 - arc.u0) * (instant - arc.from)) / (arc.to - arc.from);
    // Rounding must not lift a moment above the end of its arc.
    return Math.min(sums[i + 1] ?? total, (sums[i] ?? 0) + heatOf(arc, response, u));
  };

  const when = (amount: DegreeDays): Instant | null => {
    if (amount <= 0) return from;
    if (amount > total) return null;
    const reached = amount - CRUMB;
    const i = lastWhere(arcs.length, (k) => (sums[k] ?? Infinity) < reached);
    const arc = arcs[i];
    return arc === undefined ? null : instantOf(arc, response, reached - (sums[i] ?? 0));
  };

  return { from, to, total, amountAt, when };
}

/** Degree-days on an arc from its begin to a position. */
function heatOf(arc: Arc, response: LinearResponse, u: number): DegreeDays {
  const days = (arc.to - arc.from) / (arc.u1 - arc.u0) / DAY_MS;
  return days * heatBetween(arc, response, arc.u0, u);
}

/** Integral over the position of the rate of development. */
function heatBetween(arc: Arc, response: LinearResponse, p: number, q: number): number {
  const { lower, upper, zero, atUpper, atZero, stop } = response;
  const uncut = arcExcess(arc, lower, p, q);
  let sum = uncut;
  if (arc.start > upper || arc.end > upper) {
    sum += atUpper * arcExcess(arc, upper, p, q);
    if (atZero !== 0) sum += atZero * arcExcess(arc, zero, p, q);
    if (stop !== 0) {
      const [a, b] = aboveOn(arc, upper, p, q);
      sum -= stop * Math.max(0, b - a);
    }
  }
  // Where a cutoff takes all, rounding leaves a crumb of either sign, which must not pass for development.
  return sum > 1e-12 * uncut ? sum : 0;
}

// The instant on an arc at which its heat reaches an amount: Newton's steps, since the rate is the
// derivative, kept inside a shrinking bracket.
function instantOf(arc: Arc, response: LinearResponse, amount: DegreeDays): Instant {
  const span = arc.to - arc.from;
  const perU = span / (arc.u1 - arc.u0) / DAY_MS;
  let [low, high] = [arc.u0, arc.u1];
  let u = low;
  for (let i = 0; i < 60 && high - low > 1e-13; i++) {
    const short = amount - heatOf(arc, response, u);
    const rate = perU * linearRate(response, arcTemperature(arc, u));
    if (short > 0) low = u;
    else high = u;
    if (rate > 0 && Math.abs(short) < CRUMB / 100) break;
    const next = rate > 0 ? u + short / rate : Number.NaN;
    u = next > low && next < high ? next : (low + high) / 2;
  }
  return arc.from + ((u - arc.u0) / (arc.u1 - arc.u0)) * span;
}

// Greatest index below `count` for which a condition holds that holds for all smaller ones.
function lastWhere(count: number, holds: (index: number) => boolean): number {
  let [low, high] = [0, count - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (holds(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}
