import { greatest } from "../../numeric/extremes.ts";
import { givenList, given } from "../../given.ts";
import type { RateModel, RateParameters } from "../../response/rate-model.ts";
import { RATE_MODELS } from "../../response/rate-models.ts";
import { akaikeWeights, correctedAkaike } from "./akaike.ts";
import { type RateFit, fitRateModel } from "./fit-rate-model.ts";
import { straightLine } from "../../numeric/straight-line.ts";
import { type Trial, trialColumns } from "../threshold/trial.ts";

/** One model beside the others. */
export interface RankedModel {
  /** Id of the model, or `linear`. */
  readonly model: string;
  /** Parameters of the curve, without the variance. */
  readonly parameterCount: number;
  readonly parameters: RateParameters | null;
  /** Residual sum of squares of the rates, per day². */
  readonly rss: number | null;
  readonly aicc: number | null;
  /** Criterion less that of the best model; `null` where there is none. */
  readonly delta: number | null;
  /** Akaike weight among the models with a criterion, 0 to 1. */
  readonly weight: number | null;
  /** The whole fit; `null` for the line and for a model with too few trials. */
  readonly fit: RateFit | null;
  /** Why something is `null`; `null` where nothing is missing. */
  readonly reason: string | null;
}

type Unranked = Omit<RankedModel, "delta" | "weight">;

/**
 * Fits several rate models to the same trials and ranks them by the corrected Akaike criterion, least first, with the
 * straight line (`linear`: 1/days on temperature, over all trials) beside them. Models that cannot be ranked follow
 * in the order given, each with its reason.
 *
 * The criterion needs three trials more than a model has parameters: 6 for three parameters, 7 for four, 9 for six.
 * Trials are counted, not temperatures, yet the mean of many animals at one temperature is one trial.
 * @param trials Temperatures in °C, days. @param models Default: all of `RATE_MODELS`.
 * @throws {InputError} `invalid-number` and `invalid-trials` (all at one temperature).
 * @example
 * compareRateModels([{ temperature: 15, days: 40 }, { temperature: 20, days: 20 }], [briere1]).map(({ model, aicc }) => [model, aicc]) // → [["linear", null], ["briere-1", null]]
 * @see Burnham, K. P. & Anderson, D. R. (2002), Model selection and multimodel inference (from memory).
 */
export function compareRateModels(
  trials: readonly Trial[],
  models: readonly RateModel[] = RATE_MODELS,
): readonly RankedModel[] {
  givenList(models, ["models"]);
  models.forEach((model, i) => {
    given(model, ["models", i], "a rate model, such as briere1", "parameters", "rate", "guess");
  });
  const rows = [linearRow(trials), ...models.map((model) => rowOf(trials, model))];
  const ranked = rows
    .flatMap((row) => (row.aicc === null ? [] : [{ row, aicc: row.aicc }]))
    .sort((a, b) => a.aicc - b.aicc);
  const weights = akaikeWeights(ranked.map(({ aicc }) => aicc));
  const least = ranked[0]?.aicc ?? 0;
  return [
    ...ranked.map(({ row, aicc }, i) => ({ ...row, delta: aicc - least, weight: weights[i] ?? 0 })),
    ...rows.filter(({ aicc }) => aicc === null).map((row) => ({ ...row, delta: null, weight: null })),
  ];
}

function rowOf(trials: readonly Trial[], model: RateModel): Unranked {
  const parameterCount = model.parameters.length;
  const different = new Set(trials.map(({ temperature }) => temperature)).size;
  if (different < parameterCount) {
    return {
      model: model.id,
      parameterCount,
      parameters: null,
      rss: null,
      aicc: null,
      fit: null,
      reason: `There are ${different} different temperatures for ${parameterCount} parameters, so that it cannot be fitted.`,
    };
  }
  const fit = fitRateModel(trials, model);
  const { parameters, rss, converged, notes } = fit;
  // A search that did not settle has no least squares to compare.
  const aicc = converged ? fit.aicc : null;
  const reason =
    aicc === null
      ? ((notes.find(({ code }) => code === "did-not-converge") ?? notes.at(-1))?.message ?? null)
      : null;
  return { model: model.id, parameterCount, parameters, rss, aicc, fit, reason };
}

function linearRow(trials: readonly Trial[]): Unranked {
  const { temperatures, rates, weights } = trialColumns(trials, 2, "a line needs two or more");
  const { intercept, slope, residualSumOfSquares: rss } = straightLine(temperatures, rates, weights);
  const few = trials.length < 5;
  // A line through every trial leaves nothing but rounding.
  const exact = rss <= 1e-26 * greatest(rates) ** 2 * trials.length;
  return {
    model: "linear",
    parameterCount: 2,
    parameters: { intercept, slope },
    rss,
    aicc: few || exact ? null : correctedAkaike(rss, trials.length, 3),
    fit: null,
    reason: few
      ? `There are too few trials for the corrected Akaike criterion: a line needs 5 or more, and there are ${trials.length}.`
      : exact
        ? "The line meets every trial to rounding, where the Akaike criterion has no meaning."
        : null,
  };
}
