import type { InputError } from "../../errors.ts";
import type { Trial } from "../../evaluate/threshold/trial.ts";
import type { Note } from "../../notes.ts";
import { columnNotes } from "../table/columns.ts";
import { csvTable, refuseUnmetNames } from "../table/csv-table.ts";
import { neededCells } from "../table/needed-cells.ts";
import { numberCell } from "../table/number-cell.ts";
import { type TrialOptions, checkedTrialOptions } from "../options.ts";
import { ROWS, refusal } from "../place.ts";
import { fileUnit, headerUnit, temperatureCells } from "../temperatures/temperature-cells.ts";
import { plainText } from "../text.ts";
import { trialColumns } from "./trial-columns.ts";

/**
 * Rearing trials from a delimited table with a header: a constant `temperature`, the `days` that development took
 * at it and, where wanted, the number of `animals` that the days are the mean of, which becomes the weight.
 * Separators, decimal commas and units are handled as in files of temperatures.
 *
 * A row without days is refused rather than passed over: that nothing developed there is a result, and one that
 * a fit cannot take.
 * @param text Text, or the bytes of the file.
 * @returns Trials in °C in the order of the file, and notes.
 * @throws {InputError} with the row, the column, the value and what would be right: `unknown-column`,
 *   `ambiguous-column`, `invalid-number` (no number, days or animals not above 0), `implausible-temperature`,
 *   `conflicting-units`, `unknown-unit`, `unknown-location`, `malformed-file`, `invalid-trials` (no rows), and
 *   those of {@link decodeText}.
 * @example
 * readTrials("temperature °C,days,animals\n18,30,12\n25,16,9").trials[0] // → { temperature: 18, days: 30, weight: 12 }
 */
export function readTrials(
  text: string | Uint8Array,
  options: TrialOptions = {},
): { trials: readonly Trial[]; notes: readonly Note[] } {
  const checked = checkedTrialOptions(options);
  const { text: plain, notes } = plainText(text);
  const table = csvTable(plain, (header, many) => trialColumns(header, many, checked.columns), {
    needed: "a temperature and the days that development took",
    example: "temperature °C,days,animals",
    named: checked.columns,
  });
  refuseUnmetNames(table, checked.columns);
  const { temperature, days, animals } = table.columns;
  const {
    texts,
    rows,
    notes: placeNotes,
  } = neededCells(table, animals === null ? [temperature, days] : [temperature, days, animals], {
    location: checked.location,
    noRows: "invalid-trials",
  });
  const [temperatureTexts = [], dayTexts = [], animalTexts] = texts;
  const cells = temperatureCells(fileUnit([headerUnit(temperature.header)], checked.unit), ROWS, {
    probeFaults: false,
  });
  const trials = rows.map((row, i): Trial => {
    const celsiusText = temperatureTexts[i] ?? "";
    const column = temperature.header.text;
    const celsius = cells.celsius(numberCell(celsiusText) ?? null, row, column);
    if (numberCell(celsiusText) === undefined || Number.isNaN(celsius))
      throw refused(row, column, celsiusText, "it must be the temperature of the trial, such as 21.5.");
    return {
      temperature: celsius,
      days: aboveNothing(
        dayTexts[i] ?? "",
        row,
        days.header.text,
        "it must be a number of days above 0; leave out the row of a trial in which none developed.",
      ),
      ...(animals !== null && {
        weight: aboveNothing(
          animalTexts?.[i] ?? "",
          row,
          animals.header.text,
          "it must be a number of animals above 0.",
        ),
      }),
    };
  });
  return {
    trials,
    notes: [
      ...notes,
      ...table.notes,
      ...columnNotes(table.header, { temperature, days, animals }),
      ...placeNotes,
      ...cells.notes(),
    ],
  };
}

function aboveNothing(text: string, row: number, column: string, mustBe: string): number {
  const value = numberCell(text);
  if (typeof value === "number" && value > 0) return value;
  throw refused(row, column, text, mustBe);
}

function refused(row: number, column: string, text: string, mustBe: string): InputError {
  return refusal("invalid-number", ROWS, row, column, text, mustBe);
}
