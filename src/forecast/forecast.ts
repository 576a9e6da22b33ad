import { givenList } from "../given.ts";
import { sunNotes } from "../diurnal/sun-notes.ts";
import { InputError } from "../errors.ts";
import { DAY_MS, type Instant, type Zone, formatInstant } from "../time/zone.ts";
import { absenceOf } from "./clocks/absence.ts";
import { arrivalsAt } from "./arrivals/arrival.ts";
import { degreeDayTables } from "./clocks/degree-day-table.ts";
import { type ForecastInput, type ForecastStart, startOf } from "./question/forecast-input.ts";
import { forecastNotes } from "./notes/forecast-notes.ts";
import { roughHorizon } from "./clocks/horizon.ts";
import type { Forecast, SignForecast, StageForecast, Window } from "./question/result.ts";
import { middleNeed, scenariosOf, waysTo } from "./arrivals/scenario.ts";
import { type StageClock, distinct } from "./clocks/stage-clock.ts";
import { weatherOf } from "./clocks/weather.ts";

/** The tables go on for two weeks, for animals that come later than the late date. */
const AFTERWARDS_MS = 14 * DAY_MS;

export type { ForecastInput, Found } from "./question/forecast-input.ts";

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
  const start = startOf(input);
  const { lifeCycle, found, temperatures, learned } = input;
  const { zone, method, count, instant } = start;
  const shares = checkedShares(input.shares ?? [0.1, 0.5, 0.9]);
  const { central, dated, usedUntil } = farEnough(input, start, shares);
  const stages: StageForecast[] = [];
  const signs: SignForecast[] = [];
  for (const { milestone, begins, absence, degreeDays } of dated) {
    if (milestone.id === "darkening") signs.push({ sign: milestone.id, begins, absence });
    else stages.push({ stage: milestone.id, begins, degreeDays, absence });
  }

  const clocks = central.map((member) => distinct(member.clocks));
  const everySeries =
    temperatures.kind === "ensemble" ? temperatures.groups.flatMap(({ members }) => members) : [temperatures];
  const { tables, ends } = degreeDayTables(central, usedUntil + AFTERWARDS_MS, zone);
  return {
    species: lifeCycle.species,
    latinName: lifeCycle.latinName,
    commonName: lifeCycle.commonName,
    found: { stage: found.stage, on: found.on, at: formatInstant(instant, zone), count, age: start.path.age },
    zone,
    method,
    shares,
    stages,
    signs,
    tables,
    learned:
      learned === undefined
        ? null
        : { pace: learned.pace, offset: learned.offset, from: learned.from?.stage ?? null },
    notes: [
      ...forecastNotes({
        ...start,
        lifeCycle,
        temperatures,
        learned,
        clocks: clocks[0] ?? [],
        table: tables[0] ?? null,
        ends,
        usedUntil,
        stages,
      }),
      ...sunNotes(everySeries, start, instant, usedUntil),
    ],
  };
}

/** Milestones with their dates: a look as far as is likely to be needed, and further where that is not enough. */
function farEnough(input: ForecastInput, start: ForecastStart, shares: readonly number[]) {
  const near = roughHorizon(input.temperatures, input.lifeCycle, start, input.learned);
  for (const until of [near, near + 2 * (near - start.instant)]) {
    const seen = outlook(input, start, shares, until);
    if (seen.usedUntil + AFTERWARDS_MS < until) return seen;
  }
  return outlook(input, start, shares, Infinity);
}

/** Milestones with their dates, from temperatures up to an instant. */
function outlook(input: ForecastInput, start: ForecastStart, shares: readonly number[], until: Instant) {
  const { lifeCycle, temperatures } = input;
  const weather = weatherOf(temperatures, lifeCycle, start, until);
  const { path, scenarios } = scenariosOf(input, weather, start);
  const central = weather.flatMap((group) =>
    group.clocksAt(0).map(({ weight, clocks }) => ({ weight: group.weight * weight, clocks })),
  );
  const dated = path.milestones.map((milestone) => {
    const ways = waysTo(milestone, scenarios, lifeCycle);
    const arrivals = arrivalsAt(ways, shares);
    const clocksUsed = (): StageClock[] =>
      central.flatMap((member) => distinct(member.clocks.slice(path.period, milestone.period + 1)));
    return {
      milestone,
      arrivals,
      begins: windowOf(arrivals, start.zone),
      absence: arrivals.includes(null) ? absenceOf(clocksUsed(), start.zone) : null,
      degreeDays: middleNeed(milestone, path, lifeCycle),
    };
  });
  const clocks = central.flatMap((member) => distinct(member.clocks));
  return { path, central, dated, usedUntil: usedTo(dated, clocks) };
}

function checkedShares(shares: readonly [number, number, number]): [number, number, number] {
  givenList(shares, ["shares"], "a list of three shares");
  const [early, expected, late] = shares;
  if (early > 0 && early < expected && expected < late && late < 1) return [early, expected, late];
  throw new InputError(
    "invalid-option",
    `shares is ${shares.join(", ")}; it must be three rising shares between 0 and 1, such as 0.1, 0.5, 0.9.`,
    { path: ["shares"], value: shares },
  );
}

function windowOf(arrivals: readonly (Instant | null)[], zone: Zone): Window {
  const [early = null, expected = null, late = null] = arrivals.map((arrival) =>
    arrival === null ? null : formatInstant(arrival, zone),
  );
  return { early, expected, late };
}

/** The last instant whose temperatures count: the latest arrival, or the end of the temperatures. */
function usedTo(
  dated: readonly { readonly arrivals: readonly (Instant | null)[] }[],
  clocks: readonly StageClock[],
): Instant {
  const end = Math.max(...clocks.map(({ timeline }) => timeline.to));
  const arrivals = dated.flatMap((one) => one.arrivals);
  if (arrivals.includes(null)) return end;
  return Math.min(end, Math.max(...arrivals.map((arrival) => arrival ?? end)));
}
