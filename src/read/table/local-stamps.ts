import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { DAY_MS, formatInstant, instantsAt, zoneOffset } from "../../time/zone.ts";
import { type Places, entriesText } from "../place.ts";

/** Stamps of readings as written, in columns of equal length, in the order of the file. */
export interface LocalStamps {
  /** What the clock showed, as milliseconds (see `Instant`). */
  readonly local: ArrayLike<number>;
  /** Offset from UTC written with the stamp, milliseconds; NaN where there is none. */
  readonly offset: ArrayLike<number>;
  /** Row or list index of each stamp. */
  readonly entries: readonly number[];
}

/**
 * Stamps on the time axis. A stamp with an offset needs nothing else; the others are on the clock of the
 * header's offset or of the zone, or stay a local clock when neither is known.
 *
 * In the hour that a zone's clocks show twice, the order of the file tells the two passes apart: a stamp
 * belongs to the second pass when its first pass is not after the reading before it.
 * @throws {InputError} `skipped-local-time`, `zone-needed` (some stamps with an offset, some without),
 *   `invalid-instant` (an offset that no clock has).
 */
export function resolveStamps(
  { local, offset, entries }: LocalStamps,
  places: Places,
  { zone, headerOffset, field }: { zone: string | undefined; headerOffset: number | null; field: string },
): { at: Float64Array; clock: "utc" | "local"; notes: Note[] } {
  let withOffset = 0;
  for (let i = 0; i < local.length; i++) {
    if (Number.isNaN(offset[i])) continue;
    withOffset++;
    if (Math.abs(offset[i] ?? 0) > LARGEST_OFFSET)
      throw impossibleOffset(places.cell(entries[i] ?? 0, field).text);
  }
  if (headerOffset !== null && Math.abs(headerOffset) > LARGEST_OFFSET) throw impossibleOffset("the header");
  const at = Float64Array.from(local);
  const bare = local.length - withOffset;
  const known = headerOffset !== null || zone !== undefined;
  if (withOffset > 0 && bare > 0 && !known) throw mixedStamps({ local, offset, entries }, places, field);

  const notes: Note[] = [];
  for (let i = 0; i < at.length; i++) {
    const ahead = Number.isNaN(offset[i]) ? headerOffset : (offset[i] ?? 0);
    if (ahead !== null) at[i] = (local[i] ?? NaN) - ahead;
  }
  if (headerOffset !== null && bare > 0) {
    const name = formatOffset(headerOffset);
    notes.push({
      code: "offset-from-header",
      message: `The header says that the clock is ${name}; times were read so.`,
    });
  } else if (zone !== undefined && bare > 0) {
    notes.push(...onZoneClock(at, { local, offset, entries }, zone, places, field));
  }
  return { at, clock: known || withOffset > 0 ? "utc" : "local", notes };
}

/** No zone has ever been further from UTC than this in the time of digital loggers, milliseconds. */
export const LARGEST_OFFSET = 14 * 3_600_000;

// Fills `at` for the stamps without an offset, and tells which of them lay in an hour shown twice.
function onZoneClock(
  at: Float64Array,
  stamps: LocalStamps,
  zone: string,
  places: Places,
  field: string,
): Note[] {
  const { local, offset, entries } = stamps;
  const size = at.length;
  // A file that runs backwards meets the second pass first.
  const backwards = (local[0] ?? 0) > (local[size - 1] ?? 0);
  const offsetOn = dayOffsets(zone);
  const twice: number[] = [];
  let before = -Infinity;
  for (let step = 0; step < size; step++) {
    const i = backwards ? size - 1 - step : step;
    if (Number.isNaN(offset[i])) {
      const shows = local[i] ?? NaN;
      const steady = offsetOn(Math.floor(shows / DAY_MS));
      const [first, second] = steady === null ? instantsAt(shows, zone) : [shows - steady];
      if (first === undefined) throw skipped(shows, entries[i] ?? 0, zone, places, field);
      if (second !== undefined) twice.push(entries[i] ?? 0);
      at[i] = second !== undefined && first <= before && before < second ? second : first;
    }
    before = at[i] ?? NaN;
  }
  if (twice.length === 0) return [];
  const message = `${entriesText(places, twice)} lie in an hour that clocks in ${zone} showed twice; the order of the file told the two passes apart, the first where nothing told.`;
  return [{ code: "clock-change", message: message.charAt(0).toUpperCase() + message.slice(1) }];
}

// The offset of a zone on a whole civil day, or null near a change of clocks. Asking the engine for the
// offset of every reading would take longer than everything else together.
function dayOffsets(zone: string): (day: number) => number | null {
  const known = new Map<number, number | null>();
  return (day) => {
    const found = known.get(day);
    if (found !== undefined) return found;
    const early = zoneOffset((day - 1) * DAY_MS, zone);
    const steady = early === zoneOffset((day + 2) * DAY_MS, zone) ? early : null;
    known.set(day, steady);
    return steady;
  };
}

function skipped(local: number, entry: number, zone: string, places: Places, field: string): InputError {
  const { text, path } = places.cell(entry, field);
  const shows = formatInstant(local, null);
  return new InputError(
    "skipped-local-time",
    `${text} is ${shows}, a time that clocks in ${zone} skipped; if the logger does not change its clock, give its fixed zone, such as Etc/GMT+5 for five hours behind UTC.`,
    { path, value: shows },
  );
}

function mixedStamps({ local, offset, entries }: LocalStamps, places: Places, field: string): InputError {
  const i = Array.from(offset).findIndex((ms) => Number.isNaN(ms));
  const { text, path } = places.cell(entries[i] ?? 0, field);
  const shows = formatInstant(local[i] ?? 0, null);
  return new InputError(
    "zone-needed",
    `${text} is ${shows} without an offset from UTC, while others have one; give the zone of those without, such as America/New_York.`,
    { path, value: shows },
  );
}

function impossibleOffset(place: string): InputError {
  return new InputError(
    "invalid-instant",
    `${place} names an offset from UTC of more than 14 hours; no clock has that.`,
    {
      path: ["offset"],
    },
  );
}

function formatOffset(ms: number): string {
  const minutes = Math.abs(ms) / 60_000;
  const two = (part: number): string => String(part).padStart(2, "0");
  return `UTC${ms < 0 ? "-" : "+"}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
