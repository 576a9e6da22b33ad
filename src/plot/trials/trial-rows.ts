import { given, givenList } from "../../given.ts";
import { InputError, finite, shown } from "../../errors.ts";
import { estimateThreshold } from "../../evaluate/threshold/estimate-threshold.ts";
import type { RankedModel } from "../../evaluate/rate-fit/compare-rate-models.ts";
import type { Trial } from "../../evaluate/threshold/trial.ts";
import { RATE_MODELS } from "../../response/rate-models.ts";
import type { Celsius, DegreeDays } from "../../units.ts";

/** One trial as a point of the figures. */
export interface TrialRow {
  readonly temperature: Celsius;
  readonly days: number;
  /** What the trial counts for, such as its animals; `null` where that was not said. */
  readonly weight: number | null;
  /** Share of the development done in a day: 1 / days. */
  readonly rate: number;
  /** Whether an estimate uses it. */
  readonly used: boolean;
}

/** The trials from cold to hot. @param leftOut Those of them that an estimate is made without. */
export function trialRows(trials: readonly Trial[], leftOut: readonly Trial[] = []): TrialRow[] {
  givenList(trials, ["trials"], "a list of trials");
  givenList(leftOut, ["leftOut"], "a list of trials");
  return trials
    .map((trial) => {
      const { temperature, days, weight = null } = trial;
      return { temperature, days, weight, rate: 1 / days, used: !leftOut.includes(trial) };
    })
    .sort((a, b) => a.temperature - b.temperature);
}

/** The threshold by the x-intercept without the trials at one temperature. */
export interface LeaveOutRow {
  /** `null`: nothing is left out. */
  readonly leftOut: Celsius | null;
  readonly lower: Celsius | null;
  readonly lowerError: number | null;
  readonly thermalConstant: DegreeDays | null;
  /** Threshold less the one of all trials. */
  readonly moves: number | null;
  /** Why there is no threshold, in a plain sentence; `null` where there is one. */
  readonly reason: string | null;
}

/** The threshold of all trials, and without each temperature in turn, from cold to hot. */
export function leaveOutRows(trials: readonly Trial[]): LeaveOutRow[] {
  givenList(trials, ["trials"], "a list of trials");
  const temperatures = [...new Set(trials.map(({ temperature }) => temperature))].sort((a, b) => a - b);
  const all = rowWithout(trials, null);
  return [null, ...temperatures].map((leftOut): LeaveOutRow => {
    const row = rowWithout(trials, leftOut);
    const moves = row.lower === null || all.lower === null ? null : row.lower - all.lower;
    return { leftOut, ...row, moves };
  });
}

function rowWithout(trials: readonly Trial[], leftOut: Celsius | null) {
  try {
    const { lower, lowerError, thermalConstant } = estimateThreshold(
      trials.filter(({ temperature }) => temperature !== leftOut),
    );
    return { lower, lowerError, thermalConstant, reason: null };
  } catch (error) {
    // Two temperatures less one leave no line, which is an answer here.
    if (!(error instanceof InputError)) throw error;
    return { lower: null, lowerError: null, thermalConstant: null, reason: error.message };
  }
}

/** A point of a fitted curve. */
export interface RateCurveRow {
  /** Id of the model, or `linear`. */
  readonly model: string;
  readonly temperature: Celsius;
  /** Share of the development done in a day, never below 0. */
  readonly rate: number;
}

/** More than any screen has pixels. */
const MOST_POINTS = 100_000;

/**
 * The curves of fitted models as points, those that could be fitted.
 * @param ranked What `compareRateModels` returned.
 * @param span First and last temperature.
 * @param count Points of each curve. Default 121.
 * @throws {InputError} `invalid-number`, `invalid-option`.
 */
export function rateCurveRows(
  ranked: readonly RankedModel[],
  span: { readonly from: Celsius; readonly to: Celsius },
  count = 121,
): RateCurveRow[] {
  givenList(ranked, ["ranked"], "a list of ranked models");
  given(span, ["span"], "a span of temperatures", "from", "to");
  const [from, to] = [finite(span.from, ["span", "from"]), finite(span.to, ["span", "to"])];
  if (!Number.isInteger(count) || count < 2 || count > MOST_POINTS) {
    const mustBe = `a whole number from 2 to ${MOST_POINTS}`;
    throw new InputError("invalid-option", `count is ${shown(count)}; it must be ${mustBe}.`, {
      path: ["count"],
      value: count,
    });
  }
  return ranked.flatMap(({ model, parameters }) => {
    if (parameters === null) return [];
    const known = RATE_MODELS.find(({ id }) => id === model);
    if (known !== undefined && known.fault(parameters) !== null) return [];
    const { intercept = Number.NaN, slope = Number.NaN } = parameters;
    const rateAt = (temperature: Celsius): number =>
      known === undefined
        ? Math.max(0, intercept + slope * temperature)
        : known.rate(temperature, parameters);
    return Array.from({ length: count }, (_, i) => {
      const temperature = from + ((to - from) * i) / (count - 1);
      return { model, temperature, rate: rateAt(temperature) };
    });
  });
}
