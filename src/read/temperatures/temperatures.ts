import { type DailyColumns, type ReadingsColumns, dailyColumns, readingsColumns } from "../table/columns.ts";
import { type ColumnsOf, type CsvTable, csvTable, sameName } from "../table/csv-table.ts";
import { dailyFromTable, readDailyCsv } from "./daily-csv.ts";
import { isGhcnCsvLine, readGhcnCsv } from "./ghcn-csv.ts";
import { isDlyLine, readGhcnDly } from "./ghcn-dly.ts";
import { type ReadOptions, checkedReadOptions } from "../options.ts";
import { readReadingsCsv, readingsFromTable } from "./readings-csv.ts";
import type { ReadResult } from "../result.ts";
import { type JsonSeries, readTemperaturesJson } from "./temperatures-json.ts";
import { plainText } from "../text.ts";

/**
 * Temperatures from a file whose format is recognised: JSON by its first character, the two GHCN-Daily
 * formats by their first line, tables by the columns that their header names. A table with a minimum and
 * a maximum is one of days, even where it has a mean temperature too, unless `columns` names that one.
 * @param text Text, or the bytes of the file.
 * @param options `format` skips the recognition.
 * @returns The series in °C, what was noted on the way, and the format.
 * @throws {InputError} with the place, the value and what would be right; see the single readers.
 * @example
 * readTemperatures("date,tmin,tmax\n2026-05-01,8,24", { unit: "C" }).format // → "daily-csv"
 */
export function readTemperatures(
  text: string | Uint8Array,
  options: ReadOptions = {},
): ReadResult<JsonSeries> {
  const checked = checkedReadOptions(options);
  switch (checked.format) {
    case "daily-csv":
      return readDailyCsv(text, options);
    case "readings-csv":
      return readReadingsCsv(text, options);
    case "ghcn-dly":
      return readGhcnDly(text, options);
    case "ghcn-csv":
      return readGhcnCsv(text, options);
    case "json":
      return readTemperaturesJson(text, options);
    case undefined:
  }
  const { text: plain, notes } = plainText(text);
  const recognised = (): ReadResult<JsonSeries> => {
    if (/^\s*[{[]/.test(plain)) return readTemperaturesJson(plain, options);
    const firstLine = /^.*\S.*$/m.exec(plain)?.[0] ?? "";
    if (isDlyLine(firstLine)) return readGhcnDly(plain, options);
    if (isGhcnCsvLine(firstLine)) return readGhcnCsv(plain, options);
    const { columns: named = {} } = checked;
    const columnsOf: ColumnsOf<DailyColumns | ReadingsColumns> = (header, many) => {
      const readings = () => readingsColumns(header, many, named);
      return (
        (wantsReadings(header, named) ? readings() : null) ?? dailyColumns(header, many, named) ?? readings()
      );
    };
    const table = csvTable(plain, columnsOf, {
      needed: "a day, a minimum and a maximum, or a time and a temperature",
      example: "date,min °C,max °C",
      named,
    });
    const { columns } = table;
    return columns.kind === "daily"
      ? dailyFromTable(withColumns(table, columns), checked)
      : readingsFromTable(withColumns(table, columns), checked);
  };
  const result = recognised();
  return { ...result, notes: [...notes, ...result.notes] };
}

// Who names a column of temperatures beside a minimum and a maximum means that one.
function wantsReadings(header: readonly string[], named: NonNullable<ReadOptions["columns"]>): boolean {
  const { min, max, temperature } = named;
  return (
    temperature !== undefined &&
    min === undefined &&
    max === undefined &&
    header.some((text) => sameName(text, temperature))
  );
}

// The table with the type of its columns narrowed.
function withColumns<Columns>(table: CsvTable<unknown>, columns: Columns): CsvTable<Columns> {
  return { ...table, columns };
}
