import { InputError, shown } from "../../errors.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import { assembleDays } from "./assemble-days.ts";
import { splitStamp } from "../table/clock-cell.ts";
import { type DailyColumns, columnNotes, dailyColumns } from "../table/columns.ts";
import { type CsvTable, csvTable } from "../table/csv-table.ts";
import { dayColumn } from "../table/day-column.ts";
import { neededCells } from "../table/needed-cells.ts";
import { numberCell } from "../table/number-cell.ts";
import { type CheckedReadOptions, type ReadOptions, checkedReadOptions } from "../options.ts";
import { ROWS, refusal } from "../place.ts";
import type { ReadResult } from "../result.ts";
import { fileUnit, headerUnit, temperatureCells } from "./temperature-cells.ts";
import { plainText } from "../text.ts";

/**
 * Daily minimum and maximum temperatures from a delimited table with a header.
 *
 * Commas, semicolons, tabs and bars separate; decimals may have a comma; the columns are recognised by
 * their words (`date`, `Min Temp (°F)`, `tmax`, ...) or named in `columns`. Days that the file lacks
 * become NaN slots. Nothing is guessed: what cannot be told apart is refused, and what was done is noted.
 * @param text Text, or the bytes of the file.
 * @returns The series in °C, with notes.
 * @throws {InputError} with the row, the column, the value and what would be right: `unknown-column`,
 *   `ambiguous-column`, `ambiguous-date`, `invalid-day`, `invalid-number`, `implausible-temperature`,
 *   `min-above-max`, `conflicting-readings`, `conflicting-units`, `unknown-location`, `malformed-file`,
 *   `no-temperatures`, and those of {@link decodeText}.
 * @example
 * readDailyCsv("date;min °C;max °C\n2026-05-01;8,5;24").series.min[0] // → 8.5
 */
export function readDailyCsv(
  text: string | Uint8Array,
  options: ReadOptions = {},
): ReadResult<DailyTemperatures> {
  const checked = checkedReadOptions(options);
  const { text: plain, notes } = plainText(text);
  const table = csvTable(plain, (header, many) => dailyColumns(header, many, checked.columns), {
    needed: "a day, a minimum and a maximum",
    example: "date,min °C,max °C",
    named: checked.columns,
  });
  const result = dailyFromTable(table, checked);
  return { ...result, notes: [...notes, ...result.notes] };
}

/** {@link readDailyCsv} from a table whose columns are known. */
export function dailyFromTable(
  table: CsvTable<DailyColumns>,
  options: CheckedReadOptions,
): ReadResult<DailyTemperatures> {
  const { date, min, max } = table.columns;
  refuseAttributes(table.header);
  const { texts, rows, notes } = neededCells(table, [date, min, max], {
    location: options.location,
    noRows: "no-temperatures",
  });
  const [dayTexts = [], minTexts = [], maxTexts = []] = texts;
  const { days, notes: dayNotes } = dayColumn(
    dayTexts.map((text, i) => dayOnly(text, rows[i] ?? 0, date.header.text)),
    rows,
    date.header.text,
    options.dateOrder,
    ROWS,
  );
  const cells = temperatureCells(
    fileUnit([headerUnit(min.header), headerUnit(max.header)], options.unit),
    ROWS,
    {
      probeFaults: false,
      sentinels: options.sentinels,
    },
  );
  const celsius = (text: string, i: number, column: string): number =>
    cells.celsius(temperatureOf(text, rows[i] ?? 0, column), rows[i] ?? 0, column);
  const lows = minTexts.map((text, i) => celsius(text, i, min.header.text));
  const highs = maxTexts.map((text, i) => celsius(text, i, max.header.text));
  const { series, notes: assembled } = assembleDays({ days, min: lows, max: highs, entries: rows }, ROWS, {
    fields: { date: date.header.text, min: min.header.text, max: max.header.text },
    exchangeSwapped: options.exchangeSwapped,
  });
  return {
    series,
    format: "daily-csv",
    notes: [
      ...table.notes,
      ...columnNotes(table.header, { date, min, max }),
      ...notes,
      ...dayNotes,
      ...cells.notes(),
      ...assembled,
    ],
  };
}

/** The number in a cell, `null` where it says there is none; anything else is refused. */
export function temperatureOf(text: string, row: number, column: string): number | null {
  const value = numberCell(text);
  if (value !== undefined) return value;
  throw refusal(
    "invalid-number",
    ROWS,
    row,
    column,
    text,
    "it must be a number such as 21.5, or empty where there is no reading.",
  );
}

// Some exports write each day as its midnight; any other time means that these are not daily values.
function dayOnly(text: string, row: number, column: string): string {
  const stamp = splitStamp(text);
  if (stamp === undefined || (stamp.clock !== null && stamp.clock.ms !== 0)) {
    throw refusal(
      "invalid-day",
      ROWS,
      row,
      column,
      text,
      (name) =>
        `a table of daily extremes has one day in each row and no times${name("format", (it) => `; for readings, say ${it} readings-csv`)}.`,
    );
  }
  return stamp.day;
}

// Archive tables of daily summaries come in tenths of a degree or in whole degrees under the same
// headers; their columns of attributes give them away (from memory). A cold month in tenths would pass
// every other check.
function refuseAttributes(header: readonly string[]): void {
  const attributes = header.find((name) => /^t(min|max)[ _]attributes$/i.test(name));
  if (attributes === undefined) return;
  throw new InputError(
    "unknown-unit",
    `the column ${shown(attributes)} marks an archive export whose temperatures may be tenths of a degree; read the .dly or by-station file of the same station, or convert to °C and remove the columns of attributes.`,
    { path: ["row", attributes], value: attributes },
  );
}
