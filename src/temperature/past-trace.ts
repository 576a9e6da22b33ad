import { InputError } from "../errors.ts";
import { type CivilDay, addDays, civilDay, dayNumber, daysInMonth } from "../time/civil-day.ts";
import { dailyTemperatures, lastDay } from "./daily.ts";
import { isMissing } from "./gaps.ts";
import type { DailyTemperatures } from "./series.ts";

/** Years of a record that hold the month and date of a day and are not excluded. */
export function memberYears(past: DailyTemperatures, day: CivilDay, exclude: readonly number[]): number[] {
  const [first, last] = [Number(past.start.slice(0, 4)), Number(lastDay(past).slice(0, 4))];
  const years = Array.from({ length: last - first + 1 }, (_, i) => first + i).filter((year) => {
    const at = dayNumber(sameDate(day, year)) - dayNumber(past.start);
    return at >= 0 && at < past.min.length && !exclude.includes(year);
  });
  if (years.length > 0) return years;
  throw new InputError(
    "no-temperatures",
    `no past year has ${day.slice(5)} among its days (${past.start} to ${lastDay(past)}); give past years that cover the season.`,
    { path: ["past"], value: past.start },
  );
}

/**
 * Where a record goes on when it is over: at the index of the same date in its first year, or the second where
 * the first does not hold that date; beyond its end where neither does.
 */
export function restartOf(past: DailyTemperatures): number {
  const [start, length] = [dayNumber(past.start), past.min.length];
  const next = addDays(past.start, length);
  const year = Number(past.start.slice(0, 4));
  const [first, second] = [year, year + 1].map((one) => dayNumber(sameDate(next, one)) - start);
  return first !== undefined && first >= 0 ? first : (second ?? length);
}

/** A stretch of a record from the date of a day on, moved to that day. */
export function pastTrace(
  past: DailyTemperatures,
  year: number,
  day: CivilDay,
  length: number,
): DailyTemperatures {
  const start = dayNumber(past.start);
  const at = dayNumber(sameDate(day, year)) - start;
  const wrapTo = restartOf(past);
  const min: number[] = [];
  const max: number[] = [];
  for (let k = 0, i = at; k < length; k++, i++) {
    if (i >= past.min.length) i = wrapTo;
    if (i >= past.min.length) break;
    if (isMissing(past, i)) {
      throw new InputError(
        "missing-temperature",
        (name) =>
          `past years have no temperature for ${civilDay(start + i)}; fill the gap ${name("by a named policy")} first.`,
        { path: ["past", civilDay(start + i)], value: Number.NaN },
      );
    }
    min.push(past.min[i] ?? Number.NaN);
    max.push(past.max[i] ?? Number.NaN);
  }
  return dailyTemperatures(day, min, max, "past-year");
}

/** The same month and date in another year; 28 February for a 29th that the year lacks. */
export function sameDate(day: CivilDay, year: number): CivilDay {
  const month = Number(day.slice(5, 7));
  const date = Math.min(Number(day.slice(8, 10)), daysInMonth(year, month));
  return `${String(year).padStart(4, "0")}-${day.slice(5, 8)}${String(date).padStart(2, "0")}`;
}
