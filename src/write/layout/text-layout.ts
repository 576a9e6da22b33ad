import { greatest } from "../../numeric/extremes.ts";
import { civilDays, dayNumber } from "../../time/civil-day.ts";

/** Width of the printed pages, in characters. */
export const PAGE_WIDTH = 80;

// A number and its °C or % stay together.
const WORD_END = /\s+(?!°[CF]\b|%(?:[\s,.;)]|$))/;

/**
 * Text broken at spaces into lines of at most a width, with a hanging indent. A word that is longer than a
 * line, such as the path of a file, is cut.
 */
export function wrapped(
  text: string,
  options: { width?: number; first?: string; rest?: string } = {},
): string {
  const { width = PAGE_WIDTH, first = "", rest = first } = options;
  const lines: string[] = [];
  let line = first;
  let empty = true;
  const room = Math.max(1, width - Math.max(first.length, rest.length));
  const words = text.split(WORD_END).flatMap((word) => word.match(new RegExp(`.{1,${room}}`, "gu")) ?? []);
  for (const word of words) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      [line, empty] = [rest, true];
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line].join("\n");
}

/** A line of a list, hanging under its sign. */
export function bullet(text: string, sign: "-" | "*" | "!" = "-"): string {
  return wrapped(text, { first: `  ${sign} `, rest: "    " });
}

/** Blocks of text with a line between them, those that are empty left out. */
export function pageOf(blocks: readonly string[]): string {
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

/**
 * Rows of cells as aligned columns, two spaces apart.
 * @param rows Cells, as many in each row; the first row is the heading.
 * @param right Indexes of the columns that are aligned to the right.
 */
export function columns(rows: readonly (readonly string[])[], right: readonly number[] = []): string {
  const widths = (rows[0] ?? []).map((_, i) => greatest(rows.map((row) => row[i]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => (right.includes(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
/** Months, January first. */
export const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** A civil day as people write it on a wall: `Mon  8 Jun`. */
export function dayLabel(day: string): string {
  const weekday = WEEKDAYS[(((dayNumber(day) + 4) % 7) + 7) % 7];
  return `${weekday} ${String(Number(day.slice(8, 10))).padStart(2)} ${MONTHS[Number(day.slice(5, 7)) - 1]}`;
}

/** A civil day with its year: `Mon 8 Jun 2015`. */
export function fullDayLabel(day: string): string {
  return `${dayLabel(day).replace("  ", " ")} ${day.slice(0, 4)}`;
}

/** Whether days or times fall in more than one year, so that the year has to be said. */
export function inSeveralYears(instants: readonly (string | null)[]): boolean {
  return new Set(instants.flatMap((one) => (one === null ? [] : [one.slice(0, 4)]))).size > 1;
}

/** The civil days from one to another, both included. */
export function daysThrough(first: string, last: string): string[] {
  const from = dayNumber(first);
  return civilDays(from, dayNumber(last) - from + 1);
}

/** Whether a civil day is a Monday. */
export function isMonday(day: string): boolean {
  return dayLabel(day).startsWith("Mon");
}
