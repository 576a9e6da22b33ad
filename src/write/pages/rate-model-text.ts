import { givenList } from "../../given.ts";
import type { RankedModel } from "../../evaluate/rate-fit/compare-rate-models.ts";
import { optimumOf } from "../../response/rate-model.ts";
import { RATE_MODELS } from "../../response/rate-models.ts";
import { bullet, columns, wrapped } from "../layout/text-layout.ts";

/** Models so little behind the best that the trials cannot tell them from it; common practice, no source. */
const CLOSE = 2;

/**
 * Rate models beside each other as plain text, at most 80 columns: rank, optimum, and what both mean.
 * @param ranked What `compareRateModels` returned.
 */
export function rateModelText(ranked: readonly RankedModel[]): string {
  givenList(ranked, ["ranked"]);
  const withCriterion = ranked.filter(({ aicc }) => aicc !== null);
  const without = ranked.filter(({ aicc }) => aicc === null);
  const reasons = without.map(({ model, reason }) => bullet(`${model}: ${reason ?? "no reason is known."}`));
  const [best] = withCriterion;
  if (best === undefined) {
    return [
      "RATE MODELS",
      wrapped(
        "None can be ranked by these trials. A closer fit is then no evidence for a model, and an optimum would be a guess.",
      ),
      ...reasons,
    ].join("\n");
  }
  const table = columns(
    [
      ["", "parameters", "AICc", "behind", "weight", "fastest at"],
      ...withCriterion.map((row) => [
        `  ${row.model}`,
        String(row.parameterCount),
        row.aicc?.toFixed(1) ?? "-",
        row.delta?.toFixed(1) ?? "-",
        row.weight === null ? "-" : `${Math.round(row.weight * 100)} %`,
        optimumText(row),
      ]),
    ],
    [1, 2, 3, 4, 5],
  );
  return [
    "RATE MODELS, THE BEST FIRST",
    table,
    "",
    wrapped(
      "AICc weighs how close a curve comes against how many parameters it has; less is better, and models less than 2 behind cannot be told apart. The weight is the share of belief, if one of them is right: none needs to be.",
    ),
    "",
    wrapped(bestText(best, withCriterion)),
    ...(optimumIn(best) === null ? [] : ["", parametersText(best)]),
    ...(reasons.length > 0 ? ["", "Not ranked:", ...reasons] : []),
  ].join("\n");
}

function bestText(best: RankedModel, ranked: readonly RankedModel[]): string {
  const optimum = optimumIn(best);
  if (optimum === null) {
    return "The straight line does best: nothing in these trials shows a bend, so they tell neither of an optimum nor of heat that harms.";
  }
  const near = ranked.flatMap((row) => {
    const one = (row.delta ?? CLOSE) < CLOSE ? optimumIn(row) : null;
    return one === null ? [] : [one.temperature];
  });
  const [low, high] = [Math.min(...near).toFixed(1), Math.max(...near).toFixed(1)];
  const others =
    near.length > 1
      ? ` The ${near.length} models that cannot be told apart put it ${low === high ? `at ${low}` : `from ${low} to ${high}`} °C.`
      : "";
  return `By ${best.model} development is fastest at ${optimum.temperature.toFixed(1)} °C and takes ${(1 / optimum.rate).toFixed(1)} days there.${others} Above it warmth slows development and begins to harm: the fastest temperature is not the best one to rear at.`;
}

function parametersText({ model, parameters, fit }: RankedModel): string {
  const known = RATE_MODELS.find(({ id }) => id === model);
  if (known === undefined || parameters === null) return "";
  const errors = fit?.standardErrors ?? null;
  const rows = known.parameters.map(({ name, unit }) => [
    `  ${name}`,
    String(Number((parameters[name] ?? Number.NaN).toPrecision(4))),
    errors === null ? "-" : String(Number((errors[name] ?? Number.NaN).toPrecision(2))),
    unit,
  ]);
  return columns([[model, "", "+/-", ""], ...rows], [1, 2]);
}

function optimumText(row: RankedModel): string {
  const optimum = optimumIn(row);
  return optimum === null ? "-" : `${optimum.temperature.toFixed(1)} °C`;
}

function optimumIn({ model, parameters }: RankedModel): { temperature: number; rate: number } | null {
  const known = RATE_MODELS.find(({ id }) => id === model);
  // A search may leave parameters in a place where they mean nothing.
  if (known === undefined || parameters === null || known.fault(parameters) !== null) return null;
  return optimumOf(known, parameters);
}
