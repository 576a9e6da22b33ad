import { type Arc, arcTemperature } from "../diurnal/arc.ts";
import type { Timeline } from "../diurnal/timeline.ts";
import { DAY_MS, type Instant } from "../time/zone.ts";

/** An amount as a function of time, and its inverse. Both never fall. */
export interface AccumulationClock {
  readonly from: Instant;
  readonly to: Instant;
  /** Amount from `from` to `to`. */
  readonly total: number;
  /** Amount from `from` to an instant; the instant is brought between `from` and `to`. */
  amountAt(instant: Instant): number;
  /** The first instant at which an amount is reached, or `null` when it is not reached by `to`. */
  when(amount: number): Instant | null;
}

/** What a clock adds up: a rate, and its integral along an arc. */
export interface Accumulation {
  /** Amount a day at a temperature, 0 or more. */
  rate(temperature: number): number;
  /** Integral of the rate over the position of an arc, from p to q; never falls with q. */
  over(arc: Arc, p: number, q: number): number;
}

/**
 * Amount that rounding can leave out of a sum. While the clock stands still, a crumb would otherwise
 * move an instant to the next morning.
 */
const CRUMB = 1e-11;

/**
 * The clock of a curve: one prefix sum, and one search in it for the inverse. Amounts count elapsed time,
 * so a civil day of 23 or 25 hours gives 23 or 25 hours' worth.
 */
export function accumulationClock(timeline: Timeline, accumulation: Accumulation): AccumulationClock {
  const { arcs, from, to } = timeline;
  const sums = new Float64Array(arcs.length + 1);
  arcs.forEach((arc, i) => {
    sums[i + 1] = (sums[i] ?? 0) + amountOn(arc, accumulation, arc.u1);
  });
  const total = sums[arcs.length] ?? 0;

  const amountAt = (instant: Instant): number => {
    if (instant <= from) return 0;
    if (instant >= to) return total;
    const i = lastWhere(arcs.length, (k) => (arcs[k]?.from ?? Infinity) <= instant);
    const arc = arcs[i];
    if (arc === undefined) return total;
    const u = arc.u0 + ((arc.u1 - arc.u0) * (instant - arc.from)) / (arc.to - arc.from);
    // Rounding must not lift a moment above the end of its arc.
    return Math.min(sums[i + 1] ?? total, (sums[i] ?? 0) + amountOn(arc, accumulation, u));
  };

  const when = (amount: number): Instant | null => {
    if (amount <= 0) return from;
    if (amount > total) return null;
    const reached = amount - CRUMB;
    const i = lastWhere(arcs.length, (k) => (sums[k] ?? Infinity) < reached);
    const arc = arcs[i];
    return arc === undefined
      ? null
      : instantOf(arc, accumulation, reached - (sums[i] ?? 0), (sums[i + 1] ?? 0) - (sums[i] ?? 0));
  };

  return { from, to, total, amountAt, when };
}

/** Amount on an arc from its begin to a position. */
function amountOn(arc: Arc, accumulation: Accumulation, u: number): number {
  const days = (arc.to - arc.from) / (arc.u1 - arc.u0) / DAY_MS;
  return days * accumulation.over(arc, arc.u0, u);
}

// The instant on an arc at which its amount is reached: Newton's steps, since the rate is the derivative,
// kept inside a shrinking bracket.
function instantOf(arc: Arc, accumulation: Accumulation, amount: number, whole: number): Instant {
  const span = arc.to - arc.from;
  const perU = span / (arc.u1 - arc.u0) / DAY_MS;
  let [low, high] = [arc.u0, arc.u1];
  // From the chord on: where an arc begins below the threshold, Newton's steps would find no slope.
  let u = low + (high - low) * Math.min(1, amount / whole);
  for (let i = 0; i < 60 && high - low > 1e-13; i++) {
    const short = amount - amountOn(arc, accumulation, u);
    const rate = perU * accumulation.rate(arcTemperature(arc, u));
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
