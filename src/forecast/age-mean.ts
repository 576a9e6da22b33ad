import { normalDensity } from "../cohort/normal-distribution.ts";
import type { Instant } from "../time/zone.ts";
import { type Route, givenBy } from "./route.ts";

/** Points of a trapezoid rule over a standard normal variable, with the weight of all points before each. */
export interface NormalRule {
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
  return { z, weight, before };
}

/** Exact to far below a minute for so smooth a density. */
export const FINE = normalRule(0.1);
/** To find the neighbourhood of an instant in. */
export const COARSE = normalRule(0.5);

/**
 * Share of the animals of unknown age, at a pace, that have gone through a route of several clocks by an instant.
 * An animal's need on the first leg is uniform between least and most: the share of it within what the clock gave
 * is averaged over the multipliers.
 */
export function meanOverAges(
  route: Route,
  { sigma, pace }: { readonly sigma: number; readonly pace: number },
  instant: Instant,
  rule: NormalRule,
): number {
  const { least, most } = route.first;
  const { z, weight, before } = rule;
  // The share done falls with the multiplier: all of the first points, none of the last.
  let [all, some] = [-1, z.length];
  while (some - all > 1) {
    const middle = (all + some) >> 1;
    if (doneAt(middle) >= 1) all = middle;
    else some = middle;
  }
  let sum = some < z.length ? (before[some] ?? 0) : 1;
  for (let i = some; i < z.length; i++) {
    const done = doneAt(i);
    if (done === 0) break;
    sum += (weight[i] ?? 0) * done;
  }
  return sum;

  function doneAt(i: number): number {
    const multiplier = pace * Math.exp(sigma * (z[i] ?? 0));
    const given = givenBy(route, multiplier, instant);
    if (given < 0) return 0;
    return Math.min(1, Math.max(0, (given / multiplier - least) / (most - least)));
  }
}
