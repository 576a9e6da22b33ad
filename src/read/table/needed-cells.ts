import { InputError, type InputErrorCode, nearestNames, shown } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import type { Column } from "./columns.ts";
import type { CsvTable } from "./csv-table.ts";
import { headerMeaning } from "./header-words.ts";
import { counted } from "../place.ts";

/** The cells that are needed, column by column. */
export interface NeededCells {
  /** Trimmed cells of each needed column, in the order the columns were given. */
  readonly texts: readonly (readonly string[])[];
  /** Row of the file of each cell. */
  readonly rows: readonly number[];
  readonly notes: readonly Note[];
}

/** What a table is about, for what is asked of its rows. */
export interface TableKind {
  /**
   * The place to keep, in a file that names places; `undefined` where none was chosen, `null` where a table is not
   * about one place, and a column of places is a remark like others.
   */
  readonly location: string | undefined | null;
  /** Code of the refusal of a table without rows; `null` where it may have none. */
  readonly noRows: InputErrorCode | null;
}

/**
 * The cells of the needed columns for one place. Rows with nothing in any of them are blank lines with
 * other things in them, and are passed over.
 * @throws {InputError} `malformed-file` (a row too short), `unknown-location` (several places and none
 *   chosen, or one that is not there), the code for no rows.
 */
export function neededCells(
  table: CsvTable<unknown>,
  columns: readonly Column[],
  { location, noRows }: TableKind,
): NeededCells {
  const { keep, notes } = location === null ? { keep: () => true, notes: [] } : placeFilter(table, location);
  const texts = columns.map((): string[] => []);
  const rows: number[] = [];
  table.rows.forEach((cells, i) => {
    if (!keep(cells)) return;
    const row = table.rowNumbers[i] ?? 0;
    const wanted = columns.map(({ index }) => cells[index]?.trim());
    if (wanted.every((text) => text === undefined || text === "")) return;
    wanted.forEach((text, c) => {
      if (text === undefined) throw tooShort(row, cells.length, columns[c]);
      texts[c]?.push(text);
    });
    rows.push(row);
  });
  if (rows.length === 0 && noRows !== null) {
    throw new InputError(
      noRows,
      "below its header the table has no row with values; at least one is needed.",
      {
        path: ["row"],
      },
    );
  }
  return { texts, rows, notes };
}

function tooShort(row: number, cells: number, column: Column | undefined): InputError {
  const name = shown(column?.header.text ?? "");
  return new InputError(
    "malformed-file",
    `row ${row} has ${cells} ${cells === 1 ? "cell" : "cells"} and so none for the column ${name}; leave the cell empty where there is no value.`,
    { path: ["row", row, column?.header.text ?? ""], value: cells },
  );
}

function placeFilter(
  table: CsvTable<unknown>,
  location: string | undefined,
): { keep: (cells: readonly string[]) => boolean; notes: Note[] } {
  const columns = table.header.flatMap((text, index) =>
    headerMeaning(text).role === "location" ? [index] : [],
  );
  const places = columns.map((index) => ({
    index,
    names: [...new Set(table.rows.map((cells) => cells[index]?.trim() ?? ""))].filter((name) => name !== ""),
  }));
  const several = places.find(({ names }) => names.length > 1);
  if (location === undefined) {
    if (!several) return { keep: () => true, notes: [] };
    throw new InputError(
      "unknown-location",
      (name) =>
        `the column ${shown(table.header[several.index])} has several places (${several.names.slice(0, 12).map(shown).join(", ")}); choose one with ${name("location")}.`,
      { path: ["location"] },
    );
  }
  const holding = places.find(({ names }) => names.includes(location));
  if (!holding) {
    const all = places.flatMap(({ names }) => names);
    const near = nearestNames(location, all);
    const offer = near.length > 0 ? near : all.slice(0, 12);
    throw new InputError(
      "unknown-location",
      (name) =>
        `${name("location")} is ${shown(location)}; ${offer.length > 0 ? `the file has ${offer.map(shown).join(", ")}` : "the file has no column of places, so leave it out"}.`,
      { path: ["location"], value: location },
    );
  }
  const own = table.rows.filter((cells) => cells[holding.index]?.trim() === location);
  const namesIn = (index: number): string[] =>
    [...new Set(own.map((cells) => cells[index]?.trim() ?? ""))].filter((name) => name !== "");
  const finer = columns.find((index) => namesIn(index).length > 1);
  if (finer !== undefined) {
    const names = namesIn(finer);
    throw new InputError(
      "unknown-location",
      (name) =>
        `${name("location")} is ${shown(location)}, of which the column ${shown(table.header[finer])} has several (${names.slice(0, 12).map(shown).join(", ")}); choose one of these.`,
      { path: ["location"], value: location },
    );
  }
  const left = table.rows.length - own.length;
  const notes: Note[] =
    left > 0
      ? [
          {
            code: "location-chosen",
            message: `Only rows of ${location} were read; ${counted(left, "row")} of other places ${left === 1 ? "was" : "were"} not.`,
          },
        ]
      : [];
  return { keep: (cells) => cells[holding.index]?.trim() === location, notes };
}
