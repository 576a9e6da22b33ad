import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { dailyTemperatures } from "../../temperature/daily.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import { civilDay } from "../../time/civil-day.ts";
import { crossed, swapped, tooFarApart, twice } from "./day-faults.ts";
import { type Places, counted, entriesText, runs } from "../place.ts";

/** Days as they came from a file, in columns of equal length, in any order. */
export interface DayEntries {
  /** Number of each day, as `dayNumber` counts. */
  readonly days: ArrayLike<number>;
  /** °C, NaN where missing. */
  readonly min: ArrayLike<number>;
  /** °C, NaN where missing. */
  readonly max: ArrayLike<number>;
  /** Row or list index of each day. */
  readonly entries: readonly number[];
}

/** Days from the first to the last that a file may span: the 400 years after which the calendar repeats. */
const LONGEST_SPAN_DAYS = 146_097;

/**
 * A daily series from days in any order: sorted, each day once, a slot with NaN for every day in between
 * that the file lacks. What was done is noted. A missing value never contradicts one that is there.
 * @param options.fields What the day, the minimum and the maximum are called in the file.
 * @throws {InputError} `invalid-day` (days more than 400 years apart), `conflicting-readings` (one day twice with different values), `min-above-max`,
 *   `no-temperatures`.
 */
export function assembleDays(
  { days, min, max, entries }: DayEntries,
  places: Places,
  options: { fields: { date: string; min: string; max: string }; exchangeSwapped?: boolean | undefined },
): { series: DailyTemperatures; notes: Note[] } {
  let first = Infinity;
  let last = -Infinity;
  for (let i = 0; i < days.length; i++) {
    first = Math.min(first, days[i] ?? NaN);
    last = Math.max(last, days[i] ?? NaN);
  }
  if (!(first <= last)) {
    throw new InputError(
      "no-temperatures",
      "there are no days; at least one with a minimum and a maximum is needed.",
    );
  }
  const size = last - first + 1;
  if (size > LONGEST_SPAN_DAYS) throw tooFarApart(days, entries, places, options.fields);
  const lows = new Float64Array(size).fill(NaN);
  const highs = new Float64Array(size).fill(NaN);
  const entryOf = new Int32Array(size).fill(-1);
  const exchanged: number[] = [];
  const repeated: number[] = [];
  const joined: number[] = [];
  const moved: number[] = [];
  let latest = -Infinity;

  for (let i = 0; i < days.length; i++) {
    const [day, entry] = [days[i] ?? NaN, entries[i] ?? 0];
    let [low, high] = [min[i] ?? NaN, max[i] ?? NaN];
    if (low > high) {
      if (options.exchangeSwapped !== true) {
        throw swapped(entry, low, high, places, options.fields);
      }
      [low, high] = [high, low];
      exchanged.push(entry);
    }
    const slot = day - first;
    const before = entryOf[slot] ?? -1;
    if (before >= 0) {
      const same = agrees(lows[slot], low) && agrees(highs[slot], high);
      if (!same) throw twice(civilDay(day), before, entry, places, options.fields);
      const adds =
        (Number.isNaN(lows[slot]) && !Number.isNaN(low)) ||
        (Number.isNaN(highs[slot]) && !Number.isNaN(high));
      (adds ? joined : repeated).push(entry);
    }
    if (!Number.isNaN(low)) lows[slot] = low;
    if (!Number.isNaN(high)) highs[slot] = high;
    // Each in its own row, the two were never side by side.
    const [lowest = NaN, highest = NaN] = [lows[slot], highs[slot]];
    if (lowest > highest)
      throw crossed(civilDay(day), before, entry, lowest, highest, places, options.fields);
    if (before < 0) entryOf[slot] = entry;
    if (day < latest) moved.push(entry);
    latest = Math.max(latest, day);
  }
  const series = dailyTemperatures(civilDay(first), lows, highs);
  return {
    series,
    notes: [...changeNotes(places, { exchanged, joined, repeated, moved }), ...missingNote(series, first)],
  };
}

function agrees(kept: number | undefined, next: number): boolean {
  return kept === next || Number.isNaN(kept) || Number.isNaN(next);
}

/** Notes on entries that were changed in place, dropped or moved. */
export function changeNotes(
  places: Places,
  {
    exchanged = [],
    joined = [],
    repeated,
    moved,
  }: { exchanged?: number[]; joined?: number[]; repeated: number[]; moved: number[] },
): Note[] {
  const notes: Note[] = [];
  if (exchanged.length > 0) {
    const message = `Minimum and maximum exchanged in ${entriesText(places, exchanged)}.`;
    notes.push({ code: "extremes-exchanged", message });
  }
  if (joined.length > 0) {
    const message = `Joined ${entriesText(places, joined)} to what was given before for the same day: each has a value that was missing there.`;
    notes.push({ code: "duplicate-rows", message });
  }
  if (repeated.length > 0) {
    const repeat = repeated.length === 1 ? "repeats" : "repeat";
    const message = `Dropped ${entriesText(places, repeated)}, which only ${repeat} what was given before.`;
    notes.push({ code: "duplicate-rows", message });
  }
  if (moved.length > 0) {
    const message = `Sorted by time: ${counted(moved.length, places.one, places.many)} came after a later one.`;
    notes.push({ code: "rows-sorted", message });
  }
  return notes;
}

function missingNote(series: DailyTemperatures, first: number): Note[] {
  const missing: number[] = [];
  series.min.forEach((low, i) => {
    if (Number.isNaN(low) || Number.isNaN(series.max[i])) missing.push(first + i);
  });
  if (missing.length === 0) return [];
  const count = counted(missing.length, "day lacks", "days lack");
  return [{ code: "missing-days", message: `${count} a minimum or a maximum: ${runs(missing, civilDay)}.` }];
}
