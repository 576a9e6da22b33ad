import type { ThermalClock } from "../clock/thermal-clock.ts";
import { normalDensity } from "../cohort/normal-distribution.ts";
import { amountAtShare, multiplierAt, risingRoot } from "../cohort/requirement.ts";
import type { Instant } from "../time/zone.ts";
import type { DegreeDays } from "../units.ts";

/** What an animal goes through on one clock before a milestone. */
export interface Leg {
  readonly clock: ThermalClock;
  /** Middle animal's need, at the greatest and at the smallest possible age; they differ on the first leg only. */
  readonly least: DegreeDays;
  readonly most: DegreeDays;
}

/**
 * The instant by which a share of the animals has gone through all legs, or `null` when the temperatures
 * end first. Exact: no animal is simulated.
 *
 * On one clock the amount that the share does not exceed is known in closed form and the clock gives its
 * instant. Where stages run on clocks of their own, the share done by an instant is found by walking back
 * from it for each multiplier.
 * @param legs One or more, in order; consecutive legs on one clock may be given as they are.
 * @param sigma Standard deviation of the logarithm of the animals' multiplier.
 */
export function arrivalAt(legs: readonly Leg[], sigma: number, share: number): Instant | null {
  const [first, ...rest] = mergedLegs(legs);
  if (first === undefined) return null;
  if (rest.length === 0) return first.clock.when(amountAtShare({ ...first, sigma }, share));
  const multiplier = multiplierAt(share, sigma);
  const earliest = walk([{ ...first, most: first.least }, ...rest], multiplier);
  if (first.least === first.most || earliest === null) return earliest;
  const end = Math.min(...[first, ...rest].map(({ clock }) => clock.to));
  const latest = walk([first, ...rest], multiplier);
  const doneBy = (instant: Instant): number => shareDoneBy(first, rest, sigma, instant);
  if (latest === null && doneBy(end) < share) return null;
  return risingRoot((instant) => doneBy(instant) - share, earliest, latest ?? end);
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
  let share = 0;
  for (let k = 0; k < STEPS.length; k++) {
    const multiplier = Math.exp(sigma * (STEPS[k] ?? 0));
    const begin = walkBack(rest, multiplier, instant);
    if (begin === null) continue;
    // The first leg's need is uniform between least and most: the share of it within what the clock gave.
    const given = first.clock.amountAt(begin) / multiplier;
    const within = (given - first.least) / (first.most - first.least);
    share += (WEIGHTS[k] ?? 0) * Math.min(1, Math.max(0, within));
  }
  return share;
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
