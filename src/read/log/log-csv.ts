import { InputError, shown } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { type LogEntry, checkLog } from "../../cohort/log.ts";
import { columnNotes } from "../table/columns.ts";
import { csvTable, refuseUnmetNames } from "../table/csv-table.ts";
import { endOf } from "./fate-words.ts";
import { type LogColumns, logColumns } from "./log-columns.ts";
import { type SupersededRow, currentRows } from "./log-corrections.ts";
import { rowsUntil } from "./log-history.ts";
import { type WrittenCell, looksWithout, momentsSeen } from "../table/log-moments.ts";
import { logRows, withoutExamples } from "./log-rows.ts";
import { type LogOptions, checkedLogOptions } from "../options.ts";
import { ROWS, readAt, refusal } from "../place.ts";
import { plainText } from "../text.ts";

/** What a log was read into. */
export interface LogReading {
  readonly entries: readonly LogEntry[];
  /** Rows that later rows corrected or retracted; they are in no entry. */
  readonly superseded: readonly SupersededRow[];
  readonly notes: readonly Note[];
}

/**
 * A log of what was seen, from a delimited table with a header: `stage` and `seen on`, and where wanted
 * `time`, `count`, `cohort` (which animals), `fate` and `note`. A stage is an id or a plain word for the stage
 * or the event that begins it: see {@link STAGE_WORDS}. Animals that died or were lost are written with the
 * stage they were in: `died as pupa`, or `pupa` with the fate `died`; see {@link FATE_WORDS}.
 *
 * A log may be kept so that nothing in it is ever changed: a row that has the number of an earlier row in the
 * column `corrects` stands in its place, keeps what it leaves empty and drops what it calls `(none)`; with the
 * stage `retracted` it takes the earlier row back. `written` says when a row was written.
 * @param text Text, or the bytes of the file.
 * @param options `throughRow` and `asOf` read an earlier state of such a log.
 * @returns The entries in the order of the file, corrected ones in the place of the row that they correct; rows
 *   that no longer count; notes. Without a column of counts each row is one animal.
 * @throws {InputError} with the row, the column, the value and what would be right: `unknown-column`,
 *   `ambiguous-column`, `unknown-stage`, `invalid-day`, `ambiguous-date`, `invalid-instant`,
 *   `invalid-log` (a count that is not a whole number from 1), `malformed-file`.
 * @example
 * readLog("stage,seen on\npupated,2026-07-04").entries[0]?.stage // → "pupa"
 * readLog("stage,seen on\ndied as pupa,2026-07-04").entries[0]?.fate // → "died"
 */
export function readLog(text: string | Uint8Array, options: LogOptions = {}): LogReading {
  const checked = checkedLogOptions(options);
  const { text: plain, notes } = plainText(text);
  const table = csvTable(plain, (header, many) => logColumns(header, many, checked.columns), {
    needed: "a stage and the day it was seen on",
    example: "stage,seen on,count",
    named: checked.columns,
  });
  refuseUnmetNames(table, checked.columns);
  const { columns } = table;
  const written = logRows(table);
  const { rows: own, notes: exampleNotes } = withoutExamples(written);
  const until = rowsUntil(own, checked);
  const { rows: current, superseded, notes: correctionNotes } = currentRows(until.rows, columns);
  const cellsOf = (field: "on" | "time" | "notYet"): WrittenCell[] =>
    current.map(({ cells, writtenIn }) => ({ text: cells[field], row: writtenIn[field] }));
  refuseCountsAsNames(
    columns,
    current.map(({ cells }) => cells.cohort),
  );
  const moments = momentsSeen(columns, cellsOf("on"), cellsOf("time"), checked);
  // Both columns are written by the same hand.
  const looks = looksWithout(columns, cellsOf("notYet"), { dateOrder: moments.order });
  const headers = { stage: columns.stage.header.text, fate: columns.fate?.header.text ?? "fate" };
  const entries = current.map(({ row, cells, writtenIn }, i): LogEntry => ({
    ...endOf(cells, headers, writtenIn, checked.firstLarvalStage),
    on: moments.on[i] ?? "",
    count: columns.count === null ? 1 : countOf(cells.count, writtenIn.count, columns.count.header.text),
    cohort: cells.cohort || null,
    note: cells.note || null,
    row,
    ...(looks.on.has(i) ? { notYet: looks.on.get(i) ?? "" } : {}),
  }));
  const counted: Note[] =
    columns.count === null
      ? [
          {
            code: "count-assumed",
            message: "The log has no column of counts; each row was taken as one animal.",
          },
        ]
      : [];
  entries.forEach((entry, i) => {
    const row = current[i]?.writtenIn.notYet ?? 0;
    // A look that comes too late is the one thing that only the whole entry shows.
    if (entry.notYet !== undefined)
      readAt(ROWS.cell(row, columns.notYet?.header.text ?? ""), () => checkLog([entry]));
  });
  return {
    entries: checkLog(entries),
    superseded,
    notes: [
      ...notes,
      ...table.notes,
      ...columnNotes(table.header, { ...columns }, "remark"),
      ...moments.notes,
      ...looks.notes,
      ...counted,
      ...exampleNotes,
      ...until.notes,
      ...correctionNotes,
    ],
  };
}

function countOf(text: string, row: number, column: string): number {
  if (/^\d{1,9}$/.test(text) && Number(text) > 0) return Number(text);
  throw refusal("invalid-log", ROWS, row, column, text, "it must be a whole number of animals, 1 or more.");
}

// `animals` can mean how many or which ones. Beside a column of counts it is which ones; alone and full
// of whole numbers it could be either.
function refuseCountsAsNames({ count, cohort }: LogColumns, cells: readonly string[]): void {
  if (count !== null || cohort === null || !/^animals?$/i.test(cohort.header.text)) return;
  if (cells.length === 0 || !cells.every((cell) => /^\d*$/.test(cell))) return;
  throw new InputError(
    "ambiguous-column",
    `the column ${shown(cohort.header.text)} holds only whole numbers; name it count if they are how many animals, or cohort if they say which.`,
    { path: ["columns", "cohort"], value: cohort.header.text },
  );
}
