import { InputError, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import type { Forecast } from "../../forecast/question/result.ts";
import type { LifeCycle, StageId } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import { localClock, parseMoment } from "../../time/zone.ts";
import { type FoliageNeeds, foliageNeedsFor } from "./foliage-needs.ts";
import { type StandIn, standInAt, standInsOf, stagesOf, wallClock } from "./stand-ins.ts";

/** Animals that were found together and are kept together. */
export interface PlanCohort {
  /** Says which animals; each cohort of a plan has its own name. */
  readonly name: string;
  readonly lifeCycle: LifeCycle;
  /** What `forecast` returned for them. */
  readonly forecast: Forecast;
  /** How many. Default: as many as the forecast says were found. */
  readonly count?: number;
  /** Cages that they are kept in. Default 1. */
  readonly cages?: number;
  /**
   * When the stage that a log saw last began, such as {@link lastStageBegan}, in the zone of the forecast: a day, a time
   * by the clock on the wall, or one with an offset. Only for a forecast that goes on from there, and then needed.
   */
  readonly since?: string;
}

/** What becomes of the adults: released where the law allows it, kept closed in, or frozen. */
export type AdultsFate = "release" | "keep-in" | "freeze";

/** A cohort that was checked, with the animals that stand for it. */
export interface PlanAnimals {
  readonly name: string;
  readonly lifeCycle: LifeCycle;
  readonly forecast: Forecast;
  readonly count: number;
  readonly cages: number;
  /** Stages from the one they start in to the adult. */
  readonly order: readonly StageId[];
  readonly standIns: readonly StandIn[];
  /** The early, the middle and the late animal of the forecast. */
  readonly scenarios: readonly [early: StandIn, middle: StandIn, late: StandIn];
  readonly needs: FoliageNeeds | null;
  readonly fate: AdultsFate;
}

/**
 * Checks the cohorts of a plan and puts them in the order of their names, so that the plan does not depend on
 * the order in which they were given.
 * @throws {InputError} `invalid-found` for no cohort, a name that is missing or given twice, a count or a number
 *   of cages that is not a whole number from 1, or a forecast of another species; `invalid-day` or `invalid-instant` for a `since` that is none.
 */
export function planAnimals(
  cohorts: readonly PlanCohort[],
  ownNeeds: readonly FoliageNeeds[] = [],
): PlanAnimals[] {
  if (cohorts.length === 0) {
    throw new InputError("invalid-found", "cohorts is empty; a plan needs at least one cohort.", {
      path: ["cohorts"],
      value: cohorts,
    });
  }
  const names = new Set<string>();
  return cohorts
    .map((cohort, i) => {
      if (!isName(cohort.name) || names.has(cohort.name))
        throw refused(i, "name", cohort.name, "it must be a name on one line that no other cohort has");
      names.add(cohort.name);
      return animalsOf(cohort, i, ownNeeds);
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

function isName(name: unknown): boolean {
  return typeof name === "string" && name.trim() !== "" && !/[\u0000-\u001f\u007f-\u009f]/.test(name);
}

function animalsOf(cohort: PlanCohort, index: number, ownNeeds: readonly FoliageNeeds[]): PlanAnimals {
  const { name, lifeCycle, forecast } = cohort;
  given(
    lifeCycle,
    ["cohorts", index, "lifeCycle"],
    "a life cycle",
    "species",
    "stages",
    "latinName",
    "handling",
  );
  given(
    forecast,
    ["cohorts", index, "forecast"],
    "a forecast, as forecast returns it",
    "species",
    "found",
    "stages",
    "shares",
  );
  if (forecast.species !== lifeCycle.species)
    throw refused(
      index,
      "forecast",
      forecast.species,
      `it must be a forecast of the cohort's species, ${lifeCycle.species}`,
    );
  const count = wholeFrom1(cohort.count ?? forecast.found.count, index, "count");
  const cages = wholeFrom1(cohort.cages ?? 1, index, "cages");
  const source = { lifeCycle, forecast, ...startOf(cohort, index) };
  const [early, middle, late] = forecast.shares;
  return {
    name,
    lifeCycle,
    forecast,
    count,
    cages,
    order: stagesOf(source),
    standIns: standInsOf(source),
    scenarios: [standInAt(source, early), standInAt(source, middle), standInAt(source, late)],
    needs: foliageNeedsFor(lifeCycle, ownNeeds),
    fate: fateOf(lifeCycle),
  };
}

/** The stage that the forecast goes on from, and since when they have been in it. */
function startOf({ forecast, since }: PlanCohort, index: number): { stage: StageId; start: number } {
  const from = forecast.learned?.from ?? null;
  if (from === null) return { stage: forecast.found.stage, start: wallClock(forecast.found.at) };
  if (since === undefined)
    throw refused(
      index,
      "since",
      since,
      `the forecast goes on from a log, so it must be the day on which ${stageName(from)} began`,
    );
  const { zone } = forecast;
  const { day, instant } = parseMoment(since, zone, ["cohorts", index, "since"]);
  return { stage: from, start: instant === null ? wallClock(day) : localClock(instant, zone) };
}

function fateOf({ handling }: LifeCycle): AdultsFate {
  if (handling.includes("never-release")) return "freeze";
  return handling.includes("not-native-in-places") ? "keep-in" : "release";
}

function wholeFrom1(value: number, index: number, field: string): number {
  if (Number.isSafeInteger(value) && value >= 1) return value;
  throw refused(index, field, value, "it must be a whole number from 1");
}

function refused(index: number, field: string, value: unknown, why: string): InputError {
  const path = ["cohorts", index, field];
  return new InputError("invalid-found", `${path.join(".")} is ${shown(value)}; ${why}.`, { path, value });
}
