import type { RankedModel } from "../../src/evaluate/rate-fit/compare-rate-models.ts";
import type { DaysAt } from "../../src/evaluate/threshold/days-at.ts";
import type { ThresholdEstimate } from "../../src/evaluate/threshold/estimate-threshold.ts";
import type { RangeEnd } from "../../src/evaluate/threshold/linear-range.ts";
import type { Trial } from "../../src/evaluate/threshold/trial.ts";
import {
  type LeaveOutRow,
  constantWithError,
  fastestOf,
  rateModelName,
  thresholdWithError,
} from "../../src/plot/index.ts";
import { displayUnit, short, temperatureText } from "../../src/plot/display-unit.ts";
import {
  type TemperatureUnit,
  celsiusDegreesToFahrenheit,
  celsiusToFahrenheit,
  fahrenheitToCelsius,
} from "../../src/units.ts";
import type { TrialSet } from "./trial-table.ts";

/** The threshold in two sentences, and what was printed with the same trials. */
export function thresholdOf(
  { lower, lowerError, ...constant }: ThresholdEstimate,
  unit: TemperatureUnit,
): string {
  const sure = lowerError === null ? "" : " (± one standard error)";
  return (
    `By these trials development stops at ${thresholdWithError({ lower, lowerError }, { unit })}${sure}, and needs ` +
    `${constantWithError(constant, { unit })} above it.`
  );
}

/** Where the trials are from and what was printed with them. */
export function sourceOf({ source, printed, unit }: TrialSet): string {
  return printed === null
    ? source
    : `${source} Printed with them: a threshold of ${printed.lower} °${unit} and ${printed.degreeDays} degree-days.`;
}

/** What leaving out or changing trials did to the threshold. */
export function movedOf(before: ThresholdEstimate, now: ThresholdEstimate, unit: TemperatureUnit): string {
  const by = now.lower - before.lower;
  const text = `The threshold of the trials as they were given is ${thresholdWithError(before, { unit })}`;
  if (Math.abs(by) < 5e-4) return `${text}, and that is what it is now.`;
  const error = before.lowerError;
  const size = error === null ? "" : `, ${short(Math.abs(by) / error)} of its standard errors`;
  return `${text}. It is ${thresholdWithError(now, { unit })} now: ${difference(Math.abs(by), unit)} ${by > 0 ? "higher" : "lower"}${size}.`;
}

/** What a row of the table of left-out temperatures left out. */
export function withoutOf({ leftOut }: LeaveOutRow, unit: TemperatureUnit): string {
  return leftOut === null ? "none" : temperatureText(leftOut, displayUnit(unit));
}

/** The threshold of a row, or a dash. */
export function lowerOf({ lower, lowerError }: LeaveOutRow, unit: TemperatureUnit): string {
  return lower === null ? "–" : thresholdWithError({ lower, lowerError }, { unit });
}

/** How far the threshold moved, with its sign, or a dash. */
export function movesOf({ leftOut, moves }: LeaveOutRow, unit: TemperatureUnit): string {
  if (leftOut === null || moves === null) return "–";
  return `${moves < 0 ? "−" : "+"}${difference(Math.abs(moves), unit)}`;
}

/** What is to be thought of an end of the range of temperatures. */
export function endOf(end: RangeEnd, unit: TemperatureUnit): string {
  const { temperature, deviation, chance, looksOutside } = end;
  const name = `The ${end.end} trial, at ${temperatureText(temperature, displayUnit(unit))},`;
  if (deviation === null || chance === null)
    return `${name} cannot be judged: fewer than three temperatures would remain.`;
  const [side, other] = deviation < 0 ? ["slower", "faster"] : ["faster", "slower"];
  const off = `${name} was ${side} than the line through the others`;
  const bent = (end.end === "coldest") === deviation > 0;
  if (!bent) return `${off}, and a bend would have made it ${other}. That is no reason to leave it out.`;
  const verdict =
    looksOutside === true ? "It looks outside the straight part" : "That is no reason to leave it out";
  const odds =
    chance < 0.01 ? "less than one chance in a hundred" : `a chance of ${Math.round(chance * 100)}\u00a0%`;
  return `${off}. Without a bend a trial would lie so far to this side, or farther, with ${odds}. ${verdict}.`;
}

/** The trials in a unit, for notes that name their temperatures. */
export function trialsIn(trials: readonly Trial[], unit: TemperatureUnit): readonly Trial[] {
  if (unit === "C") return trials;
  return trials.map((trial) => ({
    ...trial,
    temperature: Math.round(celsiusToFahrenheit(trial.temperature) * 1e6) / 1e6,
  }));
}

/** Three temperatures of a room, round in the unit shown. */
export function roomsIn(unit: TemperatureUnit): number[] {
  return unit === "C" ? [15, 20, 25] : [60, 70, 80].map(fahrenheitToCelsius);
}

/** Mean days at a temperature. */
export function daysOf({ days, beyond }: DaysAt): string {
  if (days === null) return "none: below the threshold";
  return `${short(days)}${beyond ? " (no trial was there)" : ""}`;
}

/** Their interval. */
export function intervalOf({ days, early, late }: DaysAt): string {
  if (days === null || early === null) return "–";
  return late === null ? `${short(early)} or more` : `${short(early)} to ${short(late)}`;
}

/** What the interval means for a date. */
export function datesOf(rows: readonly DaysAt[], level: number, unit: TemperatureUnit): string {
  const known = rows.flatMap(({ temperature, early, late }) =>
    early === null || late === null ? [] : [{ temperature, early, late }],
  );
  const widest = known.sort((a, b) => b.late - b.early - (a.late - a.early))[0];
  if (widest === undefined)
    return "These trials give no interval: it takes three of them, and a line that is sure to rise.";
  return (
    `At ${temperatureText(widest.temperature, displayUnit(unit))} the mean date itself is open by ${Math.round(widest.late - widest.early)} days ` +
    `(${Math.round(level * 100)} % interval). How single animals differ comes on top of it.`
  );
}

/** How a model stands among the others. */
export function rankOf({ delta, weight, reason }: RankedModel): string {
  if (delta === null || weight === null) return reason ?? "not ranked";
  const first = delta === 0 ? "first" : `${short(delta)} behind`;
  return `${first}, ${Math.round(weight * 100)} % of the weight`;
}

/** Where a model is fastest, or a dash. */
export function fastestText(row: RankedModel, unit: TemperatureUnit): string {
  const fastest = fastestOf(row);
  return fastest === null ? "–" : temperatureText(fastest, displayUnit(unit));
}

/** What the comparison of the models says. */
export function modelsOf(ranked: readonly RankedModel[]): string {
  const [best] = ranked.filter(({ delta }) => delta !== null);
  if (best === undefined)
    return "These trials cannot rank the curves. One that goes closer by the points is then no better for it.";
  const near = ranked.filter(({ delta }) => delta !== null && delta > 0 && delta < 2);
  const others =
    near.length === 0
      ? ""
      : ` ${near.map(({ model }) => rateModelName(model)).join(" and ")} cannot be told from it.`;
  return `Ranked first: ${rateModelName(best.model)}.${others}`;
}

function difference(celsiusDegrees: number, unit: TemperatureUnit): string {
  return `${short(unit === "F" ? celsiusDegreesToFahrenheit(celsiusDegrees) : celsiusDegrees)}\u00a0°${unit}`;
}
