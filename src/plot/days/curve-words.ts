import { given, givenList } from "../../given.ts";
import { HOUR_MS } from "../../time/zone.ts";
import type { Thresholds } from "../../response/linear.ts";
import type { DegreeDays, TemperatureUnit } from "../../units.ts";
import type { CurveRow } from "./curve-rows.ts";
import { instantOf, longDate } from "../dates.ts";
import { type DisplayUnit, short, temperatureText, thresholdText, unitOf } from "../display-unit.ts";

/** What the words of a curve need to know besides its rows. */
export interface CurveWordsOptions {
  readonly thresholds: Thresholds;
  /** Degree-days of the whole curve, °C·day, from the library's exact sum. Default: not said. */
  readonly counts?: DegreeDays | null;
  /** Scale to say it in. Default `C`. */
  readonly unit?: TemperatureUnit;
}

/** A temperature curve in words: its range, its hours above the thresholds, and what counts. */
export function describeCurve(rows: readonly CurveRow[], options: CurveWordsOptions): string {
  givenList(rows, ["rows"], "a list of rows");
  given(options, ["options"], "an object of options", "thresholds");
  const { thresholds, counts = null } = options;
  const unit = unitOf(options);
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return "There is no temperature to show.";
  const degrees = rows.map(({ temperature }) => temperature);
  const [low, high] = [degrees.reduce((a, b) => Math.min(a, b)), degrees.reduce((a, b) => Math.max(a, b))];
  // The last row is the end of its day, which the next begins with.
  const lastDay = rows.at(-2)?.at ?? last.at;
  const oneDay = lastDay.slice(0, 10) === first.at.slice(0, 10);
  const span = oneDay ? "Over the day" : `From ${longDate(first.at)} to ${longDate(lastDay)}`;
  const range =
    high - low < 1e-9
      ? `${span} the temperature is taken to be ${temperatureText(low, unit)} throughout.`
      : `${span} the temperature runs between ${short(unit.temperature(low))} and ${temperatureText(high, unit)}.`;
  return [range, ...hoursAbove(rows, thresholds, unit), ...sums(counts, unit, oneDay)].join(" ");
}

function hoursAbove(
  rows: readonly CurveRow[],
  { lower, upper = null }: Thresholds,
  unit: DisplayUnit,
): string[] {
  if (rows.length < 2) return [];
  const hours = hoursOf(rows);
  const above = (t: number): string =>
    short(
      (hours * rows.slice(0, -1).filter(({ temperature }) => temperature > t).length) / (rows.length - 1),
    );
  const lines = [
    `It is above the lower threshold of ${thresholdText(lower, unit)} for about ${above(lower)} of ${short(hours)} hours`,
  ];
  if (upper !== null)
    lines.push(`and above the upper one of ${thresholdText(upper, unit)} for about ${above(upper)}`);
  return [`${lines.join(" ")}.`];
}

function sums(counts: DegreeDays | null, unit: DisplayUnit, oneDay: boolean): string[] {
  return counts === null
    ? []
    : [
        `${oneDay ? "The day counts" : "Together the days count"} ${short(unit.sum(counts))} ${unit.degreeDay}.`,
      ];
}

// As they pass: a day on which the clocks change has 23 or 25.
function hoursOf(rows: readonly CurveRow[]): number {
  const [first, last] = [rows[0], rows.at(-1)];
  return first === undefined || last === undefined
    ? 0
    : Math.round((instantOf(last.at) - instantOf(first.at)) / HOUR_MS);
}
