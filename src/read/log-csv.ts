import { InputError, shown } from "../errors.ts";
import type { Note } from "../notes.ts";
import { type LogEntry, checkLog } from "../cohort/log.ts";
import { civilDay } from "../time/civil-day.ts";
import { DAY_MS, formatInstant } from "../time/zone.ts";
import { type ClockTime, clockCell, splitStamp } from "./clock-cell.ts";
import { type Column, columnNotes } from "./columns.ts";
import { csvTable } from "./csv-table.ts";
import { dayColumn } from "./day-column.ts";
import { endOf } from "./fate-words.ts";
import { type LogColumns, logColumns } from "./log-columns.ts";
import { neededCells } from "./needed-cells.ts";
import { type LogOptions, checkedLogOptions } from "./options.ts";
import { ROWS, refusal } from "./place.ts";
import { plainText } from "./text.ts";

/**
 * A log of what was seen, from a delimited table with a header: `stage` and `seen on`, and where wanted
 * `time`, `count`, `cohort` (which animals), `fate` and `note`. A stage is an id or a plain word for the stage
 * or the event that begins it: see {@link STAGE_WORDS}. Animals that died or were lost are written with the
 * stage they were in: `died as pupa`, or `pupa` with the fate `died`; see {@link FATE_WORDS}.
 * @param text Text, or the bytes of the file.
 * @returns The entries in the order of the file, and notes. Without a column of counts each row is one
 *   animal.
 * @throws {InputError} with the row, the column, the value and what would be right: `unknown-column`,
 *   `ambiguous-column`, `unknown-stage`, `invalid-day`, `ambiguous-date`, `invalid-instant`,
 *   `invalid-log` (a count that is not a whole number from 1), `malformed-file`.
 * @example
 * readLog("stage,seen on\npupated,2026-07-04").entries[0]?.stage // → "pupa"
 * readLog("stage,seen on\ndied as pupa,2026-07-04").entries[0]?.fate // → "died"
 */
export function readLog(
  text: string | Uint8Array,
  options: LogOptions = {},
): { entries: readonly LogEntry[]; notes: readonly Note[] } {
  const checked = checkedLogOptions(options);
  const { text: plain, notes } = plainText(text);
  const table = csvTable(
    plain,
    (header, many) => logColumns(header, many, checked.columns),
    "a stage and the day it was seen on",
    Object.values(checked.columns ?? {}).filter((name) => name !== undefined),
  );
  const { columns } = table;
  const present = Object.values(columns).filter((column) => column !== null);
  const { texts, rows } = neededCells(table, present, undefined);
  const cellsOf = (column: Column | null): readonly string[] =>
    column === null ? [] : (texts[present.indexOf(column)] ?? []);
  const [stages, counts, cohorts, remarks, fates] = [
    cellsOf(columns.stage),
    cellsOf(columns.count),
    cellsOf(columns.cohort),
    cellsOf(columns.note),
    cellsOf(columns.fate),
  ];
  refuseCountsAsNames(columns, cohorts);
  const moments = momentsSeen(columns, cellsOf(columns.on), cellsOf(columns.time), rows, checked);
  const looks = looksWithout(columns, cellsOf(columns.notYet), rows, checked);
  const headers = { stage: columns.stage.header.text, fate: columns.fate?.header.text ?? "fate" };
  const entries = rows.map((row, i): LogEntry => ({
    ...endOf({ stage: stages[i] ?? "", fate: fates[i] ?? "" }, headers, row, checked.firstLarvalStage),
    on: moments.on[i] ?? "",
    count: columns.count === null ? 1 : countOf(counts[i] ?? "", row, columns.count.header.text),
    cohort: cohorts[i] || null,
    note: remarks[i] || null,
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
  return {
    entries: checkLog(entries),
    notes: [
      ...notes,
      ...table.notes,
      ...columnNotes(table.header, { ...columns }),
      ...moments.notes,
      ...looks.notes,
      ...counted,
    ],
  };
}

// Days and times as ISO 8601 text, as exact as they were written.
function momentsSeen(
  { on, time }: Pick<LogColumns, "on" | "time">,
  dayCells: readonly string[],
  timeCells: readonly string[],
  rows: readonly number[],
  options: LogOptions,
): { on: string[]; notes: Note[] } {
  const clocks: (ClockTime | null)[] = [];
  const dayTexts = dayCells.map((text, i) => {
    const row = rows[i] ?? 0;
    const timeText = timeCells[i] ?? "";
    const stamp = splitStamp(text);
    if (stamp === undefined) {
      throw refusal(
        "invalid-instant",
        ROWS,
        row,
        on.header.text,
        text,
        "no clock shows that time; write it as 13:05.",
      );
    }
    const clock = timeText === "" ? stamp.clock : clockCell(timeText);
    if (time !== null && timeText !== "" && (clock === null || stamp.clock !== null)) {
      const mustBe =
        clock === null
          ? "it must be a time of day, such as 13:05."
          : "the day has a time too; keep one of them.";
      throw refusal("invalid-instant", ROWS, row, time.header.text, timeText, mustBe);
    }
    clocks.push(clock);
    return stamp.day;
  });
  const { days, notes } = dayColumn(dayTexts, rows, on.header.text, options.dateOrder, ROWS);
  return { on: clocks.map((clock, i) => momentText(days[i] ?? NaN, clock)), notes };
}

/** The last look without a stage, by index of the entry; entries that name none are left out. */
function looksWithout(
  { notYet }: LogColumns,
  cells: readonly string[],
  rows: readonly number[],
  options: LogOptions,
): { on: Map<number, string>; notes: Note[] } {
  const given = cells.flatMap((text, i) => (text === "" ? [] : [i]));
  if (notYet === null || given.length === 0) return { on: new Map(), notes: [] };
  const { on, notes } = momentsSeen(
    { on: notYet, time: null },
    given.map((i) => cells[i] ?? ""),
    [],
    given.map((i) => rows[i] ?? 0),
    options,
  );
  return { on: new Map(given.map((i, k) => [i, on[k] ?? ""])), notes };
}

function momentText(day: number, clock: ClockTime | null): string {
  if (clock === null) return civilDay(day);
  const local = formatInstant(day * DAY_MS + clock.ms, null);
  if (clock.offset === null) return local;
  const minutes = Math.abs(clock.offset) / 60_000;
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${local}${clock.offset < 0 ? "-" : "+"}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

function countOf(text: string, row: number, column: string): number {
  if (/^\d{1,9}$/.test(text) && Number(text) > 0) return Number(text);
  throw refusal("invalid-log", ROWS, row, column, text, "it must be a whole number of animals, 1 or more.");
}

// `animals` can mean how many or which ones. Beside a column of counts it is which ones; alone and full
// of whole numbers it could be either.
function refuseCountsAsNames({ count, cohort }: LogColumns, cells: readonly string[]): void {
  if (count !== null || cohort === null || !/^animals?$/i.test(cohort.header.text)) return;
  if (!cells.every((cell) => /^\d*$/.test(cell))) return;
  throw new InputError(
    "ambiguous-column",
    `the column ${shown(cohort.header.text)} holds only whole numbers; name it count if they are how many animals, or cohort if they say which.`,
    { path: ["columns", "cohort"], value: cohort.header.text },
  );
}
