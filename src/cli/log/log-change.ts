import type { LogEntry } from "../../cohort/log.ts";
import { InputError } from "../../errors.ts";
import { type LogReading, type SupersededRow, readLog } from "../../read/index.ts";
import { DROPPED, RETRACTED } from "../../read/log/log-corrections.ts";
import { entryText } from "../../write/pages/log-text.ts";
import { wrapped } from "../../write/layout/text-layout.ts";
import type { Given } from "../options/arguments.ts";
import { DATE_ORDERS, inFile } from "../files/input-file.ts";
import { type NewCells, withRow } from "./log-append.ts";
import type { Terminal } from "../terminal.ts";
import { wholeNumbers } from "../options/whole-numbers.ts";

/** What can be said of something seen, by option. */
const CELL_OPTIONS = [
  ["stage", "stage"],
  ["on", "on"],
  ["time", "time"],
  ["count", "count"],
  ["cohort", "cohort"],
  ["fate", "fate"],
  ["not-yet", "notYet"],
  ["note", "note"],
] as const;

/** Adds a row of what was seen. */
export async function addRow(given: Given, terminal: Terminal): Promise<void> {
  given.needed("stage", "the stage that had begun, such as pupated");
  given.needed("on", "the day it was seen, such as 2026-06-25");
  await append(given, terminal, { count: "1", ...cellsGiven(given, "") });
}

/** Adds a row that stands in the place of an earlier one. */
export async function correctRow(given: Given, terminal: Terminal): Promise<void> {
  const row = rowGiven(given);
  const cells = cellsGiven(given, DROPPED);
  if (Object.keys(cells).length === 0) {
    throw new InputError(
      "invalid-option",
      "nothing is to be corrected; give what the row should say, such as --count 4.",
      { path: ["row"], value: row },
    );
  }
  await append(given, terminal, { ...cells, corrects: String(row) }, (log) => {
    return lastOf(log, row)?.how === "retracted" ? ", which was retracted" : "";
  });
}

/** Adds a row that takes an earlier one back. */
export async function retractRow(given: Given, terminal: Terminal): Promise<void> {
  const row = rowGiven(given);
  const note = given.text("note") ?? "";
  await append(given, terminal, { stage: RETRACTED, note, corrects: String(row) }, (log) => {
    const old = lastOf(log, row);
    if (old?.how !== "retracted") return "";
    throw new InputError("invalid-log", `row ${row} was retracted by row ${old.by} already.`, {
      path: ["row"],
      value: row,
    });
  });
}

/** The last that became of what a row says, through all rows that correct it. */
function lastOf({ superseded }: LogReading, row: number): SupersededRow | undefined {
  let last: SupersededRow | undefined;
  for (const one of superseded) if (one.row === (last?.by ?? row)) last = one;
  return last;
}

function cellsGiven(given: Given, empty: string): NewCells {
  return Object.fromEntries(
    CELL_OPTIONS.flatMap(([option, field]) => {
      const text = given.text(option);
      return text === undefined ? [] : [[field, text.trim() === "" ? empty : text]];
    }),
  );
}

function rowGiven(given: Given): number {
  given.needed("row", "the row it is about; moltline log show names them");
  const [row = 1] = wholeNumbers(given, "row", { from: 1, to: 9_999_999, most: 1 }) ?? [];
  return row;
}

/** Appends a row, unless the log could be read before it and cannot with it. */
async function append(
  given: Given,
  terminal: Terminal,
  cells: NewCells,
  ask: (log: LogReading) => string = () => "",
): Promise<void> {
  const path = given.needed("log", "the log");
  const written = new Date(terminal.now()).toISOString().replace(/\.\d+Z$/, "Z");
  let told = "";
  await inFile(path, () =>
    terminal.update(path, (before) => {
      const added = withRow(before, { ...cells, written });
      const [old, log] = [read(before, given), read(added.bytes, given)];
      const aside = old instanceof InputError ? "" : ask(old);
      if (log instanceof InputError && !(old instanceof InputError && !isAbout(log, added.row))) throw log;
      told = toldOf(added.row, cells, log instanceof InputError ? log.worded(given.names) : log, aside);
      return added.bytes;
    }),
  );
  terminal.out(told);
}

/** A log that cannot be read is one that somebody means to mend, a row at a time. */
function read(bytes: Uint8Array, given: Given): LogReading | InputError {
  try {
    return readLog(bytes, { dateOrder: given.choice("date-order", DATE_ORDERS) });
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}

function isAbout({ path }: InputError, row: number): boolean {
  return path[0] === "row" && path[1] === row;
}

function toldOf(row: number, { corrects, stage }: NewCells, log: LogReading | string, aside: string): string {
  const lead =
    corrects === undefined
      ? `Row ${row}`
      : stage === RETRACTED
        ? `Row ${row} takes back row ${corrects}${aside}`
        : `Row ${row} stands in the place of row ${corrects}${aside}`;
  if (typeof log === "string") return `${lead}.\nWritten, but the log cannot be read yet: ${log}\n`;
  const entry: LogEntry | undefined = log.entries.find((one) => one.row === row);
  return `${wrapped(`${lead}${entry === undefined ? "" : `: ${entry.on}, ${entryText(entry)}`}.`)}\n`;
}
