import type { ThermalClock } from "../../clock/thermal-clock.ts";
import { rootBetween } from "../../numeric/root.ts";
import type { Instant } from "../../time/zone.ts";
import type { DegreeDays } from "../../units.ts";

/** What an animal goes through on one clock before a milestone. */
export interface Leg {
  readonly clock: ThermalClock;
  /** Middle animal's need, at the greatest and at the smallest possible age; they differ on the first leg only. */
  readonly least: DegreeDays;
  readonly most: DegreeDays;
}

/** Legs from a moment on; the clocks may have begun before it. */
export interface Route {
  readonly start: Instant;
  readonly first: Leg;
  readonly rest: readonly Leg[];
  /** What the clock of each leg, in order, showed at the start. */
  readonly before: readonly DegreeDays[];
}

/** A route over legs of which neighbours on one clock have been added up. */
export function routeFrom(start: Instant, legs: readonly Leg[]): Route {
  const [first, ...rest] = legs;
  if (first === undefined) throw new Error("a route has at least one leg");
  return { start, first, rest, before: legs.map(({ clock }) => clock.amountAt(start)) };
}

/** Legs with neighbours on the same clock added up. */
export function mergedLegs(legs: readonly Leg[]): Leg[] {
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

/** When an animal with a multiplier has gone through a route, given the middle animal's need on the first leg. */
export function walk(route: Route, need: DegreeDays, multiplier: number): Instant | null {
  const { start, first, rest, before } = route;
  // Nothing to be done is done at once, not when the clock first came to where it stands.
  let instant = need <= 0 ? start : first.clock.when((before[0] ?? 0) + need * multiplier);
  for (const { clock, most } of rest) {
    if (instant === null) return null;
    instant = clock.when(clock.amountAt(instant) + most * multiplier);
  }
  return instant;
}

/**
 * What the first leg's clock has given, since the start, by the last instant at which the other legs must begin
 * to be done by an instant; below 0 when that is before the start.
 */
export function givenBy({ start, first, rest, before }: Route, multiplier: number, by: Instant): DegreeDays {
  let instant = by;
  for (let i = rest.length - 1; i >= 0; i--) {
    const leg = rest[i];
    const least = before[i + 1];
    if (leg === undefined || least === undefined) continue;
    const amount = leg.clock.amountAt(instant) - leg.most * multiplier;
    if (amount < least) return -1;
    const begin = amount === least ? start : leg.clock.when(amount);
    if (begin === null) return -1;
    instant = begin;
  }
  return Math.max(0, first.clock.amountAt(instant) - (before[0] ?? 0));
}

/**
 * The greatest multiplier with which an animal has gone through a route by an instant, for animals of one
 * age: between two bounds, or the bound that it lies beyond.
 * @param guess Where to look first.
 */
export function multiplierBy(
  route: Route,
  by: Instant,
  { low, high }: { readonly low: number; readonly high: number },
  guess: number,
): number {
  const { first, rest } = route;
  const total = rest.reduce((sum, { most }) => sum + most, first.most);
  // Below 0 for multipliers that are done by then; it rises with the multiplier.
  const short = (multiplier: number): number => first.most * multiplier - givenBy(route, multiplier, by);
  const within = (multiplier: number): number => Math.min(high, Math.max(low, multiplier));
  const x0 = within(guess);
  const here = short(x0);
  if (here === 0) return x0;
  // The thresholds of the legs are much alike, so their needs add up nearly as on one clock.
  const x1 = within(x0 - 1.05 * (here / total) - Math.sign(here) * 1e-6);
  let [a, b] = [
    { x: x0, f: here },
    { x: x1, f: short(x1) },
  ];
  for (let step = x1 - x0; b.f > 0 === here > 0; step *= 2) {
    if (b.x === low || b.x === high) return b.x;
    const x = within(b.x + step);
    [a, b] = [b, { x, f: short(x) }];
  }
  return a.f < b.f ? rootBetween(short, a, b, 1e-12) : rootBetween(short, b, a, 1e-12);
}
