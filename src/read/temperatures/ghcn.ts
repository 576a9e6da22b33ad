import { InputError, nearestNames, shown } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import { civilDay } from "../../time/civil-day.ts";
import { assembleDays } from "./assemble-days.ts";
import type { CheckedReadOptions, TemperatureFormat } from "../options.ts";
import { type Places, counted, runs } from "../place.ts";
import type { ReadResult } from "../result.ts";
import { temperatureCells } from "./temperature-cells.ts";

/** One value of a GHCN-Daily file. */
export interface GhcnValue {
  readonly station: string;
  /** Day number, as `dayNumber` counts. */
  readonly day: number;
  readonly element: "TMIN" | "TMAX";
  /** Tenths of a degree Celsius, or {@link GHCN_MISSING}. */
  readonly tenths: number;
  /** Blank unless the value failed a quality check. */
  readonly qualityFlag: string;
  readonly row: number;
}

/** What GHCN-Daily writes for a missing value. */
export const GHCN_MISSING = -9999;

/** The two elements that are read; a file has many more. */
export function temperatureElement(element: string): "TMIN" | "TMAX" | null {
  return element === "TMIN" || element === "TMAX" ? element : null;
}

/**
 * A daily series from GHCN-Daily values of one station. Values that failed a quality check count as
 * missing and are noted. The series runs from the first day with a value to the last.
 * @throws {InputError} `unknown-location` (several stations and none chosen), `conflicting-units`,
 *   `conflicting-readings`, `min-above-max`, `implausible-temperature`, `no-temperatures`.
 * @see NOAA NCEI, GHCN-Daily readme (from memory).
 */
export function ghcnSeries(
  values: readonly GhcnValue[],
  format: TemperatureFormat,
  options: CheckedReadOptions,
): ReadResult<DailyTemperatures> {
  if (options.unit === "F") {
    throw new InputError(
      "conflicting-units",
      (name) => `${name("unit")} is F, but GHCN-Daily is in tenths of °C; leave ${name("unit")} out.`,
      {
        path: ["unit"],
        value: options.unit,
      },
    );
  }
  const station = chosenStation(values, options.location);
  const cells = temperatureCells({ unit: "C", stated: true }, GHCN_ROWS, {
    probeFaults: false,
    sentinels: options.sentinels,
  });
  const flagged: number[] = [];
  const days: number[] = [];
  const entries: number[] = [];
  const extremes: { TMIN: number[]; TMAX: number[] } = { TMIN: [], TMAX: [] };
  const slots = new Map<number, number>();
  const repeated: number[] = [];
  for (const { station: of, day, element, tenths, qualityFlag, row } of values) {
    if (of !== station || tenths === GHCN_MISSING) continue;
    const failed = qualityFlag.trim() !== "";
    if (failed) flagged.push(day);
    const celsius = failed ? NaN : cells.celsius(tenths / 10, row, `${element} of ${civilDay(day)}`);
    let slot = slots.get(day);
    if (slot === undefined) {
      slot = days.length;
      slots.set(day, slot);
      days.push(day);
      entries.push(row);
      extremes.TMIN.push(NaN);
      extremes.TMAX.push(NaN);
    }
    const before = extremes[element][slot] ?? NaN;
    if (!Number.isNaN(before) && !Number.isNaN(celsius)) {
      if (before !== celsius) throw conflict(element, day, row);
      repeated.push(row);
    }
    if (Number.isNaN(celsius)) continue;
    extremes[element][slot] = celsius;
    // A fault of both is told at the minimum.
    if (element === "TMIN") entries[slot] = row;
  }
  // Files are in order of element within a month, so that the order of days says nothing.
  const order = days.map((_, i) => i).sort((a, b) => (days[a] ?? 0) - (days[b] ?? 0));
  const pick = (from: readonly number[]): number[] => order.map((i) => from[i] ?? NaN);
  const { series, notes } = assembleDays(
    { days: pick(days), min: pick(extremes.TMIN), max: pick(extremes.TMAX), entries: pick(entries) },
    GHCN_ROWS,
    { fields: { date: "day", min: "TMIN", max: "TMAX" }, exchangeSwapped: options.exchangeSwapped },
  );
  return {
    series,
    format,
    notes: [...flagNote(flagged), ...repeatNote(repeated), ...cells.notes(), ...notes],
  };
}

const GHCN_ROWS: Places = {
  one: "row",
  many: "rows",
  cell: (row, element) => ({ text: `row ${row}, ${element}`, path: ["row", row, element] }),
};

function chosenStation(values: readonly GhcnValue[], location: string | undefined): string {
  const stations = [...new Set(values.map(({ station }) => station))];
  const [only] = stations;
  if (only === undefined) {
    throw new InputError("no-temperatures", "the file has no TMIN and no TMAX values; both are needed.", {
      path: ["row"],
    });
  }
  if (location === undefined) {
    if (stations.length === 1) return only;
    throw new InputError(
      "unknown-location",
      (name) =>
        `the file has the stations ${stations.slice(0, 12).map(shown).join(", ")}; choose one with ${name("location")}.`,
      { path: ["location"] },
    );
  }
  if (stations.includes(location)) return location;
  const near = nearestNames(location, stations);
  throw new InputError(
    "unknown-location",
    (name) =>
      `${name("location")} is ${shown(location)}; the file has ${(near.length > 0 ? near : stations.slice(0, 12)).map(shown).join(", ")}.`,
    { path: ["location"], value: location },
  );
}

function conflict(element: string, day: number, row: number): InputError {
  return new InputError(
    "conflicting-readings",
    `row ${row} gives another ${element} for ${civilDay(day)} than a row before it; keep the right one.`,
    { path: ["row", row, element], value: civilDay(day) },
  );
}

function flagNote(days: readonly number[]): Note[] {
  if (days.length === 0) return [];
  const message = `${counted(days.length, "value")} failed a quality check of the archive and ${days.length === 1 ? "counts" : "count"} as missing: ${runs(days, civilDay)}.`;
  return [{ code: "flagged-values", message }];
}

function repeatNote(rows: readonly number[]): Note[] {
  if (rows.length === 0) return [];
  return [{ code: "duplicate-rows", message: `Values given twice, in agreement, in rows ${runs(rows)}.` }];
}
