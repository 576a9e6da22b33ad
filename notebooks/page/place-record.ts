import type { Place } from "../../src/diurnal/place.ts";
import { InputError } from "../../src/errors.ts";
import { temperatureRows } from "../../src/plot/index.ts";
import { readTemperatures } from "../../src/read/index.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import type { DailyTemperatures } from "../../src/temperature/series.ts";
import type { TemperatureUnit } from "../../src/units.ts";

/** The past days of a place. */
export interface PlaceRecord {
  readonly name: string;
  readonly place: Place;
  readonly temperatures: DailyTemperatures;
}

/** Daily extremes from a file of days or of readings. */
export function dailyOf(
  file: Uint8Array,
  { zone, unit }: { readonly zone: string; readonly unit?: TemperatureUnit },
): DailyTemperatures {
  const { series } = readTemperatures(file, { zone, ...(unit && { unit }) });
  if (series.kind === "daily") return series;
  const rows = temperatureRows(series, { zone });
  const [first] = rows;
  if (first === undefined)
    throw new InputError("no-temperatures", "the file holds no days; give daily extremes of a year or more.");
  return dailyTemperatures(
    first.day,
    rows.map(({ min }) => min ?? NaN),
    rows.map(({ max }) => max ?? NaN),
  );
}

/** Each place once: of places with the same name the first. */
export function unlike<One extends { readonly name: string }>(places: readonly One[]): One[] {
  const names = new Set<string>();
  return places.filter(({ name }) => !names.has(name) && names.add(name));
}
