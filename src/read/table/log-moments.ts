import { civilDay } from "../../time/civil-day.ts";
import { DAY_MS, formatInstant } from "../../time/zone.ts";
import { type ClockTime, clockCell, splitStamp } from "./clock-cell.ts";
import { dayColumn } from "./day-column.ts";
import type { LogColumns } from "../log/log-columns.ts";
import type { LogOptions } from "../options.ts";
import { ROWS, refusal } from "../place.ts";
import type { Note } from "../../notes.ts";

/**
 * Days and times of a log as ISO 8601 text, as exact as they were written.
 * @throws {InputError} `invalid-instant`, `invalid-day`, `ambiguous-date`.
 */
export function momentsSeen(
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
export function looksWithout(
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
