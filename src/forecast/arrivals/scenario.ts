import { sigmaOf } from "../../cohort/requirement.ts";
import type { LifeCycle, StageNeeds } from "../../species/life-cycle.ts";
import { parseMoment } from "../../time/zone.ts";
import type { Moment, Way } from "./done-by.ts";
import type { ForecastInput, ForecastStart } from "../question/forecast-input.ts";
import { byOffset } from "../question/learned.ts";
import { type LifePath, type Milestone, lifePath } from "../question/life-path.ts";
import type { Pace } from "./need-belief.ts";
import type { Leg } from "./route.ts";
import type { StageClock } from "../clocks/stage-clock.ts";
import type { Weather } from "../clocks/weather.ts";

/** One way in which the weather may be, with the paces of the animals and the moments they may start from. */
export interface Scenario {
  readonly weight: number;
  /** What all animals of the cohort may need, as a multiple of the constants. */
  readonly paces: readonly Pace[];
  /** When they may start; the clocks may have begun before. */
  readonly starts: readonly Moment[];
  readonly path: LifePath;
  /** A clock for each period of the life cycle, `null` for those before the start. */
  readonly clocks: readonly (StageClock | null)[];
}

/** The pace of animals of which no log taught anything. */
export const USUAL_PACE: readonly Pace[] = [{ pace: 1, weight: 1 }];

/**
 * Every way in which the weather may go, with what a log taught of the pace, the offset and the moment that the
 * animals go on from.
 * @param alone A scenario for each pace and each moment, instead of all of them in one.
 * @throws {InputError} `unknown-stage` when what was learned belongs to another life cycle.
 */
export function scenariosOf(
  { lifeCycle, learned }: Pick<ForecastInput, "lifeCycle" | "learned">,
  weather: readonly Weather[],
  { path: foundPath, instant, zone }: ForecastStart,
  alone = false,
): { path: LifePath; scenarios: Scenario[] } {
  const from = learned?.from ?? null;
  const nodes = learned?.nodes ?? [{ pace: 1, offset: 0, weight: 1 }];
  const path = from === null ? foundPath : lifePath(lifeCycle, from.stage, "new");
  const starts =
    from === null
      ? [{ at: instant, weight: 1 }]
      : from.moments.map(({ at, weight }) => ({
          at: parseMoment(at, zone, ["learned", "from"]).instant ?? instant,
          weight,
        }));
  const beliefs = alone ? nodes.map((node) => [node]) : byOffset(nodes);
  const moments = alone ? starts.map((start) => [start]) : [starts];
  const scenarios = weather.flatMap((group) =>
    beliefs.flatMap((some) => {
      const { total, scaled: paces } = unified(some);
      return group.clocksAt(some[0]?.offset ?? 0).flatMap(({ weight, clocks }) =>
        moments.map((those) => {
          const { total: begun, scaled } = unified(those);
          return { weight: group.weight * weight * total * begun, paces, starts: scaled, path, clocks };
        }),
      );
    }),
  );
  return { path, scenarios };
}

/** Things with weights that add up to 1, and what they added up to. */
function unified<T extends { readonly weight: number }>(
  things: readonly T[],
): { total: number; scaled: T[] } {
  const total = things.reduce((sum, { weight }) => sum + weight, 0);
  return { total, scaled: things.map((thing) => ({ ...thing, weight: thing.weight / total })) };
}

/** The ways to a milestone, one for each scenario. */
export function waysTo(milestone: Milestone, scenarios: readonly Scenario[], lifeCycle: LifeCycle): Way[] {
  const sigmas = new Map<LifePath, number>();
  return scenarios.map((scenario) => {
    const { path, weight, paces, starts } = scenario;
    let sigma = sigmas.get(path);
    if (sigma === undefined) sigmas.set(path, (sigma = sigmaOf(variationOn(milestone, path, lifeCycle))));
    return { legs: legsTo(milestone, scenario, lifeCycle), sigma, weight, paces, starts };
  });
}

/** Degree-days that the middle animal uses up to a milestone, at a pace of 1. */
export function middleNeed(milestone: Milestone, path: LifePath, { stages }: LifeCycle): number {
  return stages.reduce(
    (sum, needs, period) => sum + middleShare(milestone, path, period) * needs.degreeDays.value,
    0,
  );
}

/** What the middle animal needs on each clock to reach a milestone. */
function legsTo(milestone: Milestone, { clocks, path }: Scenario, { stages }: LifeCycle): Leg[] {
  const legs: Leg[] = [];
  for (let period = path.period; period <= milestone.period; period++) {
    const [entry, needs] = [clocks[period], stages[period]];
    if (entry == null || needs === undefined) continue;
    const [least, most] = remaining(milestone, path, period);
    const need = needs.degreeDays.value;
    legs.push({ clock: entry.clock, least: least * need, most: most * need });
  }
  return legs;
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
