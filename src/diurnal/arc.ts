import type { Origin } from "../temperature/series.ts";
import type { Instant } from "../time/zone.ts";

/**
 * A stretch of time on which temperature runs one way between two values. Every day's curve and every
 * pair of logger readings is made of these, so one inverse serves them all.
 *
 * Along the whole arc a position u runs from 0 to 1 and the temperature from `start` to `end`: evenly on a
 * `line`, as half a cosine wave on a `wave`, fast and then ever slower on a `decay`. The stretch may be a
 * part of the arc, u from `u0` to `u1`; the second half of a wave is a quarter wave that begins steeply.
 */
export interface Arc {
  readonly shape: "line" | "wave" | "decay";
  /** Temperature at u = 0, °C. */
  readonly start: number;
  /** Temperature at u = 1, °C. */
  readonly end: number;
  readonly u0: number;
  readonly u1: number;
  /** When the stretch begins (u0) and ends (u1). */
  readonly from: Instant;
  readonly to: Instant;
  readonly origin: Origin;
}

/**
 * An arc, made. A class and no bare object: once a curve has been kept for long, the engine takes every arc that the
 * same piece of code writes down as a bare object for one that is kept, and lays it out at fifty times the cost.
 */
export class DrawnArc implements Arc {
  readonly shape: Arc["shape"];
  readonly start: number;
  readonly end: number;
  readonly u0: number;
  readonly u1: number;
  readonly from: Instant;
  readonly to: Instant;
  readonly origin: Origin;

  constructor({ shape, start, end, u0, u1, from, to, origin }: Arc) {
    this.shape = shape;
    this.start = start;
    this.end = end;
    this.u0 = u0;
    this.u1 = u1;
    this.from = from;
    this.to = to;
    this.origin = origin;
  }
}

/**
 * How fast a `decay` runs: what is left of the way to its level falls as exp(-2.2 u). It is the night
 * coefficient b of Parton & Logan (1981), whose paper was not seen: 2.2 read second-hand. Their night ends
 * short of the minimum by exp(-2.2), a ninth of the way; here the level lies beyond `end`, so that the arc
 * reaches `end` exactly and the curve has no jump at dawn.
 */
const DECAY = 2.2;
const DECAYED = 1 - Math.exp(-DECAY);

/** Temperature at a position of the whole arc, °C. */
export function arcTemperature({ shape, start, end }: Arc, u: number): number {
  switch (shape) {
    case "line":
      return start + (end - start) * u;
    case "wave":
      return start + ((end - start) * (1 - Math.cos(Math.PI * u))) / 2;
    case "decay":
      return start + ((end - start) * (1 - Math.exp(-DECAY * u))) / DECAYED;
  }
}

/** Integral over u from p to q of the excess above t, max(T - t, 0), in degrees. */
export function arcExcess(arc: Arc, t: number, p: number, q: number): number {
  const a = aboveFrom(arc, t, p);
  const b = aboveTo(arc, t, q);
  if (a >= b) return 0;
  const { shape, start, end } = arc;
  switch (shape) {
    case "line":
      return (b - a) * (start + ((end - start) * (a + b)) / 2 - t);
    case "wave": {
      const half = (end - start) / 2;
      return (
        (b - a) * (start + half - t) - (half / Math.PI) * (Math.sin(Math.PI * b) - Math.sin(Math.PI * a))
      );
    }
    case "decay": {
      const way = (end - start) / DECAYED;
      return (b - a) * (start + way - t) - (way / DECAY) * (Math.exp(-DECAY * a) - Math.exp(-DECAY * b));
    }
  }
}

/** How much of p to q lies above t. */
export function arcAbove(arc: Arc, t: number, p: number, q: number): number {
  return Math.max(0, aboveTo(arc, t, q) - aboveFrom(arc, t, p));
}

// The part of p to q above t has its ends here; where the second is not behind the first, there is none.
function aboveFrom(arc: Arc, t: number, p: number): number {
  return arc.start > t || arc.end <= t ? p : Math.max(p, crossingOf(arc, t));
}

function aboveTo(arc: Arc, t: number, q: number): number {
  if (arc.end > t) return q;
  return arc.start > t ? Math.min(q, crossingOf(arc, t)) : 0;
}

/** The position at which the temperature is t, for a t between the two ends. */
function crossingOf({ shape, start, end }: Arc, t: number): number {
  const share = (t - start) / (end - start);
  switch (shape) {
    case "line":
      return share;
    case "wave":
      return Math.acos(1 - 2 * share) / Math.PI;
    case "decay":
      return -Math.log(1 - share * DECAYED) / DECAY;
  }
}
