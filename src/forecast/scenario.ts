import type { ThermalClock } from "../clock/thermal-clock.ts";
import { sigmaOf } from "../cohort/requirement.ts";
import type { LifeCycle, StageNeeds } from "../species/life-cycle.ts";
import { type Instant, parseMoment } from "../time/zone.ts";
import type { Leg, Way } from "./arrival.ts";
import type { ForecastInput, ForecastStart } from "./forecast-input.ts";
import { type LifePath, type Milestone, lifePath } from "./life-path.ts";
import type { StageClock } from "./stage-clock.ts";
import type { Weather } from "./weather.ts";

/** One way in which things may be: the weather, the pace of the animals, the moment they start from. */
export interface Scenario {
  readonly weight: number;
  /** What all animals of the cohort need, as a multiple of the constants. */
  readonly pace: number;
  /** When they start; the clocks may have begun before. */
  readonly start: Instant;
  readonly path: LifePath;
  /** A clock for each period of the life cycle, `null` for those before the start. */
  readonly clocks: readonly (StageClock | null)[];
}

/**
 * Every combination of weather and, where a log taught something, of the pace, the offset and the moment that
 * the animals go on from.
 * @throws {InputError} `unknown-stage` when what was learned belongs to another life cycle.
 */
export function scenariosOf(
  { lifeCycle, learned }: Pick<ForecastInput, "lifeCycle" | "learned">,
  weather: readonly Weather[],
  { path: foundPath, instant, zone }: ForecastStart,
): { path: LifePath; scenarios: Scenario[] } {
  if (learned === undefined) {
    const scenarios = weather.flatMap((group) =>
      group.clocksAt(0).map(({ weight, clocks }) => {
        return { weight: group.weight * weight, pace: 1, start: instant, path: foundPath, clocks };
      }),
    );
    return { path: foundPath, scenarios };
  }
  const { from, nodes } = learned;
  const path = from === null ? foundPath : lifePath(lifeCycle, from.stage, "new");
  const starts =
    from === null
      ? [{ start: instant, weight: 1 }]
      : from.moments.map(({ at, weight }) => ({
          start: parseMoment(at, zone, ["learned", "from"]).instant ?? instant,
          weight,
        }));
  const scenarios = weather.flatMap((group) =>
    nodes.flatMap(({ pace, offset, weight: belief }) =>
      group.clocksAt(offset).flatMap(({ weight, clocks }) =>
        starts.map(({ start, weight: startWeight }) => {
          return { weight: group.weight * weight * belief * startWeight, pace, start, path, clocks };
        }),
      ),
    ),
  );
  return { path, scenarios };
}

/** The ways to a milestone, one for each scenario. */
export function waysTo(milestone: Milestone, scenarios: readonly Scenario[], lifeCycle: LifeCycle): Way[] {
  const sigmas = new Map<LifePath, number>();
  return scenarios.map((scenario) => {
    const { path, weight } = scenario;
    let sigma = sigmas.get(path);
    if (sigma === undefined) sigmas.set(path, (sigma = sigmaOf(variationOn(milestone, path, lifeCycle))));
    return { legs: legsTo(milestone, scenario, lifeCycle), sigma, weight };
  });
}

/** Degree-days that the middle animal uses up to a milestone, at a pace of 1. */
export function middleNeed(milestone: Milestone, path: LifePath, { stages }: LifeCycle): number {
  return stages.reduce(
    (sum, needs, period) => sum + middleShare(milestone, path, period) * needs.degreeDays.value,
    0,
  );
}

/** What the animals need on each clock to reach a milestone. */
function legsTo(milestone: Milestone, scenario: Scenario, { stages }: LifeCycle): Leg[] {
  const { clocks, path, pace, start } = scenario;
  const started = new Map<ThermalClock, ThermalClock>();
  return clocks.flatMap((entry, period) => {
    const needs = stages[period];
    if (entry === null || needs === undefined || period < path.period || period > milestone.period) return [];
    let clock = started.get(entry.clock);
    if (clock === undefined) started.set(entry.clock, (clock = startedAt(entry.clock, start)));
    const [least, most] = remaining(milestone, path, period);
    const need = pace * needs.degreeDays.value;
    return [{ clock, least: least * need, most: most * need }];
  });
}

/** A clock that counts from a later start. */
function startedAt(clock: ThermalClock, start: Instant): ThermalClock {
  if (start <= clock.from) return clock;
  const before = clock.amountAt(start);
  return {
    from: start,
    to: clock.to,
    total: clock.total - before,
    amountAt: (instant) => Math.max(0, clock.amountAt(instant) - before),
    when: (amount) => (amount <= 0 ? start : clock.when(amount + before)),
  };
}

/** Shares of a period still to be gone through before a milestone, at the greatest and the smallest age. */
function remaining(milestone: Milestone, path: LifePath, period: number): [number, number] {
  const end = period === milestone.period ? milestone.share : 1;
  if (period !== path.period) return [end, end];
  // An animal past the milestone when found is not waited for: the window is of those still before it.
  return [Math.max(0, end - path.age.to), Math.max(0, end - path.age.from)];
}

function middleShare(milestone: Milestone, path: LifePath, period: number): number {
  if (period < path.period || period > milestone.period) return 0;
  const [least, most] = remaining(milestone, path, period);
  return (least + most) / 2;
}

/** Coefficient of variation, between animals, of the need up to a milestone. */
function variationOn(milestone: Milestone, path: LifePath, lifeCycle: LifeCycle): number {
  let [mean, sum, squares] = [0, 0, 0];
  lifeCycle.stages.forEach(({ degreeDays, cv }: StageNeeds, period) => {
    const need = middleShare(milestone, path, period) * degreeDays.value;
    mean += need;
    sum += need * cv.value;
    squares += (need * cv.value) ** 2;
  });
  // Variance of a sum whose terms are equally correlated with each other.
  const correlation = lifeCycle.stageCorrelation.value;
  return mean === 0 ? 0 : Math.sqrt((1 - correlation) * squares + correlation * sum * sum) / mean;
}
