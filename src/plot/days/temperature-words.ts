import { givenList } from "../../given.ts";
import { counted } from "../../plain-words.ts";
import type { Celsius, TemperatureUnit } from "../../units.ts";
import { longDate } from "../dates.ts";
import { short, temperatureText, thresholdText, unitOf } from "../display-unit.ts";
import type { TemperatureRow } from "./temperature-rows.ts";

/** A pair of developmental thresholds, °C; a table of a forecast is one. */
export interface ThresholdPair {
  readonly lower: Celsius;
  readonly upper: Celsius | null;
}

/** A threshold by name. @internal */
export interface ThresholdLine {
  readonly name: string;
  readonly at: Celsius;
}

/** Each threshold once, however many pairs share it. @internal */
export function thresholdLines(thresholds: readonly ThresholdPair[]): ThresholdLine[] {
  const lowers = [...new Set(thresholds.map((pair) => pair.lower))];
  const uppers = [...new Set(thresholds.flatMap((pair) => (pair.upper === null ? [] : [pair.upper])))];
  return [
    ...lowers.map((at) => ({ name: "lower threshold", at })),
    ...uppers.map((at) => ({ name: "upper threshold", at })),
  ];
}

/**
 * Daily temperatures in words: their range, and how often they left the thresholds.
 * @param options.unit Scale to say them in. Default `C`.
 * @returns One sentence and up to one for each threshold and for missing days.
 */
export function describeTemperatures(
  rows: readonly TemperatureRow[],
  options: { readonly thresholds?: readonly ThresholdPair[]; readonly unit?: TemperatureUnit } = {},
): string {
  givenList(rows, ["rows"]);
  const display = unitOf(options);
  const [first, last] = [rows[0], rows.at(-1)];
  const lows = rows.flatMap((row) => (row.min === null ? [] : [row.min]));
  const highs = rows.flatMap((row) => (row.max === null ? [] : [row.max]));
  if (!first || !last || lows.length === 0) return "There are no temperatures to show.";
  const lowest = lows.reduce((a, b) => Math.min(a, b));
  const highest = highs.reduce((a, b) => Math.max(a, b));
  const sentences = [
    `From ${longDate(first.day)} to ${longDate(last.day)} ${last.day.slice(0, 4)} the temperature lay between ` +
      `${short(display.temperature(lowest))} and ${temperatureText(highest, display)}.`,
  ];
  for (const { name, at } of thresholdLines(options.thresholds ?? [])) {
    const count = name.startsWith("lower")
      ? lows.filter((low) => low < at).length
      : highs.filter((high) => high > at).length;
    sentences.push(
      `${onDays(count, lows.length, name.startsWith("lower") ? ["fall", "fell", "below"] : ["rise", "rose", "above"])} the ${name} of ${thresholdText(at, display)}.`,
    );
  }
  const missing = rows.length - lows.length;
  if (missing > 0) sentences.push(`${counted(missing, "day has", "days have")} no reading.`);
  return sentences.join(" ");
}

function onDays(count: number, of: number, [base, past, where]: readonly [string, string, string]): string {
  return count === 0
    ? `On none of the ${of} days did it ${base} ${where}`
    : `On ${count} of ${of} days it ${past} ${where}`;
}
