import { checkedLevel } from "../../cohort/binomial-interval.ts";
import { finite } from "../../errors.ts";
import { given, givenColumn } from "../../given.ts";
import { greatest, least } from "../../numeric/extremes.ts";
import { studentQuantile } from "../../numeric/student-t.ts";
import { straightLine } from "../../numeric/straight-line.ts";
import { type Trial, checkRising, trialColumns } from "./trial.ts";

/** How long development takes at one temperature by the line through trials. */
export interface DaysAt {
  /** In the unit of the trials. */
  readonly temperature: number;
  /** Mean days; `null` at the threshold and below it, where the line says that nothing develops. */
  readonly days: number | null;
  /** Interval of that mean. `early` is `null` with two trials, `late` also where the interval has no end. */
  readonly early: number | null;
  readonly late: number | null;
  /** Whether no trial was as cold or as hot, so that it is the line going on by itself. */
  readonly beyond: boolean;
}

/**
 * How long development takes at constant temperatures by the line 1/days = a + b·temperature through trials, with the
 * interval of that mean.
 *
 * The interval is that of the regression, taken on the rate and turned into days, so it is longer on the slow side. It
 * says how well the trials fix the mean; single animals differ more, and whether the line holds at all it does not say.
 * @param trials Two or more different temperatures on the straight part of development.
 * @param temperatures Where it is asked, in the unit of the trials.
 * @param options.level How sure the interval is, above 0 and below 1. Default 0.95.
 * @returns In the order asked.
 * @throws {InputError} `invalid-number`, `invalid-trials` as `estimateThreshold`; `invalid-option` for the level.
 * @example
 * daysAt([{ temperature: 15, days: 40 }, { temperature: 20, days: 20 }], [25, 8]).map(({ days }) => days?.toFixed(3) ?? null) // → ["13.333", null]
 */
export function daysAt(
  trials: readonly Trial[],
  temperatures: readonly number[],
  options: { readonly level?: number } = {},
): DaysAt[] {
  given(options, ["options"], "an object of options");
  givenColumn(temperatures, ["temperatures"]);
  const level = checkedLevel(options.level);
  const columns = trialColumns(trials, 2, "a line needs trials at two or more");
  const line = straightLine(columns.temperatures, columns.rates, columns.weights);
  checkRising(line, columns);
  const { meanX, meanY, slope, spreadX, weight, residualMeanSquare } = line;
  const [coldest, hottest] = [least(columns.temperatures), greatest(columns.temperatures)];
  const reach = residualMeanSquare === null ? null : studentQuantile((1 + level) / 2, line.n - 2);
  return temperatures.map((temperature, i): DaysAt => {
    const away = finite(temperature, ["temperatures", i], "a temperature") - meanX;
    const rate = meanY + slope * away;
    const beyond = temperature < coldest || temperature > hottest;
    if (rate <= 0) return { temperature, days: null, early: null, late: null, beyond };
    const margin =
      reach === null || residualMeanSquare === null
        ? null
        : reach * Math.sqrt(residualMeanSquare * (1 / weight + away ** 2 / spreadX));
    return {
      temperature,
      days: 1 / rate,
      early: margin === null ? null : 1 / (rate + margin),
      late: margin === null || margin >= rate ? null : 1 / (rate - margin),
      beyond,
    };
  });
}
