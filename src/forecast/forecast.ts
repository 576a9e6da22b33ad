import { sigmaOf } from "../cohort/requirement.ts";
import { type Method, knownMethod } from "../diurnal/method.ts";
import { InputError, shown } from "../errors.ts";
import { checkLifeCycle } from "../species/check-life-cycle.ts";
import type { LifeCycle, StageId, StageNeeds } from "../species/life-cycle.ts";
import type { TemperatureSeries } from "../temperature/series.ts";
import { type Instant, type Zone, formatInstant, knownZone, parseMoment } from "../time/zone.ts";
import { absenceOf } from "./absence.ts";
import { type Leg, arrivalAt } from "./arrival.ts";
import { degreeDayTables } from "./degree-day-table.ts";
import { forecastNotes } from "./forecast-notes.ts";
import { type AgeGiven, type LifePath, type Milestone, lifePath } from "./life-path.ts";
import { type StageClock, distinct, stageClocks } from "./stage-clock.ts";
import type { Forecast, SignForecast, StageForecast, Window } from "./result.ts";

/** The animals that were found. */
export interface Found {
  readonly stage: StageId;
  /** Day (`2026-06-03`) or time (`2026-06-03T17:30`) of the find, ISO 8601. A day alone counts as noon. */
  readonly on: string;
  /** Number of animals. Default 1. */
  readonly count?: number;
  /** How far into the stage they were. Default `unknown`: anywhere in it, which the windows carry. */
  readonly age?: AgeGiven;
}

/** What a forecast needs. */
export interface ForecastInput {
  readonly lifeCycle: LifeCycle;
  readonly found: Found;
  readonly temperatures: TemperatureSeries;
  /** IANA zone of the place. Without one, times are those of the clock on the wall. */
  readonly zone?: string | null;
  /** How a day's temperature runs between its extremes. Default `single-sine`. Readings need none. */
  readonly method?: Method;
  /** Shares of animals at early, expected and late. Default 0.1, 0.5 and 0.9. */
  readonly shares?: readonly [number, number, number];
}

/**
 * When each later stage begins, for the early, the middle and the late animal.
 *
 * A stage ends when its thermal constant is reached on the thermal clock of the temperatures. An animal
 * needs a multiple of the constants, lognormal around 1; its coefficient of variation for a milestone
 * follows from those of the stages on the way and their correlation. An unknown age within the found stage
 * is uniform. The windows are exact quantiles of the two together.
 * @returns Plain data. An instant that the temperatures at hand do not reach is `null`, with the reason.
 * @throws {InputError} For anything in the input that cannot be used; see {@link InputErrorCode}.
 * @example
 * forecast({
 *   lifeCycle: danausPlexippus,
 *   found: { stage: "pupa", on: "2026-07-01", age: "new" },
 *   temperatures: constantTemperature(25),
 * }).stages[0]?.begins.expected // → "2026-07-10T09:30:40"
 * @see Sharpe, Curry, DeMichele & Cole (1977), J. theor. Biol. 66, 21-38, and Wagner et al. (1984), Ann.
 *   Entomol. Soc. Am. 77, 475-487 (from memory): development times of animals keep their shape across
 *   temperatures.
 */
export function forecast(input: ForecastInput): Forecast {
  const { lifeCycle, found, temperatures } = input;
  checkLifeCycle(lifeCycle);
  const zone: Zone = input.zone === undefined || input.zone === null ? null : knownZone(input.zone);
  const method = knownMethod(input.method ?? "single-sine");
  const shares = checkedShares(input.shares ?? [0.1, 0.5, 0.9]);
  const count = checkedCount(found.count ?? 1);
  const path = lifePath(lifeCycle, found.stage, found.age ?? "unknown");
  const { instant, timeAssumed } = foundAt(found.on, zone);
  const clocks = stageClocks(lifeCycle, path, temperatures, { method, zone, from: instant });

  const dated = path.milestones.map((milestone) => {
    const legs = legsTo(milestone, path, lifeCycle, clocks);
    const sigma = sigmaOf(variationOn(milestone, path, lifeCycle));
    const arrivals = shares.map((share) => arrivalAt(legs, sigma, share));
    const begins = windowOf(arrivals, zone);
    const absence = arrivals.includes(null)
      ? absenceOf(distinct(clocks.slice(path.period, milestone.period + 1)), zone)
      : null;
    const degreeDays = legs.reduce((sum, { least, most }) => sum + (least + most) / 2, 0);
    return { milestone, arrivals, begins, absence, degreeDays };
  });
  const stages: StageForecast[] = [];
  const signs: SignForecast[] = [];
  for (const { milestone, begins, absence, degreeDays } of dated) {
    if (milestone.id === "darkening") signs.push({ sign: milestone.id, begins, absence });
    else stages.push({ stage: milestone.id, begins, degreeDays, absence });
  }

  const usedUntil = usedTo(
    dated.flatMap(({ arrivals }) => arrivals),
    clocks,
  );
  const tables = degreeDayTables(distinct(clocks), usedUntil, zone);
  return {
    species: lifeCycle.species,
    latinName: lifeCycle.latinName,
    commonName: lifeCycle.commonName,
    found: { stage: found.stage, on: found.on, at: formatInstant(instant, zone), count, age: path.age },
    zone,
    method,
    shares,
    stages,
    signs,
    tables,
    notes: forecastNotes({
      lifeCycle,
      path,
      zone,
      method,
      timeAssumed,
      clocks: distinct(clocks),
      tables,
      usedUntil,
      stages,
    }),
  };
}

