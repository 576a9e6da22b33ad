import published from "../../fixtures/published/thresholds.json" with { type: "json" };
import { InputError } from "../../src/errors.ts";
import type { Trial } from "../../src/evaluate/threshold/trial.ts";
import { numberCell } from "../../src/read/table/number-cell.ts";
import { type TemperatureUnit, celsiusToFahrenheit, fahrenheitToCelsius } from "../../src/units.ts";
import type { TypedRow } from "./typed-table.ts";

/** Trials to begin with. */
export interface TrialSet {
  readonly name: string;
  readonly unit: TemperatureUnit;
  /** Cells of the table: temperature, days, animals. */
  readonly rows: readonly (readonly string[])[];
  /** Where they are from, in a sentence or two. */
  readonly source: string;
  /** Threshold and constant printed with them, in their unit; `null` where nothing was. */
  readonly printed: { readonly lower: string; readonly degreeDays: string } | null;
}

/** The published trials, with what was printed beside them. */
export const PUBLISHED_TRIALS: readonly TrialSet[] = published.rows.flatMap((row): TrialSet[] => {
  if (row.data === null) return [];
  const remark = "remark" in row ? ` ${row.remark}` : "";
  return [
    {
      name: row.what,
      unit: row.unit === "F" ? "F" : "C",
      rows: row.data.map((cells) => [...cells.map(String), ""]),
      source: `Published: ${row.source} (${row.mark}).${remark}`,
      printed: { lower: row.lower, degreeDays: row.degreeDays },
    },
  ];
});

/** An empty table. */
export const OWN_TRIALS: TrialSet = {
  name: "an empty table, for trials of your own",
  unit: "C",
  rows: Array.from({ length: 4 }, () => ["", "", ""]),
  source: "Your own trials.",
  printed: null,
};

/** Trials from elsewhere as a set to begin with, in °C. */
export function trialSet(name: string, source: string, trials: readonly Trial[]): TrialSet {
  const rows = trials.map(({ temperature, days, weight }) =>
    [temperature, days, weight ?? ""].map((cell) => (typeof cell === "number" ? cellText(cell) : cell)),
  );
  return { name, unit: "C", rows, source, printed: null };
}

/** Headings of the table. */
export const HEADINGS = ["temperature", "days", "animals"] as const;

/** A trial with whether its row is ticked. */
export interface TypedTrial {
  readonly trial: Trial;
  readonly used: boolean;
}

/**
 * The trials of a typed table in °C; rows without any text are passed over.
 * @throws {InputError} with the row, the field, the value and what would be right.
 */
export function typedTrials(rows: readonly TypedRow[], unit: TemperatureUnit): TypedTrial[] {
  const filled = rows.flatMap(({ cells, used }, i) =>
    cells.every((cell) => cell.trim() === "") ? [] : [{ cells, used, row: i + 1 }],
  );
  const counted = filled.some(({ cells }) => (cells[2] ?? "").trim() !== "");
  return filled.map(({ cells, used, row }): TypedTrial => {
    const [temperature = "", days = "", animals = ""] = cells;
    const trial = { temperature: celsiusOf(temperature, row, unit), days: aboveNothing(days, row, "days") };
    if (!counted) return { trial, used };
    if (animals.trim() === "")
      throw refused(row, "animals", animals, "give their number in each row or in none.");
    return { trial: { ...trial, weight: aboveNothing(animals, row, "animals") }, used };
  });
}

/** Temperatures that the table takes, °C. */
const [COLDEST, HOTTEST] = [-60, 60];

function celsiusOf(text: string, row: number, unit: TemperatureUnit): number {
  const value = numberCell(text);
  if (typeof value !== "number")
    throw refused(row, "temperature", text, "it must be the temperature of the trial, such as 21.5.");
  // A thousandth of a degree is more than any room is held to, and takes the rounding of the conversion away.
  const celsius = unit === "F" ? Math.round(fahrenheitToCelsius(value) * 1e6) / 1e6 : value;
  if (celsius >= COLDEST && celsius <= HOTTEST) return celsius;
  const [from, to] = unit === "F" ? [COLDEST, HOTTEST].map(celsiusToFahrenheit) : [COLDEST, HOTTEST];
  const other = unit === "F" ? "" : ", or the table is in °F";
  throw refused(row, "temperature", text, `it must be from ${from} to ${to} °${unit}${other}.`);
}

function aboveNothing(text: string, row: number, field: "days" | "animals"): number {
  const value = numberCell(text);
  if (typeof value === "number" && value > 0) return value;
  throw refused(row, field, text, `it must be a number of ${field} above 0.`);
}

function refused(row: number, field: string, text: string, mustBe: string): InputError {
  const given = text.trim() === "" ? "empty" : `"${text.trim()}"`;
  return new InputError("invalid-number", `row ${row} of the table, ${field} is ${given}; ${mustBe}`, {
    path: ["row", row, field],
    value: text,
  });
}

function cellText(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
