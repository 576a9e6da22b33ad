import { civilDay } from "../../time/civil-day.ts";
import { DAY_MS, formatInstant } from "../../time/zone.ts";
import { type ClockTime, clockCell, splitStamp } from "./clock-cell.ts";
import { type DateOrder, dayColumn } from "./day-column.ts";
import { LARGEST_OFFSET } from "./local-stamps.ts";
import type { LogColumns } from "../log/log-columns.ts";
import type { LogOptions } from "../options.ts";
import { ROWS, refusal } from "../place.ts";
import type { Note } from "../../notes.ts";

/** A cell with the row that it stands in. */
export interface WrittenCell {
  readonly text: string;
  readonly row: number;
}

/**
 * Days and times of a log as ISO 8601 text, as exact as they were written.
 * @returns With them the order of the dates, where something decided it.
 * @throws {InputError} `invalid-instant`, `invalid-day`, `ambiguous-date`.
 */
export function momentsSeen(
  { on, time }: Pick<LogColumns, "on" | "time">,
  dayCells: readonly WrittenCell[],
  timeCells: readonly WrittenCell[],
  options: Pick<LogOptions, "dateOrder">,
): { on: string[]; order: DateOrder | undefined; notes: Note[] } {
  const clocks: (ClockTime | null)[] = [];
  const dayTexts = dayCells.map(({ text, row }, i) => {
    const { text: timeText, row: timeRow } = timeCells[i] ?? { text: "", row };
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
      throw refusal("invalid-instant", ROWS, timeRow, time.header.text, timeText, mustBe);
    }
    if (Math.abs(clock?.offset ?? 0) > LARGEST_OFFSET) {
      const mustBe = "no clock is more than 14 hours from UTC.";
      const [at, column, told] =
        timeText === "" ? [row, on.header.text, text] : [timeRow, time?.header.text ?? "", timeText];
      throw refusal("invalid-instant", ROWS, at, column, told, mustBe);
    }
    clocks.push(clock);
    return stamp.day;
  });
  const rows = dayCells.map(({ row }) => row);
  const { days, order, notes } = dayColumn(dayTexts, rows, on.header.text, options.dateOrder, ROWS);
  return { on: clocks.map((clock, i) => momentText(days[i] ?? NaN, clock)), order, notes };
}

/** The last look without a stage, by index of the entry; entries that name none are left out. */
export function looksWithout(
  { notYet }: LogColumns,
  cells: readonly WrittenCell[],
  options: Pick<LogOptions, "dateOrder">,
): { on: Map<number, string>; notes: Note[] } {
  const given = cells.flatMap((cell, index) => (cell.text === "" ? [] : [{ ...cell, index }]));
  if (notYet === null || given.length === 0) return { on: new Map(), notes: [] };
  const { on, notes } = momentsSeen({ on: notYet, time: null }, given, [], options);
  return { on: new Map(given.map(({ index }, k) => [index, on[k] ?? ""])), notes };
}

function momentText(day: number, clock: ClockTime | null): string {
  if (clock === null) return civilDay(day);
  const local = formatInstant(day * DAY_MS + clock.ms, null);
  if (clock.offset === null) return local;
  const minutes = Math.abs(clock.offset) / 60_000;
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${local}${clock.offset < 0 ? "-" : "+"}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