function checkedShares(shares: readonly [number, number, number]): [number, number, number] {
  const [early, expected, late] = shares;
  if (early > 0 && early < expected && expected < late && late < 1) return [early, expected, late];
  throw new InputError(
    "invalid-option",
    `shares is ${shares.join(", ")}; it must be three rising shares between 0 and 1, such as 0.1, 0.5, 0.9.`,
    { path: ["shares"], value: shares },
  );
}

function checkedCount(count: number): number {
  if (Number.isInteger(count) && count >= 1) return count;
  throw new InputError("invalid-found", `found.count is ${shown(count)}; it must be a whole number from 1.`, {
    path: ["found", "count"],
    value: count,
  });
}

function foundAt(on: string, zone: Zone): { instant: Instant; timeAssumed: boolean } {
  const { day, instant } = parseMoment(on, zone, ["found", "on"]);
  if (instant !== null) return { instant, timeAssumed: false };
  const noon = parseMoment(`${day}T12:00`, zone, ["found", "on"]).instant;
  return { instant: noon ?? 0, timeAssumed: true };
}

/** What the animals need on each clock to reach a milestone. */
function legsTo(
  milestone: Milestone,
  path: LifePath,
  { stages }: LifeCycle,
  clocks: readonly (StageClock | null)[],
): Leg[] {
  return clocks.flatMap((entry, period) => {
    const needs = stages[period];
    if (entry === null || needs === undefined || period > milestone.period) return [];
    const [least, most] = remaining(milestone, path, period);
    return [
      { clock: entry.clock, least: least * needs.degreeDays.value, most: most * needs.degreeDays.value },
    ];
  });
}

/** Shares of a period still to be gone through before a milestone, at the greatest and the smallest age. */
function remaining(milestone: Milestone, path: LifePath, period: number): [number, number] {
  const end = period === milestone.period ? milestone.share : 1;
  if (period !== path.period) return [end, end];
  // An animal past the milestone when found is not waited for: the window is of those still before it.
  return [Math.max(0, end - path.age.to), Math.max(0, end - path.age.from)];
}

/** Coefficient of variation, between animals, of the need up to a milestone. */
function variationOn(milestone: Milestone, path: LifePath, lifeCycle: LifeCycle): number {
  let [mean, sum, squares] = [0, 0, 0];
  lifeCycle.stages.forEach(({ degreeDays, cv }: StageNeeds, period) => {
    if (period < path.period || period > milestone.period) return;
    const [least, most] = remaining(milestone, path, period);
    const need = ((least + most) / 2) * degreeDays.value;
    mean += need;
    sum += need * cv.value;
    squares += (need * cv.value) ** 2;
  });
  // Variance of a sum whose terms are equally correlated with each other.
  const correlation = lifeCycle.stageCorrelation.value;
  return mean === 0 ? 0 : Math.sqrt((1 - correlation) * squares + correlation * sum * sum) / mean;
}

function windowOf(arrivals: readonly (Instant | null)[], zone: Zone): Window {
  const [early = null, expected = null, late = null] = arrivals.map((arrival) =>
    arrival === null ? null : formatInstant(arrival, zone),
  );
  return { early, expected, late };
}

/** The last instant whose temperatures count: the latest arrival, or the end of the temperatures. */
function usedTo(arrivals: readonly (Instant | null)[], clocks: readonly (StageClock | null)[]): Instant {
  const end = Math.max(...distinct(clocks).map(({ timeline }) => timeline.to));
  if (arrivals.includes(null)) return end;
  return Math.min(end, Math.max(...arrivals.map((arrival) => arrival ?? end)));
}
