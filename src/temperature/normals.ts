import { InputError, shown } from "../errors.ts";
import { given } from "../given.ts";
import { type CivilDay, addDays, civilDays, dayNumber, dayOfYear } from "../time/civil-day.ts";
import { dailyTemperatures } from "./daily.ts";
import type { DailyTemperatures } from "./series.ts";

/** Mean daily extremes for each day of the year, from past years of one place. */
export interface Normals {
  /** Mean minimum for day of year 1 to 366 (slot 0 to 365), °C. */
  readonly min: readonly number[];
  /** Mean maximum, likewise. */
  readonly max: readonly number[];
  /** Days with readings that they rest on. */
  readonly daysUsed: number;
}

/** Days to either side that are averaged with a day of the year, unless told otherwise. */
export const NORMALS_HALF_WIDTH = 7;

/**
 * Normals from past years: for each day of the year the mean minimum and maximum over all years and the
 * days around it. The window wraps over the turn of the year; 29 February is day 60 of its year and the
 * days after it are counted one later, which the window evens out.
 * @param past Daily series of past years, with or without gaps.
 * @param halfWidth Days to either side in the mean. Default 7 (common practice, no source: about two weeks
 *   even out single years without hiding the season).
 * @throws {InputError} `no-temperatures` when some day of the year has no reading within its window;
 *   `invalid-option` for a half width that is not a whole number from 0 to 182.
 */
export function normalsOf(past: DailyTemperatures, halfWidth = NORMALS_HALF_WIDTH): Normals {
  given(past, ["past"], "daily temperatures, as dailyTemperatures makes them", "start", "min", "max");
  // From 183 on the window would meet itself behind the turn of the year and count days twice.
  if (!(Number.isInteger(halfWidth) && halfWidth >= 0 && halfWidth <= 182)) {
    throw new InputError(
      "invalid-option",
      `halfWidth is ${shown(halfWidth)}; it must be a whole number of days from 0 to 182.`,
      { path: ["halfWidth"], value: halfWidth },
    );
  }
  const sums = { min: new Float64Array(366), max: new Float64Array(366), count: new Float64Array(366) };
  let daysUsed = 0;
  for (let i = 0; i < past.min.length; i++) {
    const [low, high] = [past.min[i] ?? Number.NaN, past.max[i] ?? Number.NaN];
    if (!(low <= high)) continue;
    daysUsed++;
    const slot = dayOfYear(addDays(past.start, i)) - 1;
    for (let k = -halfWidth; k <= halfWidth; k++) {
      const near = (slot + k + 366) % 366;
      sums.min[near] = (sums.min[near] ?? 0) + low;
      sums.max[near] = (sums.max[near] ?? 0) + high;
      sums.count[near] = (sums.count[near] ?? 0) + 1;
    }
  }
  const empty = sums.count.findIndex((count) => count === 0);
  if (empty >= 0) {
    throw new InputError(
      "no-temperatures",
      `day ${empty + 1} of the year has no reading within ${halfWidth} days in any past year; normals need at least one whole year.`,
      { path: ["past"], value: past.min.length },
    );
  }
  const mean = (column: Float64Array) => Array.from(column, (sum, i) => sum / (sums.count[i] ?? 1));
  return { min: mean(sums.min), max: mean(sums.max), daysUsed };
}

/** Days that normals are laid out over at most: the 400 years after which the calendar repeats. */
const LONGEST_NORMALS_DAYS = 146_097;

/** The normal minimum and maximum of a civil day, °C. */
export function normalsFor(normals: Normals, day: CivilDay): { min: number; max: number } {
  const slot = dayOfYear(day) - 1;
  return { min: normals.min[slot] ?? Number.NaN, max: normals.max[slot] ?? Number.NaN };
}

/**
 * Normals laid out over civil days as a series of origin `normal`, to be joined behind readings.
 * @throws {InputError} `invalid-option` when `to` is before `from`, or more than 400 years after it.
 */
export function normalTemperatures(normals: Normals, from: CivilDay, to: CivilDay): DailyTemperatures {
  given(normals, ["normals"], "normals, as normalsOf returns them", "min", "max");
  const count = dayNumber(to, ["to"]) - dayNumber(from, ["from"]) + 1;
  if (count < 1) {
    throw new InputError(
      "invalid-option",
      `to is ${to}, before from ${from}; it must be the same day or later.`,
      {
        path: ["to"],
        value: to,
      },
    );
  }
  if (count > LONGEST_NORMALS_DAYS) {
    throw new InputError(
      "invalid-option",
      `from ${from} to ${to} are ${count} days; normals can be laid out over ${LONGEST_NORMALS_DAYS} at most.`,
      { path: ["to"], value: to },
    );
  }
  const days = civilDays(dayNumber(from), count).map((day) => normalsFor(normals, day));
  return dailyTemperatures(
    from,
    days.map((day) => day.min),
    days.map((day) => day.max),
    "normal",
  );
}
