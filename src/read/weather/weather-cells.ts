import { InputError, shown } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { POSSIBLE_WEATHER, type WeatherField } from "../../rearing/release/hourly-weather.ts";
import { type WindUnit, metresPerSecond } from "../../rearing/release/wind-unit.ts";
import { numberCell } from "../table/number-cell.ts";
import { type Places, counted, entriesText, refusal } from "../place.ts";
import { SENTINELS } from "../temperatures/temperature-cells.ts";
import { type RainUnit, rainUnitOf, saysOktas, windUnitOf } from "./weather-units.ts";

/** How the values of a column become those of the library. */
export interface Scale {
  /** The unit in words, for messages. */
  readonly unit: string;
  readonly convert: (value: number) => number;
  /**
   * Where no unit was named: the greatest value up to which the column may hold fractions or eighths as well as
   * percent. `null` where the unit is sure.
   */
  readonly doubtfulUpTo: number | null;
}

const AS_IS: Omit<Scale, "unit"> = { convert: (value) => value, doubtfulUpTo: null };

/** Values that need no conversion. */
export function plainScale(unit: string): Scale {
  return { unit, ...AS_IS };
}

/**
 * The scale of a column of wind.
 * @throws {InputError} `unknown-unit` where nothing names the unit; `conflicting-units`.
 */
export function windScale(header: string, option: WindUnit | undefined): Scale & { readonly unit: WindUnit } {
  const named = windUnitOf(header);
  if (named !== null && option !== undefined && named !== option) {
    throw new InputError(
      "conflicting-units",
      (name) =>
        `the column ${shown(header)} says ${named}, the option ${name("windUnit")} ${option}; they must agree.`,
      { path: ["windUnit"], value: option },
    );
  }
  const unit = option ?? named;
  if (unit !== null) return { unit, convert: (value) => metresPerSecond(value, unit), doubtfulUpTo: null };
  throw new InputError(
    "unknown-unit",
    (name) =>
      `the column ${shown(header)} names no unit; write m/s, km/h, mph or kn into its header, or name one with ${name("windUnit")}.`,
    { path: ["windUnit"], value: header },
  );
}

/**
 * The scale of a column of rain amounts.
 * @throws {InputError} `unknown-unit` where the header names none.
 */
export function rainScale(header: string): Scale {
  const unit: RainUnit | null = rainUnitOf(header);
  if (unit === "mm") return plainScale("mm");
  if (unit === "in") return { unit: "in", convert: (value) => value * 25.4, doubtfulUpTo: null };
  if (unit === "%") {
    throw new InputError(
      "unknown-unit",
      (name) =>
        `the column ${shown(header)} is in %, which amounts of rain never are; where it is the chance of rain, name it with ${name("columns.chance")}.`,
      { path: ["columns", "rain"], value: header },
    );
  }
  throw new InputError(
    "unknown-unit",
    `the column ${shown(header)} names no unit; write mm, in or, for a chance, % into its header.`,
    { path: ["columns", "rain"], value: header },
  );
}

/** The scale of a column of chances of rain. A probability of 0 to 1 is not taken for a percentage. */
export function chanceScale(header: string): Scale {
  return { unit: "%", ...AS_IS, doubtfulUpTo: rainUnitOf(header) === "%" ? null : 1 };
}

/** The scale of a column of cloud: percent, or eighths of the sky where the header says so. */
export function cloudScale(header: string): Scale {
  if (saysOktas(header)) return { unit: "eighths", convert: (value) => value * 12.5, doubtfulUpTo: null };
  return { unit: "%", ...AS_IS, doubtfulUpTo: rainUnitOf(header) === "%" ? null : 8 };
}

/** A column of a file as numbers. */
export interface ValuesRead {
  /** In the unit of the library; NaN where missing. */
  readonly values: Float64Array;
  readonly notes: readonly Note[];
}

/**
 * The values of a column of wind, rain, chance or cloud.
 * @param cells As written: text of a table, or numbers and `null` of JSON.
 * @throws {InputError} `invalid-number`, `implausible-weather`, `unknown-unit`, naming the cell or the column.
 */
export function weatherValues(
  field: WeatherField,
  cells: readonly (string | number | null)[],
  at: { readonly entries: readonly number[]; readonly column: string; readonly places: Places },
  scale: Scale,
  sentinels: readonly number[] = [],
): ValuesRead {
  const { entries, column, places } = at;
  const stand = new Set([...SENTINELS, ...sentinels]);
  const { low, high, unit } = POSSIBLE_WEATHER[field];
  const empty: number[] = [];
  const replaced: number[] = [];
  let greatest = -Infinity;
  const values = Float64Array.from(cells, (cell, i) => {
    const entry = entries[i] ?? 0;
    const value =
      typeof cell === "string" ? numberCell(scale.unit === "%" ? cell.replace(/\s*%$/, "") : cell) : cell;
    if (value === undefined) {
      const mustBe = `it must be a number in ${scale.unit}, or empty where it is missing.`;
      throw refusal("invalid-number", places, entry, column, cell, mustBe);
    }
    if (value === null || stand.has(value)) {
      (value === null ? empty : replaced).push(entry);
      return Number.NaN;
    }
    const converted = scale.convert(value);
    if (!(converted >= low && converted <= high)) {
      const mustBe = `${field} runs from ${low} to ${high} ${unit}, and the column is in ${scale.unit}; leave the value out if it is a fault.`;
      throw refusal("implausible-weather", places, entry, column, cell, mustBe);
    }
    greatest = Math.max(greatest, value);
    return converted;
  });
  if (scale.doubtfulUpTo !== null && greatest > 0 && greatest <= scale.doubtfulUpTo) {
    const other = scale.doubtfulUpTo === 1 ? "shares of 1" : "eighths of the sky";
    throw new InputError(
      "unknown-unit",
      `the column ${shown(column)} names no unit and goes no higher than ${greatest}: it may be in % or in ${other}; write % into its header once it is in percent.`,
      { path: ["columns", column], value: greatest },
    );
  }
  return { values, notes: missingNotes(column, places, empty, replaced) };
}

function missingNotes(column: string, places: Places, empty: number[], replaced: number[]): Note[] {
  const notes: Note[] = [];
  if (empty.length > 0) {
    const message = `${counted(empty.length, "value")} of ${shown(column)} missing (${entriesText(places, empty)}).`;
    notes.push({ code: "empty-cells", message });
  }
  if (replaced.length > 0) {
    const message = `${counted(replaced.length, "number")} in ${shown(column)} standing for a missing value (${entriesText(places, replaced)}).`;
    notes.push({ code: "sentinel-values", message });
  }
  return notes;
}
