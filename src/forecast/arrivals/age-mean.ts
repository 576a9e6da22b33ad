import { normalDensity } from "../../numeric/normal-distribution.ts";
import type { Instant } from "../../time/zone.ts";
import { type Route, givenBy } from "./route.ts";

/** Points of a trapezoid rule over a standard normal variable, with the weight of all points before each. */
export interface NormalRule {
  readonly step: number;
  readonly z: Float64Array;
  readonly weight: Float64Array;
  readonly before: Float64Array;
}

/** From 6 standard deviations below the middle to 6 above. */
function normalRule(step: number): NormalRule {
  const half = Math.round(6 / step);
  const z = Float64Array.from({ length: 2 * half + 1 }, (_, i) => (i - half) * step);
  const weight = z.map((one) => normalDensity(one) * step);
  let sum = 0;
  const before = weight.map((one) => (sum += one) - one);
  return { step, z, weight, before };
}

/** Exact to a fraction of a minute: the density is smooth, but the share done bends at the ends of the ages. */
export const FINE = normalRule(0.1);
/** To find the neighbourhood of an instant in. */
export const COARSE = normalRule(0.5);

/**
 * The share of animals of unknown age, at a pace, that have gone through a route of several clocks by an instant.
 * An animal's need on the first leg is uniform between least and most: the share of it within what the clock gave
 * is averaged over the multipliers.
 */
export function meanOverAges(
  route: Route,
  sigma: number,
  pace: number,
): (instant: Instant, rule: NormalRule) => number {
  const { least, most } = route.first;
  const doneAt = (z: number, instant: Instant): number => {
    const multiplier = pace * Math.exp(sigma * z);
    // Below 0 where the other legs alone take too long.
    const given = givenBy(route, multiplier, instant);
    return Math.min(1, Math.max(0, (given / multiplier - least) / (most - least)));
  };
  // Where all were still done when last asked: one instant is asked for near another.
  let edge = 0;
  return (instant, { step, z, weight, before }) => {
    // The share done falls with the multiplier: all of the first points, none of the last.
    const count = z.length;
    let [all, some] = [-1, count];
    let i = Math.min(count - 1, Math.max(0, Math.round((edge + 6) / step)));
    for (let stride = 1; some - all > 1; stride *= 2) {
      if (doneAt(z[i] ?? 0, instant) >= 1) all = i;
      else some = i;
      // Out from the last edge in growing strides until it is enclosed, then by halves.
      if (some === count) i = Math.min(count - 1, all + stride);
      else if (all === -1) i = Math.max(0, some - stride);
      else i = (all + some) >> 1;
    }
    edge = some * step - 6;
    let sum = some < count ? (before[some] ?? 0) : 1;
    for (let k = some; k < count; k++) {
      const done = doneAt(z[k] ?? 0, instant);
      if (done === 0) break;
      sum += (weight[k] ?? 0) * done;
    }
    return sum;
  };
}
