import { InputError } from "../../errors.ts";
import { given } from "../../given.ts";
import { dailyTemperatures } from "../../temperature/daily.ts";
import type { WeatherEnsemble } from "../../temperature/ensemble.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { weatherEnsemble } from "../../temperature/weather-ensemble.ts";
import { type CivilDay, addDays, civilDay, dayNumber } from "../../time/civil-day.ts";
import type { DateTarget, Scored, StartDay } from "./start-plan.ts";
import { type CheckedTarget, scored } from "./target-day.ts";

/** Past years are laid out from so many days before the wanted day, where no first day is given. */
const LOOK_BACK_DAYS = 200;

/** No more days are tried. */
const MOST_DAYS = 400;

/** Once an animal is this sure to be early, a still earlier start is of no use. */
const SURELY_EARLY = 0.9995;

/**
 * The temperatures to search on: those given, or past years laid out before the wanted day.
 * @throws {InputError} `invalid-option` unless one of the two is given.
 */
export function searchTemperatures({
  temperatures,
  pastYears,
  day,
  dates,
}: DateTarget): TemperatureSeries | WeatherEnsemble {
  if ((temperatures == null) === (pastYears == null)) {
    throw new InputError(
      "invalid-option",
      `${temperatures == null ? "neither temperatures nor pastYears were" : "temperatures and pastYears were both"} given; give one of them, or an ensemble of both as temperatures.`,
      { path: ["temperatures"] },
    );
  }
  if (temperatures != null) return temperatures;
  const from = dates?.from ?? addDays(day, -LOOK_BACK_DAYS);
  return weatherEnsemble({
    // Nothing is known yet: one day that is cut off again.
    observed: dailyTemperatures(from, [0], [0]),
    until: addDays(from, -1),
    past: pastYears ?? dailyTemperatures(from, [0], [0]),
    // The season itself, where the record holds it, is not its own past.
    exclude: [Number(from.slice(0, 4))],
    // Beyond the day, so that the late end of the window is known too.
    days: Math.max(1, dayNumber(day) - dayNumber(from)) + 100,
  });
}

/**
 * Every day that the animals could start on, with its odds, in the order of the calendar.
 * @throws {InputError} `invalid-option` for dates that are no range up to the wanted day.
 */
export function scoredDays(
  { day, dates = {} }: DateTarget,
  temperatures: TemperatureSeries | WeatherEnsemble,
  target: CheckedTarget,
): Scored<StartDay>[] {
  given(dates, ["dates"], "an object with from, to or both");
  const last = dates.to ?? day;
  const end = dayNumber(last, ["dates", "to"]);
  const begin = dates.from === undefined ? end - MOST_DAYS + 1 : dayNumber(dates.from, ["dates", "from"]);
  checkRange(dates.from ?? last, last, day, end - begin + 1);
  const days: Scored<StartDay>[] = [];
  for (let number = end; number >= begin; number--) {
    const on = civilDay(number);
    const one = scored({ on }, target.inputFor(on, temperatures), target);
    // Without a first day the search ends where the days become of no use, or the temperatures begin.
    if (dates.from === undefined && one.absence?.reason === "no-temperatures" && days.length > 0) break;
    days.push(one);
    if (dates.from === undefined && (one.odds?.early ?? 0) > SURELY_EARLY) break;
  }
  return days.reverse();
}

function checkRange(from: CivilDay, to: CivilDay, day: CivilDay, count: number): void {
  if (from <= to && to <= day && count <= MOST_DAYS) return;
  throw new InputError(
    "invalid-option",
    `dates run from ${from} to ${to}; they must run forwards, end on ${day} or before, and be at most ${MOST_DAYS} days.`,
    { path: ["dates"], value: from },
  );
}
