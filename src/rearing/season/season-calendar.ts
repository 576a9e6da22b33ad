import { InputError, shown } from "../../errors.ts";
import { sameDate } from "../../temperature/past-trace.ts";
import { type CivilDay, addDays, civilDay, dayNumber } from "../../time/civil-day.ts";

/** Which half of the earth: where July is summer, or where January is. */
export type Hemisphere = "north" | "south";

/** Month and date without a year, `08-14`. */
export type MonthDay = string;

/** A season: from one midwinter over midsummer to the midsummer after it, by which its end is sure to have come. */
export interface SeasonSpan {
  /** `2014`, or `2014/15` where it crosses the new year. */
  readonly label: string;
  /** Midwinter: 1 January or 1 July. */
  readonly from: CivilDay;
  /** Midsummer. */
  readonly turn: CivilDay;
  /** The next season's midwinter and midsummer. */
  readonly next: CivilDay;
  readonly nextTurn: CivilDay;
}

/** The season that begins in a calendar year. */
export function seasonOf(year: number, hemisphere: Hemisphere): SeasonSpan {
  const at = (later: number, monthDay: MonthDay): CivilDay =>
    `${String(year + later).padStart(4, "0")}-${monthDay}`;
  return hemisphere === "north"
    ? {
        label: at(0, "").slice(0, 4),
        from: at(0, "01-01"),
        turn: at(0, "07-01"),
        next: at(1, "01-01"),
        nextTurn: at(1, "07-01"),
      }
    : {
        label: `${at(0, "").slice(0, 4)}/${at(1, "").slice(2, 4)}`,
        from: at(0, "07-01"),
        turn: at(1, "01-01"),
        next: at(1, "07-01"),
        nextTurn: at(2, "01-01"),
      };
}

// Dates of different years are compared in one season that has a 29 February.
const REFERENCE = { north: 2000, south: 1999 } as const;

/** Place of a day in its season, the same for the same month and date of every year. */
export function seasonDay(day: CivilDay, season: SeasonSpan, hemisphere: Hemisphere): number {
  const reference = REFERENCE[hemisphere];
  const later = Number(day.slice(0, 4)) - Number(season.from.slice(0, 4));
  return dayNumber(sameDate(day, reference + later)) - dayNumber(seasonOf(reference, hemisphere).from);
}

/** Month and date at a place in the season; the inverse of {@link seasonDay}. */
export function monthDayAt(place: number, hemisphere: Hemisphere): MonthDay {
  return referenceDay(place, hemisphere).slice(5);
}

/** A day of the reference season, for what hardly changes from year to year, such as the day length. */
export function referenceDay(place: number, hemisphere: Hemisphere): CivilDay {
  return addDays(seasonOf(REFERENCE[hemisphere], hemisphere).from, Math.round(place));
}

/** The day of a season with a month and date; 28 February for a 29th that it lacks. */
export function dayInSeason(monthDay: MonthDay, season: SeasonSpan): CivilDay {
  const year = Number(season.from.slice(0, 4));
  const later = monthDay < season.from.slice(5) ? 1 : 0;
  return sameDate(`2000-${monthDay}`, year + later);
}

/**
 * A month and date that exist.
 * @throws {InputError} `invalid-day`.
 */
export function checkedMonthDay(text: string, path: readonly string[]): MonthDay {
  if (typeof text === "string" && /^\d{2}-\d{2}$/.test(text)) {
    const number = dayNumberOrNull(`2000-${text}`);
    if (number !== null) return civilDay(number).slice(5);
  }
  throw new InputError(
    "invalid-day",
    `${path.join(".")} is ${shown(text)}; it must be a month and a date that exist, written MM-DD, such as 05-20.`,
    { path, value: text },
  );
}

function dayNumberOrNull(day: CivilDay): number | null {
  try {
    return dayNumber(day);
  } catch {
    return null;
  }
}
