import { InputError, shown } from "../../errors.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import { dayNumber, daysInMonth } from "../../time/civil-day.ts";
import { GHCN_MISSING, type GhcnValue, ghcnSeries, temperatureElement } from "./ghcn.ts";
import { type ReadOptions, checkedReadOptions } from "../options.ts";
import type { ReadResult } from "../result.ts";
import { plainText } from "../text.ts";

// Columns of a line, from 0: station 0-10, year 11-14, month 15-16, element 17-20, then 31 fields of
// eight characters: the value in five, then the measurement, quality and source flags.
// NOAA NCEI, GHCN-Daily readme (positions from memory; the daily USHCN description, which was read, has
// the same fields of eight characters).
const LINE = /^[A-Z]{2}[A-Z0-9_-]{9}\d{4}(?:0[1-9]|1[0-2])[A-Z0-9]{4}[ -]/;
const FIRST_FIELD = 21;
const FIELD_WIDTH = 8;
const VALUE_WIDTH = 5;

/** Whether a line is one of a GHCN-Daily `.dly` file. */
export function isDlyLine(line: string): boolean {
  return LINE.test(line);
}

/**
 * Daily temperatures from a GHCN-Daily `.dly` file: fixed columns, one line for a month of one element.
 * Elements other than TMIN and TMAX are passed over.
 * @param text Text, or the bytes of the file.
 * @param options Among them `location`, the station, in a file of several.
 * @returns The series in °C, with notes.
 * @throws {InputError} `malformed-file` (a line or value not in its columns, a value on a day that does
 *   not exist), and those of {@link ghcnSeries}.
 * @see NOAA NCEI, GHCN-Daily readme, section on the format of `.dly` files (from memory).
 */
export function readGhcnDly(
  text: string | Uint8Array,
  options: ReadOptions = {},
): ReadResult<DailyTemperatures> {
  const checked = checkedReadOptions(options);
  const { text: plain, notes } = plainText(text);
  const values: GhcnValue[] = [];
  plain.split(/\r\n?|\n/).forEach((line, i) => {
    if (line.trim() !== "") readLine(line, i + 1, values);
  });
  const result = ghcnSeries(values, "ghcn-dly", checked);
  return { ...result, notes: [...notes, ...result.notes] };
}

function readLine(line: string, row: number, into: GhcnValue[]): void {
  if (!LINE.test(line)) {
    throw new InputError(
      "malformed-file",
      `row ${row} is ${shown(line)}; a GHCN-Daily line has the station in columns 1-11, the year in 12-15, the month in 16-17 and the element in 18-21.`,
      { path: ["row", row], value: line.slice(0, FIRST_FIELD) },
    );
  }
  const element = temperatureElement(line.slice(17, 21));
  if (element === null) return;
  const station = line.slice(0, 11);
  const [year, month] = [Number(line.slice(11, 15)), Number(line.slice(15, 17))];
  if (year < 1) throw badValue(row, element, line.slice(11, 15), "years run from 0001");
  const first = dayNumber(`${line.slice(11, 15)}-${line.slice(15, 17)}-01`);
  const length = daysInMonth(year, month);
  for (let date = 1; date <= 31; date++) {
    const start = FIRST_FIELD + FIELD_WIDTH * (date - 1);
    const field = line.slice(start, start + VALUE_WIDTH);
    // A line may lose its tail of fields for days that the month does not have.
    if (date > length && field.trim() === "") continue;
    if (!/^ *-?\d+$/.test(field) || field.length < VALUE_WIDTH) {
      const columns = `columns ${start + 1}-${start + VALUE_WIDTH}`;
      throw badValue(row, element, field, `the value of day ${date} must be a whole number in ${columns}`);
    }
    const flags = line.slice(start + VALUE_WIDTH, start + VALUE_WIDTH + 2);
    // A line that lost or gained a character would be read as values ten times as large or small.
    if (!/^[A-Z ]*$/.test(flags)) {
      const columns = `columns ${start + VALUE_WIDTH + 1}-${start + VALUE_WIDTH + 2}`;
      throw badValue(row, element, flags, `the flags of day ${date} in ${columns} must be letters or blanks`);
    }
    const tenths = Number(field);
    if (date > length) {
      if (tenths === GHCN_MISSING) continue;
      throw badValue(
        row,
        element,
        field,
        `month ${month} of ${year} has ${length} days, so that day ${date} must be ${GHCN_MISSING}`,
      );
    }
    const qualityFlag = flags.slice(1);
    into.push({ station, day: first + date - 1, element, tenths, qualityFlag, row });
  }
}

function badValue(row: number, element: string, value: string, mustBe: string): InputError {
  return new InputError("malformed-file", `row ${row}, ${element} has ${shown(value)}; ${mustBe}.`, {
    path: ["row", row, element],
    value,
  });
}
