import { givenList } from "../../given.ts";
import type { TemperatureUnit } from "../../units.ts";
import { displayUnit } from "../display-unit.ts";
import { methodName } from "./method-names.ts";
import type { MethodDifferenceRow } from "./method-rows.ts";

/** What is compared: degree-days, percent of them, or days of the date on which an amount is reached. */
export type MethodMeasure = "degree-days" | "percent" | "days";

/** The number of a row in a measure, in the unit it is shown in. @internal */
export function measured(
  row: MethodDifferenceRow,
  measure: MethodMeasure,
  unit?: TemperatureUnit,
): number | null {
  if (measure === "degree-days") return displayUnit(unit).sum(row.degreeDays);
  return measure === "percent" ? row.percent : row.days;
}

/** What the numbers of a measure are, for an axis. @internal */
export function measureName(measure: MethodMeasure, unit?: TemperatureUnit): string {
  if (measure === "degree-days") return displayUnit(unit).degreeDay;
  return measure === "percent" ? "%" : "days";
}

/** A difference with its sign and one decimal, such as `+0.4`. @internal */
export function signedText(value: number): string {
  const text = Math.abs(value).toFixed(1);
  return Number(text) === 0 ? "0.0" : `${value < 0 ? "−" : "+"}${text}`;
}

/** The differences of methods in words: for each group the two ends, and who does not get there. */
export function describeMethodDifferences(
  rows: readonly MethodDifferenceRow[],
  { measure, unit }: { readonly measure: MethodMeasure; readonly unit?: TemperatureUnit | undefined },
): string {
  givenList(rows, ["rows"], "a list of rows");
  const groups = [...new Set(rows.map(({ group }) => group))];
  if (groups.length === 0) return "There are no methods to compare.";
  return groups
    .map((group) => {
      const of = rows.filter((row) => row.group === group);
      const known = of.flatMap((row) => {
        const value = measured(row, measure, unit);
        return value === null ? [] : [{ row, value }];
      });
      const lead = group === "" ? "" : `${group.charAt(0).toUpperCase()}${group.slice(1)}: `;
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
      const name = measureName(measure, unit);
      const told = ({ row, value }: typeof least): string =>
        `${signedText(value)} ${name} (${methodName(row.method)})`;
      const missing = of.length - known.length;
      const rest = missing === 0 ? "" : ` ${missing} of ${of.length} give no number.`;
      return `${lead}from ${told(least)} to ${told(most)}.${rest}`;
    })
    .join(" ");
}
