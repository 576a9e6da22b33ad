import { shareWithin } from "../../cohort/requirement.ts";
import type { Instant } from "../../time/zone.ts";
import { FINE, type NormalRule, meanOverAges } from "./age-mean.ts";
import { type NeedBelief, type Pace, needBelief, needTable } from "./need-belief.ts";
import { type Leg, type Route, mergedLegs, multiplierBy, routeFrom } from "./route.ts";

/** A moment from which the animals may go on, with its share of belief. */
export interface Moment {
  readonly at: Instant;
  readonly weight: number;
}

/** Animals that go through the same legs, with their share of belief: a way the weather may go, for example. */
export interface Way {
  readonly legs: readonly Leg[];
  /** Standard deviation of the logarithm of the animals' multiplier. */
  readonly sigma: number;
  readonly weight: number;
  /** What the cohort may need of the constants; weights add up to 1. */
  readonly paces: readonly Pace[];
  /** When they may start; weights add up to 1. */
  readonly starts: readonly Moment[];
}

/** Share of the animals that are done by an instant, by a rule where a mean over ages is needed. */
export type DoneBy = (instant: Instant, rule: NormalRule) => number;

/**
 * Share done over all ways, made ready to be asked many times.
 * @param ways To one milestone; weights add up to 1. Ways that share their list of paces share all needs.
 */
export function doneByAll(ways: readonly Way[]): DoneBy {
  const beliefs = new Map<readonly Pace[], NeedBelief>();
  const parts = ways.flatMap((way) => {
    const legs = mergedLegs(way.legs);
    const [first] = legs;
    if (first === undefined) return [];
    const single = legs.length === 1;
    let belief: NeedBelief | null = null;
    if (single || first.least === first.most) {
      belief = beliefs.get(way.paces) ?? null;
      if (belief === null) {
        const needed = { ...neededOn(first, single), sigma: way.sigma };
        const often = ways.length * way.starts.length * way.paces.length > 4;
        belief = often ? needTable(needed, way.paces) : needBelief(needed, way.paces);
        beliefs.set(way.paces, belief);
      }
    }
    return way.starts.map((start) => {
      return { weight: way.weight * start.weight, doneBy: doneByOn(routeFrom(start.at, legs), way, belief) };
    });
  });
  const [only] = parts;
  if (only !== undefined && parts.length === 1) return only.doneBy;
  return (instant, rule) => {
    let sum = 0;
    for (const { weight, doneBy } of parts) sum += weight * doneBy(instant, rule);
    return sum;
  };
}

/** Share of the animals of a way, whatever its weight, that have gone through all legs by an instant. */
export function shareArrived(way: Way, instant: Instant): number {
  return doneByAll([{ ...way, weight: 1 }])(instant, FINE);
}

/** Shares of the animals that have gone through all legs by an instant, for each of some paces. */
export function sharesAtPaces(
  { legs, sigma, starts }: Pick<Way, "legs" | "sigma" | "starts">,
  paces: readonly number[],
  instant: Instant,
): number[] {
  const merged = mergedLegs(legs);
  const sums = paces.map(() => 0);
  for (const { at, weight } of starts) {
    const route = routeFrom(at, merged);
    const { first, rest } = route;
    const single = rest.length === 0;
    const known = single || first.least === first.most;
    const reached = known ? reachedOn(route, boundsOf(paces, sigma), 1)(instant) : 0;
    const needed = { ...neededOn(first, single), sigma };
    paces.forEach((pace, i) => {
      const share = known
        ? shareWithin(needed, reached / pace)
        : meanOverAges(route, sigma, pace)(instant, FINE);
      sums[i] = (sums[i] ?? 0) + weight * share;
    });
  }
  return sums;
}

/** What the middle animal needs: heat on one clock; on several, where all are of one age, a multiplier of 1. */
function neededOn({ least, most }: Leg, single: boolean): { readonly least: number; readonly most: number } {
  return single ? { least, most } : { least: 1, most: 1 };
}

/** @param belief In what is needed; `null` where the ages differ and several clocks run. */
function doneByOn(route: Route, { paces, sigma }: Way, belief: NeedBelief | null): DoneBy {
  if (belief !== null) {
    const reached = reachedOn(
      route,
      boundsOf(
        paces.map(({ pace }) => pace),
        sigma,
      ),
      middlePace(paces),
    );
    return (instant) => belief(reached(instant));
  }
  const means = paces.map(({ pace, weight }) => ({ weight, mean: meanOverAges(route, sigma, pace) }));
  return (instant, rule) => {
    let sum = 0;
    for (const { weight, mean } of means) sum += weight * mean(instant, rule);
    return sum;
  };
}

/** What the animals have had by an instant, to be held against what they need: heat, or the multiplier. */
function reachedOn(
  route: Route,
  bounds: { readonly low: number; readonly high: number },
  guess: number,
): (instant: Instant) => number {
  if (route.rest.length === 0) {
    const { clock } = route.first;
    const before = route.before[0] ?? 0;
    return (instant) => clock.amountAt(instant) - before;
  }
  // One instant is asked for near another: the multiplier found last is the next guess.
  let multiplier = guess;
  return (instant) => (multiplier = multiplierBy(route, instant, bounds, multiplier));
}

/** Multipliers beyond which no animal is looked for. */
function boundsOf(paces: readonly number[], sigma: number): { low: number; high: number } {
  const reach = 2 * Math.exp(8 * sigma);
  return { low: Math.min(...paces) / reach, high: Math.max(...paces) * reach };
}

/** Mean of what is believed of the pace. */
export function middlePace(paces: readonly Pace[]): number {
  return paces.reduce((sum, { pace, weight }) => sum + pace * weight, 0);
}
