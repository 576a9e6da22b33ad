import type { ThermalClock } from "../clock/thermal-clock.ts";
import { normalCdf, normalDensity } from "../cohort/normal-distribution.ts";
import { amountAtShare, multiplierAt, risingRoot, shareWithin } from "../cohort/requirement.ts";
import { DAY_MS, type Instant } from "../time/zone.ts";
import type { DegreeDays } from "../units.ts";

/** What an animal goes through on one clock before a milestone. */
export interface Leg {
  readonly clock: ThermalClock;
  /** Middle animal's need, at the greatest and at the smallest possible age; they differ on the first leg only. */
  readonly least: DegreeDays;
  readonly most: DegreeDays;
}

/** Animals that go through the same legs, with their share of belief: a way the weather may go, for example. */
export interface Way {
  readonly legs: readonly Leg[];
  /** Standard deviation of the logarithm of the animals' multiplier. */
  readonly sigma: number;
  readonly weight: number;
}

/**
 * The instant by which a share of the animals has gone through all legs, or `null` when the temperatures
 * end first. Exact: no animal is simulated.
 *
 * On one clock the amount that the share does not exceed is known in closed form and the clock gives its
 * instant. Where stages run on clocks of their own, the share done by an instant is found by walking back
 * from it for each multiplier. Over several ways the shares done by an instant are averaged.
 * @param ways One or more; weights add up to 1.
 * @param share Above 0 and below 1.
 */
export function arrivalAt(ways: readonly Way[], share: number): Instant | null {
  const routes = ways.map((way) => ({ ...routeOf(way), weight: way.weight }));
  const [only] = routes;
  if (only === undefined) return null;
  if (routes.length === 1) return arrivalOn(only, share);
  const doneBy = (instant: Instant): number =>
    routes.reduce((sum, route) => sum + route.weight * shareOn(route, instant), 0) - share;
  const from = Math.min(...routes.map(({ first }) => first.clock.from));
  const end = Math.max(...routes.map(({ first }) => first.clock.to));
  // Most ways arrive within days of each other, so the search begins around one of them.
  let low = arrivalOn(only, share) ?? end;
  let high = low;
  let step = DAY_MS;
  while (low > from && doneBy(low) > 0) [low, step] = [Math.max(from, low - step), step * 2];
  step = DAY_MS;
  while (doneBy(high) < 0) {
    if (high >= end) return null;
    [high, step] = [Math.min(end, high + step), step * 2];
  }
  return risingRoot(doneBy, low, high, TOLERANCE);
}

/** Legs made ready: neighbours on one clock added up, the first apart from the rest. */
interface Route {
  readonly first: Leg;
  readonly rest: readonly Leg[];
  readonly sigma: number;
}

function routeOf({ legs, sigma }: Pick<Way, "legs" | "sigma">): Route {
  const [first, ...rest] = mergedLegs(legs);
  if (first === undefined) throw new Error("a way has at least one leg");
  return { first, rest, sigma };
}

/** Half a second on an axis of milliseconds since 1970, relative. */
const TOLERANCE = 3e-10;

function arrivalOn({ first, rest, sigma }: Route, share: number): Instant | null {
  if (rest.length === 0) return first.clock.when(amountAtShare({ ...first, sigma }, share));
  const multiplier = multiplierAt(share, sigma);
  const earliest = walk([{ ...first, most: first.least }, ...rest], multiplier);
  if (first.least === first.most || earliest === null) return earliest;
  const end = Math.min(...[first, ...rest].map(({ clock }) => clock.to));
  const latest = walk([first, ...rest], multiplier);
  const doneBy = (instant: Instant): number => shareDoneBy(first, rest, sigma, instant);
  if (latest === null && doneBy(end) < share) return null;
  return risingRoot((instant) => doneBy(instant) - share, earliest, latest ?? end, TOLERANCE);
}

/** Share of the animals that have gone through all legs by an instant. */
export function shareArrived(way: Pick<Way, "legs" | "sigma">, instant: Instant): number {
  return shareOn(routeOf(way), instant);
}

function shareOn({ first, rest, sigma }: Route, instant: Instant): number {
  if (rest.length > 0) return shareDoneBy(first, rest, sigma, instant);
  const { least, most, clock } = first;
  return shareWithin({ least, most, sigma }, clock.amountAt(instant));
}

/** Legs with neighbours on the same clock added up. */
function mergedLegs(legs: readonly Leg[]): Leg[] {
  const merged: Leg[] = [];
  for (const leg of legs) {
    const last = merged.at(-1);
    if (last?.clock !== leg.clock) merged.push(leg);
    else
      merged[merged.length - 1] = {
        clock: leg.clock,
        least: last.least + leg.least,
        most: last.most + leg.most,
      };
  }
  return merged;
}

/** When an animal with a multiplier has gone through all legs, at the smallest age. */
function walk(legs: readonly Leg[], multiplier: number): Instant | null {
  let instant: Instant | null = legs[0]?.clock.from ?? null;
  for (const { clock, most } of legs) {
    if (instant === null) return null;
    instant = clock.when(clock.amountAt(instant) + most * multiplier);
  }
  return instant;
}

// Multipliers from 6 standard deviations below the middle to 6 above, weighted by the normal density: the
// trapezoid rule, which is exact to far below a minute for so smooth a density.
const STEPS = Array.from({ length: 121 }, (_, i) => (i - 60) / 10);
const WEIGHTS = STEPS.map((z) => normalDensity(z) / 10);

function shareDoneBy(first: Leg, rest: readonly Leg[], sigma: number, instant: Instant): number {
  // The first leg's need is uniform between least and most: the share of it within what the clock gave.
  const doneAt = (z: number): number => {
    const multiplier = Math.exp(sigma * z);
    const begin = walkBack(rest, multiplier, instant);
    if (begin === null) return 0;
    const given = first.clock.amountAt(begin) / multiplier;
    if (first.most === first.least) return Number(given >= first.least);
    return Math.min(1, Math.max(0, (given - first.least) / (first.most - first.least)));
  };
  if (first.most > first.least) return STEPS.reduce((sum, z, k) => sum + (WEIGHTS[k] ?? 0) * doneAt(z), 0);
  // Of one age, animals up to some multiplier are done and the others are not.
  let [low, high] = [-8, 8];
  if (doneAt(low) === 0) return 0;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (doneAt(middle) > 0) low = middle;
    else high = middle;
  }
  return normalCdf(low);
}

/** The last instant at which the legs must begin to be done by an instant; `null` when that is before the start. */
function walkBack(legs: readonly Leg[], multiplier: number, by: Instant): Instant | null {
  let instant = by;
  for (let i = legs.length - 1; i >= 0; i--) {
    const leg = legs[i];
    if (leg === undefined) continue;
    const amount = leg.clock.amountAt(instant) - leg.most * multiplier;
    const begin = amount < 0 ? null : leg.clock.when(amount);
    if (begin === null) return null;
    instant = begin;
  }
  return instant;
}
