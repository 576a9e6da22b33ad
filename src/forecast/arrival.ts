import { amountAtShare, multiplierAt, rootBetween, shareWithin } from "../cohort/requirement.ts";
import { DAY_MS, type Instant } from "../time/zone.ts";
import { COARSE, FINE, type NormalRule, meanOverAges } from "./age-mean.ts";
import { type NeedBelief, type Pace, needBelief, needTable } from "./need-belief.ts";
import { type Leg, type Route, mergedLegs, multiplierBy, routeFrom, walk } from "./route.ts";

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

/** A way made ready to be asked many times. */
interface ReadyWay extends Way {
  readonly routes: readonly Route[];
  /** Belief in what is needed: of heat on one clock, of the multiplier on several; `null` where ages differ too. */
  readonly belief: NeedBelief | null;
  /** Multipliers beyond which no animal is looked for. */
  readonly bounds: { readonly low: number; readonly high: number };
  /** The multiplier found last for each route, to begin the next search at. */
  readonly multipliers: Float64Array;
}

/**
 * The instants by which shares of the animals have gone through all legs, `null` where the temperatures end
 * first. Exact: no animal is simulated.
 *
 * On one clock the amount that a share does not exceed is known in closed form and the clock gives its
 * instant. Where stages run on clocks of their own, the share done by an instant is found by walking back
 * from it. Over several ways the shares done by an instant are averaged.
 * @param ways One or more; weights add up to 1.
 * @param shares Each above 0 and below 1.
 */
export function arrivalsAt(ways: readonly Way[], shares: readonly number[]): (Instant | null)[] {
  const ready = readyWays(ways);
  const [only] = ready;
  if (only === undefined) return shares.map(() => null);
  const [pace] = only.paces;
  const certain = ready.length === 1 && only.paces.length === 1 && only.starts.length === 1;
  if (certain && pace !== undefined && only.belief !== null)
    return shares.map((share) => arrivalOn(only, share, pace.pace));
  const doneBy = shareByAll(ready);
  const from = Math.min(...ready.flatMap(({ starts }) => starts.map(({ at }) => at)));
  const to = Math.max(...ready.map(({ legs }) => legs[0]?.clock.to ?? from));
  // Ways are mostly in order, so the middle one arrives near the middle.
  const middle = ready[ready.length >> 1] ?? only;
  const coarse = ready.some(({ belief }) => belief === null);
  return shares.map((share) => {
    const guess = Math.max(from, arrivalOn(middle, share, middlePace(middle.paces)) ?? to);
    const near = coarse ? search((at) => doneBy(at, COARSE), share, { from, to, guess }, DAY_MS) : guess;
    return search(
      (at) => doneBy(at, FINE),
      share,
      { from, to, guess: near ?? to },
      coarse ? DAY_MS / 100 : DAY_MS,
    );
  });
}

/** The instant by which a share of the animals has gone through all legs; see {@link arrivalsAt}. */
export function arrivalAt(ways: readonly Way[], share: number): Instant | null {
  return arrivalsAt(ways, [share])[0] ?? null;
}

/** Share of the animals that have gone through all legs by an instant. */
export function shareArrived(way: Omit<Way, "weight">, instant: Instant): number {
  return shareByAll(readyWays([{ ...way, weight: 1 }]))(instant, FINE);
}

/** Shares of the animals that have gone through all legs by an instant, for each of some paces. */
export function sharesAtPaces(
  { legs, sigma, starts }: Pick<Way, "legs" | "sigma" | "starts">,
  paces: readonly number[],
  instant: Instant,
): number[] {
  const even = paces.map((pace) => ({ pace, weight: 1 }));
  const [way] = readyWays([{ legs, sigma, starts, weight: 1, paces: even }]);
  const sums = paces.map(() => 0);
  way?.routes.forEach((route, s) => {
    const weight = starts[s]?.weight ?? 0;
    const reached = way.belief === null ? null : reachedBy(way, s, instant);
    const { least, most } = neededOn(route);
    paces.forEach((pace, i) => {
      const share =
        reached === null
          ? meanOverAges(route, { sigma, pace }, instant, FINE)
          : shareWithin({ least, most, sigma }, reached / pace);
      sums[i] = (sums[i] ?? 0) + weight * share;
    });
  });
  return sums;
}

