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

/** A row that counts, and what it says with all that was corrected in it. */
export interface CurrentRow extends LogRow {
  /** The row that each cell stands in, for refusals. */
  readonly writtenIn: Readonly<Record<keyof LogCells, number>>;
}

// What the rows about one thing seen come to.
interface Standing extends Pick<CurrentRow, "cells" | "writtenIn"> {
  readonly latest: LogRow;
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
): { rows: CurrentRow[]; superseded: SupersededRow[]; notes: Note[] } {
  const firstOf = new Map<number, number>();
  const standing = new Map<number, Standing>();
  const superseded: SupersededRow[] = [];
  for (const written of rows) {
    const { row, cells } = written;
    if (cells.corrects === "") {
      firstOf.set(row, row);
      standing.set(row, { latest: written, cells, writtenIn: allIn(row), retracted: false });
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
      ...(retracted ? before : changed(before, written)),
      latest: written,
      retracted,
    });
  }
  return {
    rows: [...standing.values()].flatMap(({ latest, cells, writtenIn, retracted }) =>
      retracted ? [] : [{ row: latest.row, cells, writtenIn }],
    ),
    superseded,
    notes: supersededNotes(superseded),
  };
}

function allIn(row: number): CurrentRow["writtenIn"] {
  return {
    stage: row,
    on: row,
    time: row,
    count: row,
    cohort: row,
    note: row,
    fate: row,
    notYet: row,
    corrects: row,
    written: row,
  };
}

function changed(
  { cells: before, writtenIn }: Pick<Standing, "cells" | "writtenIn">,
  { row, cells: by }: LogRow,
): Pick<Standing, "cells" | "writtenIn"> {
  const place = (field: keyof LogCells): number => (by[field] === "" ? writtenIn[field] : row);
  const cell = (field: keyof LogCells): string =>
    by[field] === "" ? before[field] : by[field] === DROPPED ? "" : by[field];
  const [on, time] = [cell("on"), cell("time")];
  // A day may have its time beside it or within it; of the two the newer counts.
  const withinNew = by.on !== "" && hasClock(by.on);
  const besideNew = by.time !== "" && hasClock(on) && !withinNew;
  const cells: LogCells = {
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
  return {
    cells,
    writtenIn: {
      stage: place("stage"),
      on: place("on"),
      time: place("time"),
      count: place("count"),
      cohort: place("cohort"),
      note: place("note"),
      fate: place("fate"),
      notYet: place("notYet"),
      corrects: row,
      written: row,
    },
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
