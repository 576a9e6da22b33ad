import { givenList, givenOneOf } from "../../given.ts";
import { capitalised } from "../../plain-words.ts";
import type { TemperatureUnit } from "../../units.ts";
import { type DisplayUnit, unitOf } from "../display-unit.ts";
import { methodName } from "./method-names.ts";
import type { MethodDifferenceRow } from "./method-rows.ts";

/** What is compared: degree-days, percent of them, or days of the date on which an amount is reached. */
export type MethodMeasure = "degree-days" | "percent" | "days";

const MEASURES: readonly MethodMeasure[] = ["degree-days", "percent", "days"];

/** What to say of methods. */
export interface MethodWordsOptions {
  readonly measure: MethodMeasure;
  readonly unit?: TemperatureUnit | undefined;
}

/** A measure, and the display of its unit. @internal */
export function measureOf(options: MethodWordsOptions): { measure: MethodMeasure; display: DisplayUnit } {
  const display = unitOf(options);
  givenOneOf(options.measure, ["options", "measure"], MEASURES);
  return { measure: options.measure, display };
}

/** The number of a row in a measure, in the unit it is shown in. @internal */
export function measured(
  row: MethodDifferenceRow,
  measure: MethodMeasure,
  { sum }: DisplayUnit,
): number | null {
  if (measure === "degree-days") return sum(row.degreeDays);
  return measure === "percent" ? row.percent : row.days;
}

/** What the numbers of a measure are, for an axis. @internal */
export function measureName(measure: MethodMeasure, { degreeDay }: DisplayUnit): string {
  if (measure === "degree-days") return degreeDay;
  return measure === "percent" ? "%" : "days";
}

/**
 * How the rows are named: by the method, and by the cutoff too where a group has a method with several. @internal
 */
export function rowNames(rows: readonly MethodDifferenceRow[]): (row: MethodDifferenceRow) => string {
  const several = new Set(rows.map(({ group, method }) => `${group}\n${method}`)).size < rows.length;
  return ({ method, cutoff }) => `${methodName(method)}${several ? `, ${cutoff}` : ""}`;
}

/** A difference with its sign and one decimal, such as `+0.4`. @internal */
export function signedText(value: number): string {
  const text = Math.abs(value).toFixed(1);
  return Number(text) === 0 ? "0.0" : `${value < 0 ? "−" : "+"}${text}`;
}

/** The differences of methods in words: for each group the two ends, and who does not get there. */
export function describeMethodDifferences(
  rows: readonly MethodDifferenceRow[],
  options: MethodWordsOptions,
): string {
  givenList(rows, ["rows"], "a list of rows");
  const { measure, display } = measureOf(options);
  const nameOf = rowNames(rows);
  const groups = [...new Set(rows.map(({ group }) => group))];
  if (groups.length === 0) return "There are no methods to compare.";
  return groups
    .map((group) => {
      const of = rows.filter((row) => row.group === group);
      const known = of.flatMap((row) => {
        const value = measured(row, measure, display);
        return value === null ? [] : [{ row, value }];
      });
      const lead = group === "" ? "" : `${capitalised(group)}: `;
      const [least, most] = [
        known.reduce<(typeof known)[number] | undefined>(
          (a, b) => (a && a.value <= b.value ? a : b),
          undefined,
        ),
        known.reduce<(typeof known)[number] | undefined>(
          (a, b) => (a && a.value >= b.value ? a : b),
          undefined,
        ),
      ];
      if (least === undefined || most === undefined) return `${lead}no method gives a number.`;
      const name = measureName(measure, display);
      const told = ({ row, value }: typeof least): string => `${signedText(value)} ${name} (${nameOf(row)})`;
      const missing = of.length - known.length;
      const rest =
        missing === 0 ? "" : ` ${missing} of ${of.length} ${missing === 1 ? "gives" : "give"} no number.`;
      return `${lead}from ${told(least)} to ${told(most)}.${rest}`;
    })
    .join(" ");
}
