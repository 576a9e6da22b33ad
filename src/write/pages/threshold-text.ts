import { greatest, least } from "../../numeric/extremes.ts";
import { givenList } from "../../given.ts";
import type { RangeEnd } from "../../evaluate/threshold/linear-range.ts";
import type { ThresholdEstimate, ThresholdMethod } from "../../evaluate/threshold/estimate-threshold.ts";
import { type Trial, trialColumns } from "../../evaluate/threshold/trial.ts";
import { type DisplayUnit, type TemperatureUnit, displayUnit } from "../../units.ts";
import { fixedText, numberText } from "../layout/number-text.ts";
import { bullet, columns, wrapped } from "../layout/text-layout.ts";

const METHOD_WORDS: Readonly<Record<ThresholdMethod, string>> = {
  "x-intercept": "straight line through 1/days",
  "reduced-major-axis": "reduced major axis",
};

/**
 * Thresholds from rearing trials as plain text, at most 80 columns: what each method says, whether the trials lie
 * on a straight line, and how far all of it can be trusted.
 * @param trials The trials, °C. @param estimates Of these trials, one for each method.
 * @param unit Unit of the file; for F a line repeats the first estimate in °F. Default C.
 */
export function thresholdText(
  trials: readonly Trial[],
  estimates: readonly ThresholdEstimate[],
  unit: TemperatureUnit = "C",
): string {
  trialColumns(trials, 1, "give at least one");
  givenList(estimates, ["estimates"]);
  const display = displayUnit(unit);
  const [first] = estimates;
  const temperatures = trials.map(({ temperature }) => temperature);
  const [coldest, hottest] = [least(temperatures), greatest(temperatures)];
  const table = columns(
    [
      ["", "lower °C", "+/-", "degree-days", "+/-"],
      ...estimates.map(({ method, lower, lowerError, thermalConstant, thermalConstantError }) => [
        `  ${METHOD_WORDS[method]}`,
        fixedText(lower, 1),
        errorText(lowerError),
        thermalConstant.toFixed(1),
        errorText(thermalConstantError),
      ]),
    ],
    [1, 2, 3, 4],
  );
  const ends = first === undefined ? [] : [first.diagnostics.coldest, first.diagnostics.hottest];
  return [
    "THRESHOLD FROM TRIALS",
    wrapped(
      `${trials.length} trials from ${numberText(coldest)} to ${numberText(hottest)} °C. Below the lower threshold development all but stops; the degree-days are counted above it.`,
    ),
    "",
    table,
    ...(unit === "F" && first !== undefined ? ["", wrapped(inFahrenheit(first, display))] : []),
    "",
    wrapped(
      "+/- is one standard error of the line through the trials. The second method gives slow, cold trials more say and has no standard errors; where it is more than two of them away from the first, the trials do not agree on a line.",
    ),
    "",
    "STRAIGHT, OR BENT AT AN END?",
    ...ends.map((end) => bullet(endText(end))),
    wrapped(
      "The chance says how often an end would be so far off with nothing bent; below 5 % it is called bent.",
      { first: "  " },
    ),
    "",
    wrapped(
      `A fit is as good as its trials: temperatures measured where the animals were, one food, one population, begin and end seen on the day. It says nothing of heat above ${numberText(hottest)} °C, where animals may slow down or die, and nothing of those that died on the way.`,
    ),
  ].join("\n");
}

function endText({ end, temperature, chance, looksOutside, lowerWithout }: RangeEnd): string {
  const place = `${numberText(temperature)} °C, the ${end}`;
  if (chance === null || looksOutside === null)
    return `${place}: cannot be told, because fewer than three other temperatures remain.`;
  const percent = chance < 0.01 ? "below 1 %" : `${Math.round(chance * 100)} %`;
  const without =
    lowerWithout === null ? "" : ` Without it the lower threshold would be ${fixedText(lowerWithout, 1)} °C.`;
  return looksOutside
    ? `${place}: bent. Development is ${end === "coldest" ? "faster" : "slower"} there than the line through the others says (chance ${percent}).${without}`
    : `${place}: on the line through the others, as far as they can tell (chance ${percent}).${without}`;
}

function inFahrenheit(estimate: ThresholdEstimate, { temperature, difference, sum }: DisplayUnit): string {
  const { lower, lowerError, thermalConstant, thermalConstantError } = estimate;
  const error = (celsius: number | null): string =>
    celsius === null ? "" : ` +/- ${difference(celsius).toFixed(1)}`;
  return `In °F: lower threshold ${fixedText(temperature(lower), 1)} °F${error(lowerError)}, ${sum(thermalConstant).toFixed(1)} °F degree-days${error(thermalConstantError)}.`;
}

function errorText(error: number | null): string {
  return error === null ? "-" : error.toFixed(1);
}