function readyWays(ways: readonly Way[]): ReadyWay[] {
  const beliefs = new Map<readonly Pace[], NeedBelief>();
  return ways.map((way) => {
    const legs = mergedLegs(way.legs);
    const routes = way.starts.map(({ at }) => routeFrom(at, legs));
    const [first] = legs;
    const { paces, sigma } = way;
    let belief: NeedBelief | null = null;
    if (first !== undefined && (legs.length === 1 || first.least === first.most)) {
      belief = beliefs.get(paces) ?? null;
      if (belief === null) {
        const often = ways.length * way.starts.length * paces.length > 4;
        const needed = { ...neededOn({ first, rest: legs.slice(1) }), sigma };
        belief = often ? needTable(needed, paces) : needBelief(needed, paces);
        beliefs.set(paces, belief);
      }
    }
    const multipliers = new Float64Array(routes.length).fill(middlePace(paces));
    return { ...way, legs, routes, belief, multipliers, bounds: boundsOf(way) };
  });
}

/** Share done by an instant over all ways, their starts and paces. */
function shareByAll(ready: readonly ReadyWay[]): (instant: Instant, rule: NormalRule) => number {
  return (instant, rule) => {
    let sum = 0;
    for (const way of ready) sum += way.weight * shareOn(way, instant, rule);
    return sum;
  };
}

function shareOn(way: ReadyWay, instant: Instant, rule: NormalRule): number {
  const { routes, starts, belief, paces, sigma } = way;
  let sum = 0;
  for (let s = 0; s < routes.length; s++) {
    const [route, start] = [routes[s], starts[s]];
    if (route === undefined || start === undefined) continue;
    if (belief === null) {
      for (const { pace, weight } of paces)
        sum += start.weight * weight * meanOverAges(route, { sigma, pace }, instant, rule);
    } else sum += start.weight * belief(reachedBy(way, s, instant));
  }
  return sum;
}

/** What the middle animal needs: heat on one clock; on several, where all are of one age, a multiplier of 1. */
function neededOn({ first, rest }: Pick<Route, "first" | "rest">): { least: number; most: number } {
  return rest.length === 0 ? { least: first.least, most: first.most } : { least: 1, most: 1 };
}

/** What the animals from a start have had by an instant, to be held against the belief in what they need. */
function reachedBy(way: ReadyWay, s: number, instant: Instant): number {
  const route = way.routes[s];
  if (route === undefined) return 0;
  if (route.rest.length === 0) return route.first.clock.amountAt(instant) - (route.before[0] ?? 0);
  const multiplier = multiplierBy(route, instant, way.bounds, way.multipliers[s] ?? 1);
  way.multipliers[s] = multiplier;
  return multiplier;
}

function boundsOf({ paces, sigma }: Pick<Way, "paces" | "sigma">): { low: number; high: number } {
  let [least, most] = [Infinity, 0];
  for (const { pace } of paces) [least, most] = [Math.min(least, pace), Math.max(most, pace)];
  const reach = 2 * Math.exp(8 * sigma);
  return { low: least / reach, high: most * reach };
}

function middlePace(paces: readonly Pace[]): number {
  const total = paces.reduce((sum, { weight }) => sum + weight, 0);
  return paces.reduce((sum, { pace, weight }) => sum + pace * weight, 0) / total;
}

/** When a share has arrived at a pace, from the first moment: exact where the ages are known or one clock runs. */
function arrivalOn({ routes, sigma }: ReadyWay, share: number, pace: number): Instant | null {
  const [route] = routes;
  if (route === undefined) return null;
  const { first, rest } = route;
  if (rest.length === 0) return walk(route, amountAtShare({ ...first, sigma }, share), pace);
  return walk(route, (first.least + first.most) / 2, pace * multiplierAt(share, sigma));
}

/** 0.15 s on an axis of milliseconds since 1970, relative. */
const TOLERANCE = 1e-10;

/** The logarithm of the odds, which runs nearly straight where the share itself bends. */
function logOdds(share: number): number {
  return share <= 0 ? -40 : share >= 1 ? 40 : Math.log(share / (1 - share));
}

/** When a rising share reaches a value: steps around a guess until it is enclosed, then its root. */
function search(
  doneBy: (instant: Instant) => number,
  share: number,
  { from, to, guess }: { readonly from: Instant; readonly to: Instant; readonly guess: Instant },
  firstStep: number,
): Instant | null {
  const aim = logOdds(share);
  const over = (instant: Instant): number => logOdds(doneBy(instant)) - aim;
  let low = { x: guess, f: over(guess) };
  let high = low;
  for (let step = firstStep; low.f > 0 && low.x > from; step *= 2) {
    const x = Math.max(from, low.x - step);
    [high, low] = [low, { x, f: over(x) }];
  }
  for (let step = firstStep; high.f < 0; step *= 2) {
    if (high.x >= to) return null;
    const x = Math.min(to, high.x + step);
    [low, high] = [high, { x, f: over(x) }];
  }
  return rootBetween(over, low, high, TOLERANCE);
}
