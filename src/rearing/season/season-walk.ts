import { arrivalAt } from "../../forecast/arrivals/arrival.ts";
import type { MilestoneId } from "../../forecast/chance.ts";
import { shareArrived } from "../../forecast/arrivals/done-by.ts";
import { lifePath } from "../../forecast/question/life-path.ts";
import { USUAL_PACE, waysTo } from "../../forecast/arrivals/scenario.ts";
import { type StageClock, distinct, stageClocks } from "../../forecast/clocks/stage-clock.ts";
import { InputError, shown } from "../../errors.ts";
import type { CurveMethod } from "../../diurnal/method.ts";
import type { Place } from "../../diurnal/place.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import { type Instant, type Zone, endOfDay, startOfDay } from "../../time/zone.ts";
import type { SeasonSpan } from "./season-calendar.ts";

/** How the animals' clocks are made. */
export interface WalkOptions {
  readonly lifeCycle: LifeCycle;
  readonly temperatures: DailyTemperatures;
  readonly method: CurveMethod;
  readonly place: Place | null;
  readonly zone: Zone;
}

/** Eggs laid at any time of one season, followed on its temperatures. */
export interface SeasonWalk {
  /** Share of the eggs laid at an instant that reach a milestone by another. */
  shareBy(milestone: MilestoneId, laid: Instant, by: Instant): number;
  /** When the middle animal of eggs laid at an instant emerges; `null` beyond the temperatures. */
  adultsOf(laid: Instant): Instant | null;
  /** Heat from one day to another as a share of what an egg needs to become adult. */
  progress(from: CivilDay, to: CivilDay): number;
  /** When so many degree-days since midwinter are reached, above the first stage's threshold. */
  heatAt(degreeDays: number): Instant | null;
}

/**
 * The clocks of a season, made once: eggs of every day run on them.
 * @throws {InputError} `unknown-stage` for a milestone that the life cycle does not have.
 */
export function seasonWalk(season: SeasonSpan, options: WalkOptions): SeasonWalk {
  const { lifeCycle, temperatures, method, place, zone } = options;
  const path = lifePath(lifeCycle, lifeCycle.stages[0]?.stage ?? "egg", "new");
  const from = startOfDay(season.from, zone);
  const until = endOfDay(season.nextTurn, zone);
  const clocks = stageClocks(lifeCycle, path, temperatures, { method, place, zone, from, until });
  const needs = lifeCycle.stages.reduce((sum, { degreeDays }) => sum + degreeDays.value, 0);
  const last = lastToStop(clocks);

  const waysFrom = (id: MilestoneId, laid: Instant): ReturnType<typeof waysTo> => {
    const milestone = path.milestones.find((one) => one.id === id);
    if (milestone !== undefined)
      return waysTo(
        milestone,
        [{ weight: 1, paces: USUAL_PACE, starts: [{ at: laid, weight: 1 }], path, clocks }],
        lifeCycle,
      );
    throw new InputError(
      "unknown-stage",
      `milestone is ${shown(id)}, which the constants of ${lifeCycle.latinName} do not have after the egg; use one of ${path.milestones.map((one) => one.id).join(", ")}.`,
      { path: ["milestone"], value: id },
    );
  };

  return {
    shareBy: (id, laid, by) =>
      waysFrom(id, laid).reduce((sum, way) => sum + way.weight * (by <= laid ? 0 : shareArrived(way, by)), 0),
    adultsOf: (laid) => arrivalAt(waysFrom("adult", laid), 0.5),
    progress: (begin, end) =>
      ((last?.clock.amountAt(startOfDay(end, zone)) ?? 0) -
        (last?.clock.amountAt(startOfDay(begin, zone)) ?? 0)) /
      needs,
    heatAt: (degreeDays) => clocks[0]?.clock.when(degreeDays) ?? null,
  };
}

/** The clock with the lowest threshold: the last to stop in autumn and the first to run in spring. */
function lastToStop(clocks: readonly (StageClock | null)[]): StageClock | undefined {
  return distinct(clocks).sort((a, b) => a.response.lower - b.response.lower)[0];
}
