import type { InputError, Wording } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { clockCell, splitStamp } from "./clock-cell.ts";
import { type DateOrder, dayColumn } from "./day-column.ts";
import { type Places, refusal } from "../place.ts";

/** Cells of one column. */
export interface TextColumn {
  readonly texts: readonly string[];
  readonly column: string;
}

/** Days and times of a table, in columns. */
export interface Stamps {
  /** Day numbers, as `dayNumber` counts. */
  readonly days: Float64Array;
  /** Time of day, milliseconds since the midnight that begins the day. */
  readonly ms: Float64Array;
  /** Offset from UTC written in the cell, milliseconds; NaN where there is none. */
  readonly offset: Float64Array;
  readonly notes: readonly Note[];
}

const EXAMPLE = "such as 2026-07-04 13:05 or 2026-07-04T13:05:00-04:00";

/**
 * Stamps from one column of days with times, or from a column of days and one of times.
 * @param times The column of times, or `null` where `stamps` holds both.
 * @throws {InputError} `invalid-instant`, and those of {@link dayColumn}.
 */
export function stampColumn(
  stamps: TextColumn,
  times: TextColumn | null,
  entries: readonly number[],
  order: DateOrder | undefined,
  places: Places,
): Stamps {
  const size = stamps.texts.length;
  const ms = new Float64Array(size);
  const offset = new Float64Array(size).fill(NaN);
  const refuse = ({ texts, column }: TextColumn, i: number, mustBe: string | Wording): InputError =>
    refusal("invalid-instant", places, entries[i] ?? 0, column, texts[i], mustBe);

  const dayTexts = stamps.texts.map((text, i) => {
    const stamp = splitStamp(text);
    if (stamp === undefined) throw refuse(stamps, i, `no clock shows that time; write it as ${EXAMPLE}.`);
    // A day column that repeats midnight in every row is still a day column.
    if (times && stamp.clock !== null && stamp.clock.ms !== 0) {
      throw refuse(
        stamps,
        i,
        (name) =>
          `the time of day stands in the column ${times.column}; say with ${name("columns.time")} which holds the time.`,
      );
    }
    const clock = times ? clockCell(times.texts[i] ?? "") : stamp.clock;
    if (clock === null) {
      throw times
        ? refuse(times, i, "it must be a time of day, such as 13:05 or 1:05 PM.")
        : refuse(stamps, i, `it must be a day with a time of day, ${EXAMPLE}.`);
    }
    ms[i] = clock.ms;
    // An offset may also stand behind the midnight of a day.
    const ahead = clock.offset ?? stamp.clock?.offset ?? null;
    if (ahead !== null) offset[i] = ahead;
    return stamp.day;
  });
  const { days, notes } = dayColumn(dayTexts, entries, stamps.column, order, places);
  return { days, ms, offset, notes };
}
