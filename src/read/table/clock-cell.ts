import { offsetMs } from "../../time/zone.ts";

/** A time of day as written in a cell. */
export interface ClockTime {
  /** Milliseconds since the midnight that begins the written day; a whole day for `24:00`. */
  readonly ms: number;
  /** Offset from UTC written with it, milliseconds, or `null`. */
  readonly offset: number | null;
}

// No date or time is longer; the limit keeps the patterns below away from cells full of blanks.
const LONGEST_STAMP = 60;

const CLOCK = String.raw`(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(?:\s*([ap])\.?m\.?)?(?:\s*(Z|UTC|GMT|[+-]\d{2}(?::?\d{2})?))?`;
const ONLY_CLOCK = new RegExp(`^${CLOCK}$`, "i");
const DAY_THEN_CLOCK = new RegExp(String.raw`^(\S.*?)(?:,?\s+|T)${CLOCK}$`, "i");

/**
 * The time of day in a cell: 24-hour or with AM or PM, seconds and an offset from UTC where given.
 * @returns `null` for any other text, also for times that no clock shows, such as 13:00 PM.
 */
export function clockCell(text: string): ClockTime | null {
  const match = text.length <= LONGEST_STAMP ? ONLY_CLOCK.exec(text.trim()) : null;
  return match ? clockOf(match, 1) : null;
}

/**
 * A cell with a day and, after a blank or a T, a time of day.
 * @returns The text of the day, and the time or `null` where there is only a day. `undefined` when the
 *   time is none that a clock shows.
 */
export function splitStamp(text: string): { day: string; clock: ClockTime | null } | undefined {
  const trimmed = text.trim();
  const match = trimmed.length <= LONGEST_STAMP ? DAY_THEN_CLOCK.exec(trimmed) : null;
  if (!match) return { day: trimmed, clock: null };
  const clock = clockOf(match, 2);
  return clock ? { day: match[1] ?? "", clock } : undefined;
}

// `from` is the group of the hour in whichever pattern matched.
function clockOf(match: RegExpExecArray, from: number): ClockTime | null {
  const written = Number(match[from]);
  const minute = Number(match[from + 1]);
  const second = Number(match[from + 2] ?? 0);
  const fraction = Number((match[from + 3] ?? "0").slice(0, 3).padEnd(3, "0"));
  const half = match[from + 4]?.toLowerCase();
  // A 12-hour clock runs 12, 1, 2 ... 11, in both halves of the day.
  if (half !== undefined && (written < 1 || written > 12)) return null;
  const hour = half === undefined ? written : (written % 12) + (half === "p" ? 12 : 0);
  const ms = ((hour * 60 + minute) * 60 + second) * 1000 + fraction;
  if (minute > 59 || second > 59 || ms > 86_400_000) return null;
  const zone = match[from + 5]?.toUpperCase();
  return { ms, offset: zone === undefined ? null : writtenOffset(zone) };
}

function writtenOffset(zone: string): number {
  if (zone === "Z" || zone === "UTC" || zone === "GMT") return 0;
  // `+02` is short for `+02:00`.
  return offsetMs(zone.length === 3 ? `${zone}00` : zone);
}
