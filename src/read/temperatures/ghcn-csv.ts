import { InputError, shown } from "../../errors.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import { dayNumber, daysInMonth } from "../../time/civil-day.ts";
import { delimitedRows } from "../table/delimited-rows.ts";
import { type GhcnValue, ghcnSeries, temperatureElement } from "./ghcn.ts";
import { type ReadOptions, checkedReadOptions } from "../options.ts";
import type { ReadResult } from "../result.ts";
import { plainText } from "../text.ts";

const VALUE_LINE = /^"?[A-Z]{2}[A-Z0-9_-]{9}"?,"?\d{8}"?,"?[A-Z0-9]{4}"?,/;
const HEADER_LINE = /^"?ID"?,"?(?:DATE|YEAR\/MONTH\/DAY)"?,"?ELEMENT"?,/i;

/** Whether a line is one of a GHCN-Daily by-station CSV file, or the header that some of them have. */
export function isGhcnCsvLine(line: string): boolean {
  return VALUE_LINE.test(line) || HEADER_LINE.test(line);
}

/**
 * Daily temperatures from a GHCN-Daily by-station CSV file, one line a value: station, day as YYYYMMDD,
 * element, value, measurement flag, quality flag, source flag, time of observation. Elements other than
 * TMIN and TMAX are passed over.
 * @param text Text, or the bytes of the file.
 * @param options Among them `location`, the station, in a file of several.
 * @returns The series in °C, with notes.
 * @throws {InputError} `malformed-file`, and those of {@link ghcnSeries}.
 * @see NOAA NCEI, GHCN-Daily, readme of the by-station files.
 */
export function readGhcnCsv(
  text: string | Uint8Array,
  options: ReadOptions = {},
): ReadResult<DailyTemperatures> {
  const checked = checkedReadOptions(options);
  const { text: plain, notes } = plainText(text);
  const values: GhcnValue[] = [];
  delimitedRows(plain.replace(/\r\n?/g, "\n"), ",").forEach((cells, i) => {
    const blank = cells.every((cell) => cell.trim() === "");
    if (blank || (i === 0 && HEADER_LINE.test(cells.join(",")))) return;
    readLine(cells, i + 1, values);
  });
  const result = ghcnSeries(values, "ghcn-csv", checked);
  return { ...result, notes: [...notes, ...result.notes] };
}

function readLine(cells: readonly string[], row: number, into: GhcnValue[]): void {
  const [station = "", day = "", name = "", value = "", measured, qualityFlag] = cells.map((cell) =>
    cell.trim(),
  );
  if (qualityFlag === undefined) {
    throw malformed(
      row,
      cells.join(","),
      "a line has station, day, element, value and four more cells for flags and time",
    );
  }
  const element = temperatureElement(name);
  if (element === null) return;
  if (!/^\d{8}$/.test(day) || !exists(day))
    throw malformed(row, day, "the day must be one that exists, as YYYYMMDD");
  if (!/^-?\d{1,5}$/.test(value))
    throw malformed(row, value, `the ${element} must be a whole number of tenths of °C, or -9999`);
  if (!/^[A-Z]?,[A-Z]?$/.test(`${measured},${qualityFlag}`))
    throw malformed(
      row,
      `${measured},${qualityFlag}`,
      "the two flags after the value must each be a letter or nothing",
    );
  const number = dayNumber(`${day.slice(0, 4)}-${day.slice(4, 6)}-${day.slice(6)}`);
  into.push({ station, day: number, element, tenths: Number(value), qualityFlag, row });
}

function exists(day: string): boolean {
  const [year, month, date] = [Number(day.slice(0, 4)), Number(day.slice(4, 6)), Number(day.slice(6))];
  return year >= 1 && date >= 1 && date <= daysInMonth(year, month);
}

function malformed(row: number, value: string, mustBe: string): InputError {
  return new InputError("malformed-file", `row ${row} has ${shown(value)}; ${mustBe}.`, {
    path: ["row", row],
    value,
  });
}
