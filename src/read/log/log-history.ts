import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { type Instant, endOfDay, parseMoment } from "../../time/zone.ts";
import type { LogRow } from "./log-rows.ts";
import type { LogOptions } from "../options.ts";
import { ROWS, entriesText } from "../place.ts";

/**
 * The rows that a log had at an earlier time. Rows are only ever added below, so these are the rows down to some
 * row: a row cannot have been written before those above it, and one that does not say when counts as written
 * right after the row above it.
 * @throws {InputError} `invalid-option` for a row that the log does not reach; `invalid-day`, `invalid-instant`.
 */
export function rowsUntil(
  rows: readonly LogRow[],
  { throughRow, asOf }: Pick<LogOptions, "throughRow" | "asOf">,
): { rows: readonly LogRow[]; notes: Note[] } {
  const last = rows.at(-1)?.row ?? 1;
  if (throughRow !== undefined && throughRow > last) {
    throw new InputError(
      "invalid-option",
      (name) => `${name("throughRow")} is ${throughRow}; the log ends with row ${last}.`,
      { path: ["throughRow"], value: throughRow },
    );
  }
  const stamps = rows.map(({ cells }) => stampOf(cells.written));
  const unread = rows.filter(
    ({ cells }, i) => stamps[i] === null && (cells.written !== "" || asOf !== undefined),
  );
  const until = asOf === undefined ? Infinity : endOf(asOf);
  let written = -Infinity;
  const kept = rows.filter(({ row }, i) => {
    written = Math.max(written, stamps[i] ?? -Infinity);
    return written <= until && (throughRow === undefined || row <= throughRow);
  });
  return { rows: kept, notes: unread.length === 0 ? [] : [unreadNote(unread)] };
}

// Spreadsheets take the T and the Z out of times. Without an offset a stamp is in UTC, as it was written.
const STAMP = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?)(Z|[+-]\d{2}:?\d{2})?$/;

function stampOf(text: string): Instant | null {
  const match = STAMP.exec(text);
  if (!match) return null;
  try {
    return parseMoment(`${match[1]}T${match[2]}${match[3] ?? "Z"}`, "UTC", ["written"]).instant;
  } catch (error) {
    // The observation stands, whenever it was written.
    if (error instanceof InputError) return null;
    throw error;
  }
}

function endOf(asOf: string): Instant {
  const { day, instant } = parseMoment(asOf, "UTC", ["asOf"]);
  return instant ?? endOfDay(day, "UTC") - 1;
}

function unreadNote(rows: readonly LogRow[]): Note {
  const [one] = rows;
  const which = entriesText(
    ROWS,
    rows.map(({ row }) => row),
  );
  const each = rows.length === 1 && one !== undefined ? "it counts" : "each counts";
  return {
    code: "written-unknown",
    message: `The log does not say when ${which} ${rows.length === 1 ? "was" : "were"} written; ${each} as written right after the row above it.`,
  };
}
