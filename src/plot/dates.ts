import type { IsoInstant } from "../forecast/question/result.ts";
import { type CivilDay, dayNumber } from "../time/civil-day.ts";
import { DAY_MS, type Instant, parseMoment } from "../time/zone.ts";

// Days and instants are both ISO text; what is said of an instant here holds for a day, which has no time.

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/**
 * What the clock on the wall shows at an instant or at the begin of a day, as a date for a UTC time axis:
 * the figures' axes show the days that the forecast names, whatever zone the reader sits in.
 */
export function wallClock(at: IsoInstant): Date {
  if (typeof at !== "string") dayNumber(at, ["at"]);
  const [, hours = "0", minutes = "0", seconds = "0"] = /T(\d{2}):(\d{2})(?::(\d{2}))?/.exec(at) ?? [];
  const time = ((Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds)) * 1000;
  return new Date(dayNumber(at.slice(0, 10)) * DAY_MS + time);
}

/** Milliseconds; a time without an offset is a local clock, which no zone of this machine may move. @internal */
export function instantOf(at: IsoInstant): Instant {
  const { day, instant } = parseMoment(at, "UTC", ["at"]);
  return instant ?? dayNumber(day) * DAY_MS;
}

/** Noon of a civil day on the same axis: where something known to the day stands. */
export function noonOf(day: CivilDay): Date {
  return new Date((dayNumber(day) + 0.5) * DAY_MS);
}

/** A day as text for a figure, such as `4 Jul`. */
export function shortDate(at: IsoInstant): string {
  wallClock(at);
  return `${Number(at.slice(8, 10))} ${monthOf(at).slice(0, 3)}`;
}

/** A day as words, such as `4 July`. */
export function longDate(at: IsoInstant): string {
  wallClock(at);
  return `${Number(at.slice(8, 10))} ${monthOf(at)}`;
}

/** Days between two labels of a time axis, from close to wide. */
const TICK_STEPS = [1, 2, 4, 7, 14, 28, 56, 91, 182, 365];
/** Pixels that a label of a time axis takes, with some air. */
const TICK_PIXELS = 62;

/**
 * Where a time axis is labelled: whole days from the first on, as close as their labels have room. An axis
 * within one day is labelled where it begins, or it would not say which day it shows.
 * @param pixels Length of the axis.
 */
export function dayTicks(begin: Date, end: Date, pixels: number): Date[] {
  const first = Math.ceil(begin.getTime() / DAY_MS);
  const days = end.getTime() / DAY_MS - first;
  if (days < 0) return [begin];
  const step = TICK_STEPS.find((step) => (pixels / days) * step >= TICK_PIXELS) ?? Math.ceil(days);
  return Array.from({ length: Math.floor(days / step) + 1 }, (_, i) => new Date((first + i * step) * DAY_MS));
}

/** The same under marks that stand at noon, from one day to another. @internal */
export function noonTicks(
  first: IsoInstant | undefined,
  last: IsoInstant | undefined,
  pixels: number,
): Date[] {
  if (first === undefined || last === undefined) return [];
  const [begin, end] = [wallClock(first.slice(0, 10)), wallClock(last.slice(0, 10))];
  return dayTicks(begin, end, pixels).map((tick) => noonOf(tick.toISOString().slice(0, 10)));
}

/** A time axis with its labels. @internal */
export function dayAxis(
  ticks: readonly Date[],
  tickFormat: (date: Date, index: number) => string = dateTick,
) {
  return { type: "utc", label: null, ticks, tickFormat, tickSize: 4 } as const;
}

/** Labels of a time axis: the day, with the year below the first. */
export function dateTick(date: Date, index: number): string {
  const day = date.toISOString();
  return index === 0 ? `${shortDate(day)}\n${day.slice(0, 4)}` : shortDate(day);
}

function monthOf(at: string): string {
  return MONTHS[Number(at.slice(5, 7)) - 1] ?? "";
}
