import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import {
  type HourlyWeather,
  type WeatherField,
  hourlyWeather,
} from "../../rearing/release/hourly-weather.ts";
import { DAY_MS, HOUR_MS, formatInstant } from "../../time/zone.ts";
import { changeNotes } from "../temperatures/assemble-days.ts";
import { resolveStamps } from "../table/local-stamps.ts";
import type { Stamps } from "../table/stamp-column.ts";
import { type Places, counted, entriesText } from "../place.ts";
import type { ValuesRead } from "./weather-cells.ts";

/** Hours as they came from a file, in columns of equal length, in the order of the file. */
export interface HourEntries {
  readonly stamps: Stamps;
  readonly entries: readonly number[];
  /** °C, NaN where missing. */
  readonly celsius: Float64Array;
  /** In the units of the library, NaN where missing; `null` where there is no such column. */
  readonly others: Readonly<Record<Exclude<WeatherField, "temperature">, ValuesRead | null>>;
}

/**
 * Hourly weather from stamps in any order: put on the time axis, sorted, each hour once. What was done is noted,
 * what the columns noted goes before, and the gaps come last.
 * @throws {InputError} `zone-needed` for times without an offset or a zone; `conflicting-readings`;
 *   `skipped-local-time`; `invalid-weather` for hours less than an hour apart, naming the entry.
 */
export function assembleHours(
  hours: HourEntries,
  places: Places,
  options: { zone: string | undefined; headerOffset: number | null; field: string },
): { weather: HourlyWeather; notes: Note[] } {
  const { stamps, entries, celsius, others } = hours;
  const local = stamps.days.map((day, i) => day * DAY_MS + (stamps.ms[i] ?? 0));
  const { at, clock, notes } = resolveStamps({ local, offset: stamps.offset, entries }, places, options);
  if (clock === "local") {
    throw new InputError(
      "zone-needed",
      (name) =>
        `the times of the weather have no offset from UTC, and no time zone was given; name the zone that they are in with ${name("zone")}, such as America/New_York.`,
      { path: ["zone"] },
    );
  }
  const known = Object.values(others).filter((one) => one !== null);
  const columns = [celsius, ...known.map(({ values }) => values)];
  const moved: number[] = [];
  let latest = -Infinity;
  at.forEach((instant, i) => {
    if (instant < latest) moved.push(entries[i] ?? 0);
    latest = Math.max(latest, instant);
  });
  const order = Array.from(at, (_, i) => i).sort((a, b) => (at[a] ?? 0) - (at[b] ?? 0) || a - b);
  const repeated: number[] = [];
  const kept = order.filter((i, place) => {
    const before = place === 0 ? undefined : order[place - 1];
    if (before === undefined) return true;
    const apart = (at[i] ?? 0) - (at[before] ?? 0);
    if (apart >= HOUR_MS) return true;
    const pair = entriesText(places, [entries[before] ?? 0, entries[i] ?? 0]);
    const { path } = places.cell(entries[i] ?? 0, options.field);
    if (apart > 0) {
      throw new InputError(
        "invalid-weather",
        `${pair} are ${Math.round(apart / 60_000)} minutes apart; each stands for an hour, so give one an hour.`,
        { path },
      );
    }
    if (columns.some((column) => !Object.is(column[before], column[i]))) {
      throw new InputError(
        "conflicting-readings",
        `${pair} give one hour with different weather; keep the right one, or give the zone if clocks went back there.`,
        { path },
      );
    }
    repeated.push(entries[i] ?? 0);
    return false;
  });
  const picked = (column: Float64Array): number[] => kept.map((i) => column[i] ?? Number.NaN);
  const read = (one: ValuesRead | null): number[] | null => one && picked(one.values);
  const weather = hourlyWeather({
    at: kept.map((i) => at[i] ?? Number.NaN),
    temperature: picked(celsius),
    wind: read(others.wind) ?? [],
    rain: read(others.rain),
    rainChance: read(others.rainChance),
    cloud: read(others.cloud),
  });
  return {
    weather,
    notes: [
      ...known.flatMap((one) => one.notes),
      ...notes,
      ...changeNotes(places, { repeated, moved }),
      ...gapNotes(weather, options.zone ?? "UTC"),
    ],
  };
}

const MOST_GAPS = 5;

function gapNotes({ at }: HourlyWeather, zone: string): Note[] {
  const gaps = at.flatMap((begin, i) => {
    const [end, next] = [begin + HOUR_MS, at[i + 1] ?? begin + HOUR_MS];
    return next > end ? [`${formatInstant(end, zone)} to ${formatInstant(next, zone)}`] : [];
  });
  if (gaps.length === 0) return [];
  const more = gaps.length > MOST_GAPS ? ` and ${gaps.length - MOST_GAPS} more` : "";
  const message = `${counted(gaps.length, "gap")} in the weather: ${gaps.slice(0, MOST_GAPS).join(", ")}${more}.`;
  return [{ code: "gaps-in-readings", message }];
}
