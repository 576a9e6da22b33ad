import type { Note } from "../../notes.ts";
import type { CsvTable } from "../table/csv-table.ts";
import { unguarded } from "../table/guarded-cell.ts";
import type { LogColumns } from "./log-columns.ts";
import { neededCells } from "../table/needed-cells.ts";
import { ROWS, entriesText } from "../place.ts";

/** Cells of a row by what they are for; empty where the log has no such column. */
export type LogCells = Readonly<Record<keyof LogColumns, string>>;

/** A row of a log as it was written. */
export interface LogRow {
  /** Row of the file. */
  readonly row: number;
  readonly cells: LogCells;
}

/** Begins the note of a row that only shows how a log is kept. */
export const EXAMPLE_NOTE = "EXAMPLE: delete this row";

/**
 * The rows of a log with something in them. A row may end before columns that it has nothing for, as rows do that
 * are older than a column; only stage, day and count must be there.
 * @returns None for a log that is only begun.
 * @throws {InputError} `malformed-file` (a row too short).
 */
export function logRows(table: CsvTable<LogColumns>): LogRow[] {
  const { columns, header } = table;
  const first = Math.max(columns.stage.index, columns.on.index, columns.count?.index ?? 0) + 1;
  const rows = table.rows.map((cells) =>
    cells.length >= first && cells.length < header.length
      ? [...cells, ...header.slice(cells.length).map(() => "")]
      : cells,
  );
  const present = Object.values(columns).filter((column) => column !== null);
  const needed = neededCells({ ...table, rows }, present, { location: null, noRows: null });
  return needed.rows.map((row, i): LogRow => {
    const cell = (field: keyof LogColumns): string => {
      const column = columns[field];
      return column === null ? "" : unguarded(needed.texts[present.indexOf(column)]?.[i] ?? "").trim();
    };
    return {
      row,
      cells: {
        stage: cell("stage"),
        on: cell("on"),
        time: cell("time"),
        count: cell("count"),
        cohort: cell("cohort"),
        note: cell("note"),
        fate: cell("fate"),
        notYet: cell("notYet"),
        corrects: cell("corrects"),
        written: cell("written"),
      },
    };
  });
}

/** Rows without the examples of a template, which tell of no animals. */
export function withoutExamples(rows: readonly LogRow[]): { rows: readonly LogRow[]; notes: Note[] } {
  const examples = rows.filter(({ cells }) => cells.note.startsWith(EXAMPLE_NOTE));
  if (examples.length === 0) return { rows, notes: [] };
  const numbers = examples.map(({ row }) => row);
  const message = `Left out ${entriesText(ROWS, numbers)}: examples of the template, to be deleted.`;
  return {
    rows: rows.filter((row) => !examples.includes(row)),
    notes: [{ code: "log-examples", message }],
  };
}
