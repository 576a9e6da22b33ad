import { amountAtShare, multiplierAt } from "../../cohort/requirement.ts";
import { rootBetween } from "../../numeric/root.ts";
import { DAY_MS, type Instant } from "../../time/zone.ts";
import { COARSE, FINE } from "./age-mean.ts";
import { type Way, doneByAll, middlePace } from "./done-by.ts";
import { mergedLegs, routeFrom, walk } from "./route.ts";

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
  // Ways are mostly in order, so the middle one arrives near the middle.
  const middle = ways[ways.length >> 1];
  if (middle === undefined) return shares.map(() => null);
  const { arrive, exact, agesDiffer } = quickArrival(middle);
  if (ways.length === 1 && exact) return shares.map(arrive);
  const doneBy = doneByAll(ways);
  const from = Math.min(...ways.flatMap(({ starts }) => starts.map(({ at }) => at)));
  const to = Math.max(...ways.map(({ legs }) => legs[0]?.clock.to ?? from));
  return shares.map((share) => {
    let guess = Math.max(from, arrive(share) ?? to);
    if (agesDiffer) {
      const near = { from, to, guess, step: DAY_MS, tolerance: 60_000 };
      guess = search((at) => doneBy(at, COARSE), share, near) ?? to;
    }
    const step = agesDiffer ? DAY_MS / 100 : DAY_MS;
    return search((at) => doneBy(at, FINE), share, { from, to, guess, step, tolerance: TOLERANCE_MS });
  });
}

/** The instant by which a share of the animals has gone through all legs; see {@link arrivalsAt}. */
export function arrivalAt(ways: readonly Way[], share: number): Instant | null {
  return arrivalsAt(ways, [share])[0] ?? null;
}

/** When a share has arrived at the middle pace from the first moment; exact unless more than one is believed in. */
function quickArrival({ legs, sigma, paces, starts }: Way) {
  const merged = mergedLegs(legs);
  const route = routeFrom(starts[0]?.at ?? 0, merged);
  const pace = middlePace(paces);
  const { least, most } = route.first;
  const single = merged.length === 1;
  const agesDiffer = !single && least !== most;
  const needed = { least, most, sigma };
  return {
    exact: !agesDiffer && paces.length === 1 && starts.length === 1,
    agesDiffer,
    arrive: (share: number): Instant | null =>
      single
        ? walk(route, amountAtShare(needed, share), pace)
        : walk(route, (least + most) / 2, pace * multiplierAt(share, sigma)),
  };
}

/** How exactly an instant is found, ms. */
const TOLERANCE_MS = 150;

/** The logarithm of the odds, which runs nearly straight where the share itself bends. */
function logOdds(share: number): number {
  return share <= 0 ? -40 : share >= 1 ? 40 : Math.log(share / (1 - share));
}

/** Where to search, from which guess, in which steps at first. */
interface Search {
  readonly from: Instant;
  readonly to: Instant;
  readonly guess: Instant;
  readonly step: number;
  readonly tolerance: number;
}

/** When a rising share reaches a value: steps around a guess until it is enclosed, then its root. */
function search(
  doneBy: (instant: Instant) => number,
  share: number,
  { from, to, guess, step: firstStep, tolerance }: Search,
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
  return rootBetween(over, low, high, tolerance);
}
