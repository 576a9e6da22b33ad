import type { Note } from "../../notes.ts";
import { splitStamp } from "../table/clock-cell.ts";
import type { LogColumns } from "./log-columns.ts";
import type { LogCells, LogRow } from "./log-rows.ts";
import { ROWS, refusal } from "../place.ts";

/** A row that no longer counts, and why. */
export interface SupersededRow {
  readonly row: number;
  /** The row that took its place or took it back. */
  readonly by: number;
  readonly how: "corrected" | "retracted";
  /** What it said, its cells that are not empty. */
  readonly was: readonly string[];
}

/** What a correction writes where it drops something; an empty cell keeps what was there. */
export const DROPPED = "(none)";

/** What stands in the stage of a row that takes another back. */
export const RETRACTED = "retracted";

// What the rows about one thing seen come to.
interface Standing {
  readonly latest: LogRow;
  readonly cells: LogCells;
  readonly retracted: boolean;
}

/**
 * The rows that count: each in the state that later rows brought it to, in the place of the row that was first.
 * All rows that correct one row, directly or through each other, form one line; each changes what the line says
 * by then, so that two people who correct different cells of a row both have their way.
 * @throws {InputError} `invalid-log` for a correction of a row that is not above it.
 */
export function currentRows(
  rows: readonly LogRow[],
  { corrects }: Pick<LogColumns, "corrects">,
): { rows: LogRow[]; superseded: SupersededRow[]; notes: Note[] } {
  const firstOf = new Map<number, number>();
  const standing = new Map<number, Standing>();
  const superseded: SupersededRow[] = [];
  for (const written of rows) {
    const { row, cells } = written;
    if (cells.corrects === "") {
      firstOf.set(row, row);
      standing.set(row, { latest: written, cells, retracted: false });
      continue;
    }
    const first = firstOf.get(Number(cells.corrects.replace(/^row\s+/i, "")));
    const before = first === undefined ? undefined : standing.get(first);
    if (first === undefined || before === undefined) {
      const header = corrects?.header.text ?? "corrects";
      const mustBe = "it must be the number of a row above it that says what was seen.";
      throw refusal("invalid-log", ROWS, row, header, cells.corrects, mustBe);
    }
    firstOf.set(row, first);
    const retracted = cells.stage.toLowerCase() === RETRACTED;
    superseded.push({
      row: before.latest.row,
      by: row,
      how: retracted ? "retracted" : "corrected",
      was: said(before.latest.cells),
    });
    standing.set(first, {
      latest: written,
      cells: retracted ? before.cells : changed(before.cells, cells),
      retracted,
    });
  }
  return {
    rows: [...standing.values()].flatMap(({ latest, cells, retracted }) =>
      retracted ? [] : [{ row: latest.row, cells }],
    ),
    superseded,
    notes: supersededNotes(superseded),
  };
}

function changed(before: LogCells, by: LogCells): LogCells {
  const cell = (field: keyof LogCells): string =>
    by[field] === "" ? before[field] : by[field] === DROPPED ? "" : by[field];
  const [on, time] = [cell("on"), cell("time")];
  // A day may have its time beside it or within it; of the two the newer counts.
  const withinNew = by.on !== "" && hasClock(by.on);
  const besideNew = by.time !== "" && hasClock(on) && !withinNew;
  return {
    stage: cell("stage"),
    on: besideNew ? (splitStamp(on)?.day ?? on) : on,
    time: withinNew && by.time === "" ? "" : time,
    count: cell("count"),
    cohort: cell("cohort"),
    note: cell("note"),
    fate: cell("fate"),
    notYet: cell("notYet"),
    corrects: by.corrects,
    written: by.written,
  };
}

function hasClock(text: string): boolean {
  return splitStamp(text)?.clock != null;
}

function said({ stage, on, time, count, cohort, fate, notYet, note }: LogCells): string[] {
  return [stage, on, time, count, cohort, fate, notYet, note].filter((cell) => cell !== "");
}

// A note must stay readable in a log that is corrected often.
const MOST_NAMED = 8;

function supersededNotes(superseded: readonly SupersededRow[]): Note[] {
  if (superseded.length === 0) return [];
  const named = superseded
    .slice(0, MOST_NAMED)
    .map(({ row, by, how }) => `row ${row} (${how} by row ${by})`)
    .join(", ");
  const left = superseded.length - MOST_NAMED;
  const message = `Superseded: ${named}${left > 0 ? ` and ${left} more` : ""}.`;
  return [{ code: "log-superseded", message }];
}
