import { InputError, shown } from "../errors.ts";
import { given, givenList } from "../given.ts";
import { type CivilDay, addDays, dayNumber } from "../time/civil-day.ts";
import { lastDay } from "./daily.ts";
import { HERMITE_5, type WeatherEnsemble, type WeatherGroup, signed } from "./ensemble.ts";
import { joinTemperatures } from "./join.ts";
import { knownSeries } from "./known-series.ts";
import { checkAhead, knownPart } from "./known-part.ts";
import { memberYears, pastTrace } from "./past-trace.ts";
import type { DailyTemperatures, TemperatureSeries } from "./series.ts";
import { shiftedDaily } from "./shift.ts";

/** How far a weather forecast can be off: one standard deviation, by lead day. */
export interface ForecastError {
  /** On the first day ahead, °C. */
  readonly firstDay: number;
  /** More for each further day, °C. */
  readonly perDay: number;
}

/**
 * Error of a forecast of daily mean temperature unless told otherwise: 1.5 °C on the first day, 0.3 °C more
 * for each further day. Common practice, no source.
 */
export const USUAL_FORECAST_ERROR: ForecastError = { firstDay: 1.5, perDay: 0.3 };

/** What an ensemble is made of. */
export interface EnsembleParts {
  /** Temperatures so far. */
  readonly observed: TemperatureSeries;
  /** Of daily temperatures, the last day to look at. Default: the last one there is. */
  readonly until?: CivilDay;
  /** A weather forecast from the day after. */
  readonly forecast?: DailyTemperatures;
  readonly forecastError?: ForecastError;
  /** Daily temperatures of past years at the same place; each year becomes a member, as likely as the others. */
  readonly past: DailyTemperatures;
  /** Years of `past` that must not be members, such as the year to be predicted. */
  readonly exclude?: readonly number[];
  /** Days to go on after the known ones. Default 550, a year and a half. */
  readonly days?: number;
}

const USUAL_TRACE_DAYS = 550;

/** A hundred years. */
const LONGEST_TRACE_DAYS = 36_525;

/**
 * An ensemble of what the weather may do: observed so far, then a forecast if there is one, then the same
 * season of each past year. A past year goes on into the next one; the last one goes on into the first.
 * Each year starts on the month and date on which the known days end, and runs day by day from there, so
 * that a leap day shifts the days after it by one.
 *
 * A forecast is off by as much as its error says, the same way on all its days: five members a year, at the
 * nodes of a Gauss-Hermite rule, stand for that.
 * @throws {InputError} `no-temperatures` when no past year can be a member; `missing-temperature` when a
 *   past year has a gap (fill it first); `start-outside-series` when `until` is not a day of `observed`,
 *   or `forecast` leaves a hole behind it or ends before it counts; `invalid-option` when it is given for readings, or when a temperature is held for ever.
 */
export function weatherEnsemble(parts: EnsembleParts): WeatherEnsemble {
  given(parts, ["parts"], "an object with observed and past", "observed", "past");
  given(
    parts.past,
    ["past"],
    "daily temperatures of past years, as dailyTemperatures makes them",
    "start",
    "min",
    "max",
  );
  knownSeries(parts.observed, ["observed"]);
  const { observed, forecast, past } = parts;
  if (parts.exclude !== undefined) givenList(parts.exclude, ["exclude"], "a list of years");
  const { known, from } = knownPart(observed, parts.until);
  const ahead = forecast === undefined ? null : forecast;
  if (ahead !== null) checkAhead(ahead, observed, from, "forecast");
  const traceFrom = ahead === null ? from : addDays(lastDay(ahead), 1);
  const years = memberYears(past, traceFrom, parts.exclude ?? []);
  const nodes = ahead === null ? [{ z: 0, weight: 1 }] : HERMITE_5;
  const error = checkedError(parts.forecastError ?? USUAL_FORECAST_ERROR);
  const traces = years.map((year) =>
    pastTrace(past, year, traceFrom, checkedTrace(parts.days ?? USUAL_TRACE_DAYS)),
  );
  const groups = nodes.map(({ z, weight }): WeatherGroup => {
    const shifted = ahead === null ? [] : [forecastOff(ahead, from, error, z)];
    return {
      members: traces.map((trace) => joinTemperatures(...known, ...shifted, trace)),
      weight,
      label: `${ahead === null ? "" : `forecast ${signed(z)} standard deviations, then `}${years.join(", ")}`,
    };
  });
  const about = `From ${from} on the weather is not known: ${ahead === null ? "" : `a forecast to ${lastDay(ahead)} with an error of ${error.firstDay} °C on its first day and ${error.perDay} °C more on each further one, then `}the same season of ${years.length} past ${years.length === 1 ? "year" : "years"} (${years.join(", ")}), each as likely.`;
  return { kind: "ensemble", groups, from, about };
}

function forecastOff(
  forecast: DailyTemperatures,
  from: CivilDay,
  error: ForecastError,
  z: number,
): DailyTemperatures {
  const first = dayNumber(from) - dayNumber(forecast.start);
  return shiftedDaily(forecast, (i) => z * (error.firstDay + error.perDay * Math.max(0, i - first)));
}

function checkedTrace(days: number): number {
  if (Number.isInteger(days) && days >= 1 && days <= LONGEST_TRACE_DAYS) return days;
  throw new InputError(
    "invalid-option",
    `days is ${shown(days)}; it must be a whole number of days from 1 to ${LONGEST_TRACE_DAYS}.`,
    { path: ["days"], value: days },
  );
}

function checkedError(error: ForecastError): ForecastError {
  if (error.firstDay >= 0 && error.perDay >= 0 && error.firstDay + error.perDay < Infinity) return error;
  throw new InputError(
    "invalid-option",
    `forecastError is ${error.firstDay} and ${error.perDay}; both must be 0 °C or more.`,
    {
      path: ["forecastError"],
      value: error.firstDay,
    },
  );
}
