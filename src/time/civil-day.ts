import { InputError, finite, shown } from "../errors.ts";

/** A calendar day as ISO 8601 writes it, `YYYY-MM-DD`, years 0001 to 9999, Gregorian throughout. */
export type CivilDay = string;

const ISO_DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Days in a month (1 to 12) of a Gregorian year. */
export function daysInMonth(year: number, month: number): number {
  const leap = month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return (DAYS_IN_MONTH[month - 1] ?? 0) + (leap ? 1 : 0);
}

/**
 * Number of a civil day, counted from 1970-01-01 = 0. Days one apart have numbers one apart, whatever
 * clocks did in between.
 * @param day ISO 8601 calendar day.
 * @param path Where the day stood, for the error.
 * @throws {InputError} `invalid-day` when the text is not such a day or the day does not exist.
 */
export function dayNumber(day: CivilDay, path: readonly (string | number)[] = ["day"]): number {
  const match = typeof day === "string" ? ISO_DAY.exec(day) : null;
  if (!match) {
    throw new InputError(
      "invalid-day",
      `${path.join(".")} is ${shown(day)}; it must be a day written YYYY-MM-DD, such as 2026-07-04.`,
      { path, value: day },
    );
  }
  const [year, month, date] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const last = daysInMonth(year, month);
  if (year < 1 || date < 1 || date > last) {
    const why =
      last === 0
        ? `there is no month ${month}`
        : year < 1
          ? "years run from 0001"
          : `that month has ${last} days`;
    throw new InputError("invalid-day", `${path.join(".")} is ${shown(day)}, which does not exist: ${why}.`, {
      path,
      value: day,
    });
  }
  return daysFromCivil(year, month, date);
}

/** Numbers of 0001-01-01 and 9999-12-31, the first and the last day that `YYYY-MM-DD` can write. */
const [FIRST_NUMBER, LAST_NUMBER] = [-719_162, 2_932_896];

/**
 * The civil day with a given number; the inverse of {@link dayNumber}.
 * @throws {InputError} `invalid-day` for a number that is not whole, or of a day outside the years 0001 to 9999.
 */
export function civilDay(number: number): CivilDay {
  if (!(Number.isInteger(number) && number >= FIRST_NUMBER && number <= LAST_NUMBER)) {
    throw new InputError(
      "invalid-day",
      `day number ${shown(number)} is no day of the years 0001 to 9999; it must be a whole number from ${FIRST_NUMBER} to ${LAST_NUMBER}.`,
      { path: ["number"], value: number },
    );
  }
  const { year, month, date } = civilFromDays(number);
  return pageText(year, month) + twoDigits(date);
}

/**
 * Civil days one after another: what {@link civilDay} gives for each number, at a fraction of the cost, because
 * the calendar is only leafed through.
 * @param first Number of the first day.
 * @param count How many days; none when it is 0 or less.
 * @throws {InputError} `invalid-day`, as {@link civilDay}.
 */
export function civilDays(first: number, count: number): CivilDay[] {
  const days: CivilDay[] = [];
  const last = first + count - 1;
  if (last < first) return days;
  civilDay(first);
  civilDay(last);
  let { year, month, date } = civilFromDays(first);
  while (days.length < count) {
    const page = pageText(year, month);
    const end = Math.min(daysInMonth(year, month), date + count - days.length - 1);
    while (date <= end) days.push(page + twoDigits(date++));
    date = 1;
    if (++month > 12) [year, month] = [year + 1, 1];
  }
  return days;
}

// Made once: a forecast writes hundreds of dates and times.
const TWO_DIGITS = Array.from({ length: 60 }, (_, number) => String(number).padStart(2, "0"));

// The part of a day's text that all days of a month share.
function pageText(year: number, month: number): string {
  return `${String(year).padStart(4, "0")}-${twoDigits(month)}-`;
}

/** A month, a date, an hour, a minute or a second as it is written in a date or a time. */
export function twoDigits(number: number): string {
  return TWO_DIGITS[number] ?? "";
}

/**
 * The civil day `count` days after `day` (before it when negative).
 * @throws {InputError} `invalid-day`, also where that day is outside the years 0001 to 9999.
 */
export function addDays(day: CivilDay, count: number): CivilDay {
  return civilDay(dayNumber(day) + finite(count, ["count"], "a number of days"));
}

/** Day of the year, 1 to 365 or 366. */
export function dayOfYear(day: CivilDay): number {
  return dayNumber(day) - dayNumber(`${day.slice(0, 4)}-01-01`) + 1;
}

// Gregorian calendar arithmetic on a year that begins in March, so that the leap day is its last day.
function daysFromCivil(year: number, month: number, date: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfShiftedYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + date - 1;
  const dayOfEra =
    yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfShiftedYear;
  return era * 146_097 + dayOfEra - 719_468;
}

function civilFromDays(number: number): { year: number; month: number; date: number } {
  const shifted = number + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfShiftedYear =
    dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfShiftedYear + 2) / 153);
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    date: dayOfShiftedYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1,
  };
}
