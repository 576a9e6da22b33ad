import { given, givenList, givenText } from "../../given.ts";
import type { RankedModel } from "../../evaluate/rate-fit/compare-rate-models.ts";
import type { DaysAt } from "../../evaluate/threshold/days-at.ts";
import type { ThresholdEstimate } from "../../evaluate/threshold/estimate-threshold.ts";
import { optimumOf } from "../../response/rate-model.ts";
import { RATE_MODELS } from "../../response/rate-models.ts";
import type { TemperatureUnit } from "../../units.ts";
import { short, temperatureText, unitOf } from "../display-unit.ts";
import type { TrialRow } from "./trial-rows.ts";

/** The scale that the words about trials are in. */
export interface TrialWordsOptions {
  readonly unit?: TemperatureUnit | undefined;
}

/** A threshold with its standard error, such as `7.1 ± 1.9 °C`. */
export function thresholdWithError(
  estimate: Pick<ThresholdEstimate, "lower" | "lowerError">,
  options: TrialWordsOptions = {},
): string {
  given(estimate, ["estimate"], "an estimate, as estimateThreshold returns it", "lower");
  const { lower, lowerError } = estimate;
  const display = unitOf(options);
  if (lowerError === null) return temperatureText(lower, display);
  return `${short(display.temperature(lower))} ± ${short(display.difference(lowerError))}\u00a0${display.degree}`;
}

/** A thermal constant with its standard error, such as `305 ± 35 °C·day`. */
export function constantWithError(
  estimate: Pick<ThresholdEstimate, "thermalConstant" | "thermalConstantError">,
  options: TrialWordsOptions = {},
): string {
  given(estimate, ["estimate"], "an estimate, as estimateThreshold returns it", "thermalConstant");
  const { thermalConstant, thermalConstantError } = estimate;
  const { sum, degreeDay } = unitOf(options);
  const error = thermalConstantError === null ? "" : ` ± ${short(sum(thermalConstantError))}`;
  return `${short(sum(thermalConstant))}${error}\u00a0${degreeDay}`;
}

/** Trials and the estimates drawn over them, in words. */
export function describeThresholds(
  rows: readonly TrialRow[],
  estimates: readonly ThresholdEstimate[],
  options: TrialWordsOptions = {},
): string {
  givenList(rows, ["rows"], "a list of rows");
  givenList(estimates, ["estimates"], "a list of estimates");
  const display = unitOf(options);
  if (rows.length === 0) return "There are no trials to show.";
  const points = rows.map(
    ({ temperature, days, used }) =>
      `${temperatureText(temperature, display)} ${short(days)} days${used ? "" : " (left out)"}`,
  );
  const lines = estimates.map(
    (estimate) =>
      ` By the ${methodName(estimate)} the line meets zero at ${thresholdWithError(estimate, options)}, and development needs ${constantWithError(estimate, options)}.`,
  );
  return `Development took: ${points.join(", ")}.${lines.join("")}`;
}

/** How long development takes by the line, in words. */
export function describeDaysAt(rows: readonly DaysAt[], options: TrialWordsOptions = {}): string {
  givenList(rows, ["rows"], "a list of rows");
  const display = unitOf(options);
  const known = rows.flatMap(({ temperature, days, early, late }) =>
    days === null
      ? []
      : [`${temperatureText(temperature, display)} ${short(days)} days${range(early, late)}`],
  );
  return known.length === 0
    ? "The line says nothing of how long development takes here."
    : `By the line development takes: ${known.join(", ")}.`;
}

/** Fitted curves in words: which one comes first, and where each has its fastest development. */
export function describeRateModels(ranked: readonly RankedModel[], options: TrialWordsOptions = {}): string {
  givenList(ranked, ["ranked"], "a list of ranked models");
  const display = unitOf(options);
  const parts = ranked.map((row) => {
    const optimum = fastestOf(row);
    const at = optimum === null ? "" : `, fastest at ${temperatureText(optimum, display)}`;
    const behind =
      row.delta === null
        ? ", not ranked"
        : row.delta === 0
          ? ", ranked first"
          : `, ${short(row.delta)} behind`;
    return `${rateModelName(row.model)}${behind}${at}`;
  });
  return parts.length === 0 ? "No curve is fitted." : `${parts.join("; ")}.`;
}

/**
 * Temperature at which a fitted model is fastest, °C; `null` for the straight line, for one that is not fitted, and for
 * parameters that a search left in a place where they mean nothing.
 */
export function fastestOf(row: Pick<RankedModel, "model" | "parameters">): number | null {
  given(row, ["row"], "a ranked model, as compareRateModels returns it", "model");
  const { model, parameters } = row;
  const known = RATE_MODELS.find(({ id }) => id === model);
  if (known === undefined || parameters === null || known.fault(parameters) !== null) return null;
  return optimumOf(known, parameters).temperature;
}

const NAMES: Readonly<Record<string, string>> = {
  linear: "straight line",
  "briere-1": "Brière 1",
  "briere-2": "Brière 2",
  "lactin-2": "Lactin 2",
  "logan-6": "Logan 6",
  "sharpe-schoolfield-hot": "Sharpe and Schoolfield, hot side",
  "sharpe-schoolfield": "Sharpe and Schoolfield, both sides",
};

/** A rate model by its authors, or its id where it is not one of `RATE_MODELS`. */
export function rateModelName(id: string): string {
  givenText(id, ["id"]);
  return (Object.hasOwn(NAMES, id) ? NAMES[id] : null) ?? id;
}

function methodName({ method }: ThresholdEstimate): string {
  return method === "x-intercept" ? "x-intercept" : "reduced major axis";
}

function range(early: number | null, late: number | null): string {
  if (early === null) return "";
  return late === null ? ` (${short(early)} or more)` : ` (${short(early)} to ${short(late)})`;
}
