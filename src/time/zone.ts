import { InputError, shown } from "../errors.ts";
import { type CivilDay, civilDay, dayNumber, twoDigits } from "./civil-day.ts";

/** Milliseconds in a day of 24 hours. */
export const DAY_MS = 86_400_000;

/** Milliseconds in an hour. */
export const HOUR_MS = 3_600_000;

/**
 * A point on the time axis, in milliseconds. With a zone it counts from 1970-01-01T00:00Z, as `Date`
 * does. Without one it is a *local clock* reading: what `Date` would count if the clock on the wall
 * showed UTC. The two never mix inside one calculation.
 */
export type Instant = number;

/** An IANA time zone name, or `null` for a local clock whose zone nobody gave. */
export type Zone = string | null;

const formatters = new Map<string, Intl.DateTimeFormat>();

/**
 * The zone itself when this engine knows it.
 * @throws {InputError} `invalid-zone` otherwise.
 */
export function knownZone(zone: string, path: readonly (string | number)[] = ["zone"]): string {
  formatterOf(zone, path);
  return zone;
}

// Asking the engine takes microseconds, and a forecast asks for the same midnights again and again.
const offsets = new Map<string, Map<Instant, number>>();
const MOST_OFFSETS = 20_000;

/** Local mean times before the date line was moved came this near: Manila was 15 h 56 min behind, tz database. */
const FARTHEST_CLOCK = 16 * HOUR_MS;

/** The last instant that a calendar of the engine can show, ECMA-262, "Time Values and Time Range". */
const LARGEST_INSTANT = 8.64e15;

/** What the clocks of a zone are ahead of UTC at an instant, in milliseconds. */
export function zoneOffset(instant: Instant, zone: string): number {
  if (!(Math.abs(instant) <= LARGEST_INSTANT)) {
    throw new InputError(
      "invalid-instant",
      `${shown(instant)} is no time in milliseconds that a clock can show.`,
      {
        value: instant,
      },
    );
  }
  let known = offsets.get(zone);
  if (known === undefined || known.size >= MOST_OFFSETS)
    offsets.set(zone, (known = new Map<Instant, number>()));
  let offset = known.get(instant);
  if (offset === undefined) known.set(instant, (offset = engineOffset(instant, zone)));
  return offset;
}

function engineOffset(instant: Instant, zone: string): number {
  let [year, month, date, hour, minute, second, beforeChrist] = [0, 1, 1, 0, 0, 0, false];
  for (const { type, value } of formatterOf(zone, ["zone"]).formatToParts(instant)) {
    if (type === "year") year = Number(value);
    else if (type === "month") month = Number(value);
    else if (type === "day") date = Number(value);
    else if (type === "hour") hour = Number(value);
    else if (type === "minute") minute = Number(value);
    else if (type === "second") second = Number(value);
    else if (type === "era") beforeChrist = value.startsWith("B");
  }
  const wall = new Date(0);
  // setUTCFullYear, because Date.UTC reads the years 0 to 99 as 1900 to 1999.
  wall.setUTCFullYear(beforeChrist ? 1 - year : year, month - 1, date);
  wall.setUTCHours(hour, minute, second);
  return wall.getTime() - Math.floor(instant / 1000) * 1000;
}

/**
 * The instants at which clocks of a zone show a local reading: one as a rule, two in the hour that is
 * lived twice when clocks go back, none in the hour that is skipped when they go forward.
 * @param local Local clock reading as milliseconds (see {@link Instant}).
 */
export function instantsAt(local: number, zone: Zone): Instant[] {
  if (zone === null) return [local];
  const [before, after] = [zoneOffset(local - DAY_MS, zone), zoneOffset(local + DAY_MS, zone)];
  if (before === after) return [local - before];
  return [before, after]
    .map((offset) => local - offset)
    .filter((instant) => instant + zoneOffset(instant, zone) === local)
    .sort((a, b) => a - b);
}

/** What the clock on the wall shows at an instant, as a local clock reading in milliseconds. */
export function localClock(instant: Instant, zone: Zone): number {
  return zone === null ? instant : instant + zoneOffset(instant, zone);
}

/**
 * The instant at which a civil day begins. Where clocks skip midnight it is the first instant of that
 * day; where they show it twice, the first of the two.
 * @param day Civil day, or its number.
 */
export function startOfDay(day: CivilDay | number, zone: Zone): Instant {
  return firstShowing((typeof day === "number" ? day : dayNumber(day)) * DAY_MS, zone);
}

function firstShowing(local: number, zone: Zone): Instant {
  if (zone === null) return local;
  const [first] = instantsAt(local, zone);
  // Skipped: clocks jump forward across it, and the offset before the jump leads to the jump or behind it.
  return first ?? local - zoneOffset(local - DAY_MS, zone);
}

/** The instant at which a civil day ends and the next begins: 23 to 25 hours on where clocks change. */
export function endOfDay(day: CivilDay | number, zone: Zone): Instant {
  return startOfDay((typeof day === "number" ? day : dayNumber(day)) + 1, zone);
}

