import { InputError } from "../../src/errors.ts";
import type { Note } from "../../src/notes.ts";
import { decodeText } from "../../src/read/text.ts";
import type { ReadResult } from "../../src/read/result.ts";
import type { DailyTemperatures, TemperatureSeries } from "../../src/temperature/series.ts";
import { fahrenheitToCelsius } from "../../src/units.ts";
import { holesIn } from "./holes.ts";

/** Longest time of the processor that any of these small files may take, milliseconds; waiting does not count. */
const LONGEST_MS = 5000;

/** Lets a refusal in a full sentence pass, and nothing else that is thrown. */
export function attempt(act: () => void): void {
  const begin = process.cpuUsage();
  try {
    act();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    if (error.message.length < 12 || error.message.length > 2500 || !/[.?!]$/.test(error.message))
      throw new Error(`not a sentence: ${error.message.slice(0, 300)}`);
  }
  const { user, system } = process.cpuUsage(begin);
  const took = (user + system) / 1000;
  if (took > LONGEST_MS) throw new Error(`took ${Math.round(took)} ms`);
  if (Reflect.has({}, "polluted")) throw new Error("the prototype of all objects was changed");
}

/** The value of a JSON text; what is no JSON is handed on as the text that it is. */
export function parsed(file: string | Uint8Array): unknown {
  try {
    return JSON.parse(typeof file === "string" ? file : new TextDecoder().decode(file)) as unknown;
  } catch {
    return file;
  }
}

/** No NaN and no undefined in what was read, and notes in sentences. */
export function whole(result: unknown, notes: readonly Note[]): void {
  // A text of the file may well say NaN.
  const [hole] = holesIn(result).filter((one) => !one.includes(" says "));
  if (hole !== undefined) throw new Error(hole);
  for (const { message } of notes)
    if (message.length > 2500 || !message.endsWith("."))
      throw new Error(`a note is no sentence: ${message.slice(0, 300)}`);
}

/** A line with more in it than separators. */
const FILLED = /[^\s,;|]/;

/** Rows of a table that no quotation mark makes hard to count; `null` for other texts. */
function plainRows(file: string | Uint8Array, notes: readonly Note[]): string[] | null {
  const text = typeof file === "string" ? file.replace(/^\uFEFF/, "") : decodeText(file);
  if (text.includes('"') || /^\s*[{[]/.test(text)) return null;
  const lines = text.split(/\r\n?|\n/);
  const skipped = notes.flatMap(
    ({ message }) => /before the header in row (\d+)/.exec(message)?.[1] ?? [],
  )[0];
  const header = skipped === undefined ? lines.findIndex((line) => FILLED.test(line)) : Number(skipped) - 1;
  return lines.slice(header + 1).filter((line) => FILLED.test(line));
}

/** No silent loss: each row of a table is in the result, or is named in a note. */
export function keeps(
  file: string | Uint8Array,
  kept: number | readonly [least: number, most: number],
  notes: readonly Note[],
): void {
  const rows = plainRows(file, notes);
  if (rows === null) return;
  const [least, most] = typeof kept === "number" ? [kept, kept] : kept;
  const left = rows.length - passedOver(notes);
  if (left < least || left > most) throw new Error(`${left} rows, but ${least} to ${most} kept or named`);
}

function passedOver(notes: readonly Note[]): number {
  return notes
    .filter(({ message }) => message.startsWith("Passed over"))
    .reduce((sum, { message }) => sum + countIn(message), 0);
}

/** How many rows the notes of a code name. */
export function named(notes: readonly Note[], ...codes: readonly Note["code"][]): number {
  return notes
    .filter(({ code }) => codes.includes(code))
    .reduce((sum, { message }) => sum + countIn(message), 0);
}

// The numbers in `rows 5 to 7, 12 and 4 more`.
function countIn(message: string): number {
  const list = /\b(?:rows?|entry|entries) ([\d, to]*\d)(?: and (\d+) more)?/.exec(message);
  const ranges = (list?.[1] ?? "").split(", ").map((range) => range.split(" to ").map(Number));
  const listed = ranges.reduce((sum, [first = 0, last = first]) => sum + last - first + 1, 0);
  return list === null ? 0 : listed + Number(list[2] ?? 0);
}

/** Nothing lost in silence, nothing made up, nothing that is no number. */
export function sameSeries(
  { series, format, notes }: ReadResult<TemperatureSeries>,
  file: string | Uint8Array,
): void {
  whole(series.kind === "daily" ? { ...series, min: [], max: [] } : series, notes);
  const missing = named(notes, "empty-cells", "sentinel-values", "faulty-readings");
  const twice = named(notes, "duplicate-rows");
  if (series.kind === "daily") {
    madeUp([...series.min, ...series.max].filter(Number.isFinite), file);
    if (format === "daily-csv") {
      const rows = plainRows(file, notes);
      const days = series.min.filter((low, i) => !Number.isNaN(low) || !Number.isNaN(series.max[i])).length;
      const left = rows === null ? 0 : rows.length - passedOver(notes) - days - twice;
      if (left < 0 || left > missing)
        throw new Error(`${rows?.length} rows, ${days} days, ${twice} repeated, ${missing} missing`);
    }
    if (format === "ghcn-csv" && !notes.some(({ code }) => code === "location-chosen"))
      keepsValues(series, notes, file);
  }
  if (series.kind === "readings") {
    madeUp([...series.temperature], file);
    if (series.at.some((instant, i) => instant <= (series.at[i - 1] ?? -Infinity)))
      throw new Error("times do not rise");
    if (format === "readings-csv") keeps(file, series.at.length + twice + missing, notes);
  }
}

/** Values of a by-station file: each is in the series, or missing, flagged or repeated by a note. */
function keepsValues(series: DailyTemperatures, notes: readonly Note[], file: string | Uint8Array): void {
  const text = typeof file === "string" ? file : decodeText(file);
  if (text.includes('"')) return;
  const given = text.split(/\r\n?|\n/).map((line) => line.split(",").map((part) => part.trim()));
  const values = given.filter(
    ([, , element = "", value]) => /^TM(IN|AX)$/.test(element) && Number(value) !== -9999,
  );
  const flagged = values.filter(([, , , , , flag]) => flag !== "").length;
  const kept = [...series.min, ...series.max].filter(Number.isFinite).length;
  const accounted = kept + flagged + named(notes, "duplicate-rows", "sentinel-values");
  if (values.length !== accounted) throw new Error(`${values.length} values, but ${accounted} kept or named`);
}

/** Each temperature is a number of the file: as it stands, from °F, or from tenths. */
function madeUp(values: readonly number[], file: string | Uint8Array): void {
  const text = typeof file === "string" ? file : decodeText(file);
  const numbers = new Set<number>();
  // At every letter anew, because a cell can end within what looks like one number, such as 12,5 between commas.
  for (const [, token = ""] of text.matchAll(/(?=([+−-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?))/gi)) {
    for (const part of [token, token.replace(/[.,].*/, ""), token.replace(/e.*/i, "")]) {
      const value = Number(part.replace("−", "-").replace(",", "."));
      for (const celsius of [value, fahrenheitToCelsius(value), value / 10]) numbers.add(celsius);
    }
  }
  const odd = values.find((value) => !numbers.has(value));
  if (odd !== undefined) throw new Error(`${odd} is not in the file`);
}
