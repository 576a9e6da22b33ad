import type { Note } from "../notes.ts";
import { dayNumber } from "../time/civil-day.ts";
import type { LogEntry } from "./log.ts";

// From a find to the last adult, in days: longer than any animal takes that does not overwinter.
const LONGEST_SEASON = 180;

// Who notes the day of a find may write down some days too late what was seen before it.
const BEFORE_FIND = 10;

const YEAR = 365;

/**
 * What there is to say of a log whose every entry lies about a year off the find: one slip in a year, not as many
 * contradictions as there are entries.
 * @param found The day of the find, or a date and time, ISO 8601.
 * @returns One note, or none where an entry lies elsewhere or there is none.
 */
export function otherYear(entries: readonly LogEntry[], found: string): Note[] {
  const find = dayNumber(found.slice(0, 10));
  const later = entries.map(({ on }) => dayNumber(on.slice(0, 10)) - find);
  const inYear = (shift: number): boolean =>
    later.every((days) => days - shift >= -BEFORE_FIND && days - shift <= LONGEST_SEASON);
  const side = inYear(YEAR) ? "after" : inYear(-YEAR) ? "before" : null;
  if (side === null || entries.length === 0) return [];
  const which = entries.length === 1 ? "The only entry" : `All ${entries.length} entries`;
  const lie = entries.length === 1 ? "lies" : "lie";
  const message = `${which} of the log ${lie} about a year ${side} the find (${found.slice(0, 10)}); check the year of the one and of the other.`;
  return [{ code: "log-kept-aside", message }];
}