/**
 * The instant at which clocks show noon on a civil day. Where they skip it, it is the first instant after the jump;
 * where they show it twice, the first of the two.
 */
export function noonOf(day: CivilDay | number, zone: Zone): Instant {
  return firstShowing((typeof day === "number" ? day : dayNumber(day)) * DAY_MS + DAY_MS / 2, zone);
}

/** The civil day that the calendar on the wall shows at an instant. */
export function civilDayOf(instant: Instant, zone: Zone): CivilDay {
  return civilDay(Math.floor(localClock(instant, zone) / DAY_MS));
}

/**
 * An instant as ISO 8601 text to the second: with the zone's offset (`2026-07-04T13:05:00-04:00`), or
 * without any when it is a local clock reading (`2026-07-04T13:05:00`).
 */
export function formatInstant(instant: Instant, zone: Zone): string {
  const whole = Math.round(instant / 1000) * 1000;
  const local = localClock(whole, zone);
  const text = `${civilDay(Math.floor(local / DAY_MS))}T${clockText(local)}`;
  if (zone === null) return text;
  const minutes = Math.round((local - whole) / 60_000);
  const size = Math.abs(minutes);
  return `${text}${minutes < 0 ? "-" : "+"}${twoDigits(Math.floor(size / 60))}:${twoDigits(size % 60)}`;
}

const ISO_INSTANT =
  /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})(?::(\d{2})(?:\.(\d{1,3})\d*)?)?(Z|[+-]\d{2}:?\d{2})?$/;

/**
 * A day or a time as a person gives it: a civil day, a local date and time, or one with an offset.
 * @param text ISO 8601: `2026-07-04`, `2026-07-04T13:05`, `2026-07-04T13:05:00-04:00` or `...Z`.
 * @returns The day, and the instant or `null` when only a day was given.
 * @throws {InputError} `invalid-day` or `invalid-instant`, also for a local time that clocks skipped;
 *   `zone-needed` when an offset was given but no zone.
 */
export function parseMoment(
  text: string,
  zone: Zone,
  path: readonly (string | number)[],
): { day: CivilDay; instant: Instant | null } {
  const match = typeof text === "string" ? ISO_INSTANT.exec(text) : null;
  if (!match) {
    dayNumber(text, path);
    return { day: text, instant: null };
  }
  const refused = (why: string, code: "invalid-instant" | "zone-needed" = "invalid-instant"): InputError =>
    new InputError(code, `${path.join(".")} is ${shown(text)}${why}.`, { path, value: text });
  const [, day = "", hour, minute, second = "0", fraction = "0", offset] = match;
  const clock =
    ((Number(hour) * 60 + Number(minute)) * 60 + Number(second)) * 1000 + Number(fraction.padEnd(3, "0"));
  if (Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59)
    throw refused("; a day has the times 00:00 to 23:59:59");
  const local = dayNumber(day, path) * DAY_MS + clock;
  if (offset !== undefined) {
    if (zone === null) {
      throw refused(
        ", with an offset from UTC, but no time zone was given; name it (such as America/New_York) or leave the offset out",
        "zone-needed",
      );
    }
    const ahead = offsetMs(offset);
    if (Math.abs(ahead) > FARTHEST_CLOCK) throw refused("; no clock was ever more than 16 hours from UTC");
    const instant = local - ahead;
    return { day: civilDayOf(instant, zone), instant };
  }
  const [first] = instantsAt(local, zone);
  if (first === undefined)
    throw refused(`, a time that clocks in ${zone} skipped; give a time before or after the change`);
  return { day, instant: first };
}

/** Milliseconds of an ISO 8601 offset text: `Z`, `+02:00` or `-0400`. */
export function offsetMs(text: string): number {
  if (text === "Z") return 0;
  const digits = text.slice(1).replace(":", "");
  const size = (Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2, 4))) * 60_000;
  return text.startsWith("-") ? -size : size;
}

function clockText(local: number): string {
  const seconds = Math.floor(local / 1000) - Math.floor(local / DAY_MS) * 86_400;
  return `${twoDigits(Math.floor(seconds / 3600))}:${twoDigits(Math.floor(seconds / 60) % 60)}:${twoDigits(seconds % 60)}`;
}

function formatterOf(zone: string, path: readonly (string | number)[]): Intl.DateTimeFormat {
  const known = formatters.get(zone);
  if (known) return known;
  try {
    // Asked for no zone at all, the engine would take that of the machine.
    if (typeof zone !== "string") throw new TypeError("no zone");
    const formatter = new Intl.DateTimeFormat("en-US", {
      timeZone: zone,
      hourCycle: "h23",
      calendar: "gregory",
      numberingSystem: "latn",
      era: "short",
      year: "numeric",
      month: "numeric",
      day: "numeric",
      hour: "numeric",
      minute: "numeric",
      second: "numeric",
    });
    formatters.set(zone, formatter);
    return formatter;
  } catch {
    throw new InputError(
      "invalid-zone",
      `${path.join(".")} is ${shown(zone)}, which is not a known time zone; use an IANA name such as America/New_York or Europe/Berlin.`,
      { path, value: zone },
    );
  }
}
