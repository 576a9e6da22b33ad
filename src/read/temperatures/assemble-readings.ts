import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { temperatureReadings } from "../../temperature/readings.ts";
import type { TemperatureReadings } from "../../temperature/series.ts";
import { formatInstant } from "../../time/zone.ts";
import { changeNotes } from "./assemble-days.ts";
import { type LocalStamps, resolveStamps } from "../table/local-stamps.ts";
import { type Places, counted, entriesText } from "../place.ts";

/** Readings as they came from a file, in columns of equal length, in the order of the file. */
export interface ReadingEntries extends LocalStamps {
  /** °C, NaN where missing. */
  readonly temperature: ArrayLike<number>;
}

/**
 * A series of readings from stamps in any order: put on the time axis, sorted, each time once. What was
 * done is noted. Readings without a temperature are left out.
 * @param options.zone Zone of stamps without an offset.
 * @param options.headerOffset Offset of those stamps that the file's header names, milliseconds; it counts
 *   before `zone`, because it is the logger's own clock.
 * @throws {InputError} `conflicting-readings`, `skipped-local-time`, `zone-needed`, `no-temperatures`,
 *   `too-few-readings`.
 */
export function assembleReadings(
  stamps: ReadingEntries,
  places: Places,
  options: { zone: string | undefined; headerOffset: number | null; longestGapHours: number; field: string },
): { series: TemperatureReadings; notes: Note[] } {
  const { at, clock, notes } = resolveStamps(stamps, places, options);
  const { entries, temperature } = stamps;
  const present: number[] = [];
  const moved: number[] = [];
  let latest = -Infinity;
  at.forEach((instant, i) => {
    if (Number.isNaN(temperature[i])) return;
    present.push(i);
    if (instant < latest) moved.push(entries[i] ?? 0);
    latest = Math.max(latest, instant);
  });
  if (present.length === 0) {
    throw new InputError("no-temperatures", "no reading has a temperature; at least two are needed.", {
      path: [options.field],
    });
  }
  if (moved.length > 0) present.sort((a, b) => (at[a] ?? 0) - (at[b] ?? 0));

  const repeated: number[] = [];
  const kept = present.filter((i, order) => {
    const before = order === 0 ? undefined : present[order - 1];
    if (before === undefined || at[before] !== at[i]) return true;
    if (temperature[before] !== temperature[i]) throw conflict(i, before, stamps, places, options.field);
    repeated.push(entries[i] ?? 0);
    return false;
  });
  const series = temperatureReadings(
    kept.map((i) => at[i] ?? NaN),
    kept.map((i) => temperature[i] ?? NaN),
    { clock, longestGapHours: options.longestGapHours },
  );
  const shownIn = clock === "local" ? null : (options.zone ?? "UTC");
  return {
    series,
    notes: [...notes, ...changeNotes(places, { repeated, moved }), ...gapNote(series, shownIn)],
  };
}

function conflict(
  i: number,
  before: number,
  { entries }: LocalStamps,
  places: Places,
  field: string,
): InputError {
  const entry = entries[i] ?? 0;
  return new InputError(
    "conflicting-readings",
    `${entriesText(places, [entries[before] ?? 0, entry])} give one time with different temperatures; keep the right one, or give the zone if clocks went back there.`,
    { path: places.cell(entry, field).path },
  );
}

const MOST_GAPS = 5;

function gapNote(series: TemperatureReadings, zone: string | null): Note[] {
  const longest = series.longestGapHours * 3_600_000;
  const gaps: string[] = [];
  let count = 0;
  series.at.forEach((instant, i) => {
    const before = series.at[i - 1];
    if (before === undefined || instant - before <= longest) return;
    count++;
    if (count <= MOST_GAPS) gaps.push(`${formatInstant(before, zone)} to ${formatInstant(instant, zone)}`);
  });
  if (count === 0) return [];
  const more = count > MOST_GAPS ? ` and ${count - MOST_GAPS} more` : "";
  const message = `${counted(count, "gap")} longer than ${series.longestGapHours} hours: ${gaps.join(", ")}${more}.`;
  return [{ code: "gaps-in-readings", message }];
}
