import { InputError, finite } from "../errors.ts";
import { given } from "../given.ts";
import { type CivilDay, dayNumber } from "../time/civil-day.ts";
import { HERMITE_5, type WeatherEnsemble, type WeatherGroup, signed } from "./ensemble.ts";
import { joinTemperatures } from "./join.ts";
import { knownSeries } from "./known-series.ts";
import { checkAhead, knownPart } from "./known-part.ts";
import type { DailyTemperatures, TemperatureSeries } from "./series.ts";
import { shiftedDaily } from "./shift.ts";

/** Normal temperatures with the variation of days around them, for places without past years at hand. */
export interface NormalsWithVariation {
  readonly observed: TemperatureSeries;
  readonly until?: CivilDay;
  /** Normals laid out over the days to come, as `normalTemperatures` makes them. */
  readonly normals: DailyTemperatures;
  /** Standard deviation of a day's mean temperature around the normal, °C. */
  readonly standardDeviation: number;
  /** Correlation of that deviation from one day to the next, 0 to below 1. */
  readonly autocorrelation: number;
}

/**
 * An ensemble around normals. Deviations that are correlated from day to day add up to a sum whose standard
 * deviation grows with the square root of the number of days; each of five members follows one path of
 * that growth, at the nodes of a Gauss-Hermite rule.
 * @throws {InputError} `invalid-option`, `invalid-number`, `start-outside-series`.
 */
export function normalsEnsemble(parts: NormalsWithVariation): WeatherEnsemble {
  given(parts, ["parts"], "an object with observed and normals", "observed", "normals");
  const { observed, normals, autocorrelation } = parts;
  knownSeries(observed, ["observed"]);
  const { known, from } = knownPart(observed, parts.until);
  checkAhead(normals, observed, from, "normals");
  const deviation = finite(parts.standardDeviation, ["standardDeviation"], "a number of °C");
  if (deviation < 0 || !(autocorrelation >= 0 && autocorrelation < 1)) {
    throw new InputError(
      "invalid-option",
      `standardDeviation is ${deviation} and autocorrelation ${autocorrelation}; the first must be 0 or more, the second from 0 to below 1.`,
      { path: ["autocorrelation"], value: autocorrelation },
    );
  }
  const first = dayNumber(from) - dayNumber(normals.start);
  const perRoot = deviation * Math.sqrt((1 + autocorrelation) / (1 - autocorrelation));
  const groups = HERMITE_5.map(({ z, weight }): WeatherGroup => {
    const series = shiftedDaily(normals, (i) => {
      const lead = i - first + 1;
      return lead < 1 ? 0 : z * perRoot * (Math.sqrt(lead) - Math.sqrt(lead - 1));
    });
    return {
      members: [joinTemperatures(...known, series)],
      weight,
      label: `normals ${signed(z)} standard deviations`,
    };
  });
  return {
    kind: "ensemble",
    groups,
    from,
    about: `From ${from} on the weather is not known: normal temperatures, a day differing from them by a standard deviation of ${deviation} °C that carries over to the next day by ${Math.round(autocorrelation * 100)} %.`,
  };
}
