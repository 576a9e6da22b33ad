import { InputError, shown, finite } from "../errors.ts";
import type { LifeCycle } from "../species/life-cycle.ts";
import { DAY_MS, type Instant } from "../time/zone.ts";
import { absenceOf } from "./clocks/absence.ts";
import { shareArrived } from "./arrivals/done-by.ts";
import { type ForecastInput, startOf } from "./question/forecast-input.ts";
import type { LifePath, Milestone } from "./question/life-path.ts";
import type { Absence } from "./question/result.ts";
import { type Scenario, scenariosOf, waysTo } from "./arrivals/scenario.ts";
import { type StageClock, distinct } from "./clocks/stage-clock.ts";
import { weatherOf } from "./clocks/weather.ts";

/** A stage to be reached, or the sign that shows before one. */
export type MilestoneId = Milestone["id"];

/** How likely an animal is to reach a milestone before, within and after a stretch of time; they add up to 1. */
export interface Chance {
  readonly before: number;
  readonly within: number;
  readonly after: number;
  /**
   * `within` for each way in which the weather (and, where a log taught something, the pace of the animals) may
   * go, with its share of belief. Given the way, animals are independent of each other; over the ways they are not.
   */
  readonly ways: readonly { readonly weight: number; readonly within: number }[];
}

/** A chance, or why there is none. */
export type ChanceOrAbsence =
  { readonly chance: Chance; readonly absence: null } | { readonly chance: null; readonly absence: Absence };

/**
 * The chance that an animal reaches a milestone from one instant to another: exact, from the distribution that
 * the windows of the forecast are quantiles of, weather and unknown age included.
 * @param input As for `forecast`; `shares` is not looked at.
 * @param milestone A stage that is still to come, or `darkening`.
 * @param from First instant, on the axis of the zone; it counts.
 * @param to Last instant, likewise; it does not count.
 * @returns The chance, or the reason why it is not known: the temperatures do not go on until `to`.
 * @throws {InputError} What `forecast` throws; `unknown-stage` when the milestone does not lie ahead;
 *   `invalid-option` when `to` is before `from`.
 */
export function chanceBetween(
  input: ForecastInput,
  milestone: MilestoneId,
  from: Instant,
  to: Instant,
): ChanceOrAbsence {
  finite(from, ["from"], "a time in milliseconds");
  finite(to, ["to"], "a time in milliseconds");
  if (from > to)
    throw new InputError("invalid-option", `to is ${to}, before from, ${from}; it must not be earlier.`, {
      path: ["to"],
      value: to,
    });
  const start = startOf(input);
  if (start.instant >= to && input.learned === undefined) {
    milestoneAhead(start.path, milestone, input.lifeCycle);
    return certain({ before: 0, within: 0, after: 1, ways: [{ weight: 1, within: 0 }] });
  }
  // Drawn a day further than asked: the clocks that stand for several years run in steps of a quarter of a day.
  const weather = weatherOf(input.temperatures, input.lifeCycle, start, to + DAY_MS);
  const { path, scenarios } = scenariosOf(input, weather, start, true);
  const aim = milestoneAhead(path, milestone, input.lifeCycle);
  const ending = scenarios.find((scenario) => clocksTo(aim, scenario).some((one) => endsBefore(one, to)));
  if (ending !== undefined) return { chance: null, absence: absenceOf(clocksTo(aim, ending), start.zone) };
  let [before, within] = [0, 0];
  const ways = waysTo(aim, scenarios, input.lifeCycle).map((way) => {
    const early = shareArrived(way, from);
    const inside = Math.max(0, shareArrived(way, to) - early);
    before += way.weight * early;
    within += way.weight * inside;
    return { weight: way.weight, within: inside };
  });
  return certain({ before, within, after: Math.max(0, 1 - before - within), ways });
}

function certain(chance: Chance): ChanceOrAbsence {
  return { chance, absence: null };
}

/** Steps of the clocks that stand for several years: so much may be missing at their end. */
const STEP_MS = DAY_MS / 4;

function endsBefore({ timeline, clock }: StageClock, to: Instant): boolean {
  return timeline.to < to || clock.to <= to - STEP_MS;
}

function clocksTo(milestone: Milestone, { clocks, path }: Scenario): StageClock[] {
  return distinct(clocks.slice(path.period, milestone.period + 1));
}

/**
 * The milestone with an id among those that lie ahead.
 * @throws {InputError} `unknown-stage`.
 */
function milestoneAhead({ milestones }: LifePath, id: MilestoneId, { latinName }: LifeCycle): Milestone {
  const found = milestones.find((milestone) => milestone.id === id);
  if (found !== undefined) return found;
  throw new InputError(
    "unknown-stage",
    `milestone is ${shown(id)}, which does not lie ahead of the animals by the constants of ${latinName}; use one of ${milestones.map((one) => one.id).join(", ")}.`,
    { path: ["milestone"], value: id },
  );
}
