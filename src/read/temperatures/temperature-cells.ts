import { InputError, type Wording, shown } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { type TemperatureUnit, celsiusToFahrenheit, fahrenheitToCelsius } from "../../units.ts";
import type { HeaderMeaning } from "../table/header-words.ts";
import { type Places, counted, entriesText, refusal } from "../place.ts";

/**
 * Temperatures outside these cannot be air or a rearing shelf, °C. Common practice, no source: just
 * beyond the coldest and warmest inhabited places, so that only faults and wrong units fall outside.
 */
export const POSSIBLE_CELSIUS = { low: -60, high: 60 } as const;

/** Numbers that loggers and archives write for a missing value. Common practice, no source. */
export const SENTINELS: readonly number[] = [-9999, -999, -999.9, 999.9, 9999];

/**
 * What a common digital probe reports when it was not read at all: 85 °C after power-up, -127 °C when
 * disconnected (from memory).
 */
export const FAULTY_PROBE_CELSIUS: readonly number[] = [85, -127];

/** The unit of a file, and whether anything says so. */
export interface FileUnit {
  readonly unit: TemperatureUnit;
  readonly stated: boolean;
}

/** A place of the file that can name a unit, such as a header, and the unit it names. */
export interface NamedUnit {
  /** The place in words, for errors. */
  readonly by: string;
  readonly unit: TemperatureUnit | "K" | null;
}

/** A header as a place that can name a unit. */
export function headerUnit({ text, unit }: HeaderMeaning): NamedUnit {
  return { by: `the column ${shown(text)}`, unit };
}

/**
 * The unit of a file: what the file or the caller says, or °C where neither says anything. The
 * assumption is noted, and holds only as long as every value is possible in °C.
 * @throws {InputError} `conflicting-units`, `unknown-unit`.
 */
export function fileUnit(named: readonly NamedUnit[], option: TemperatureUnit | undefined): FileUnit {
  let known: { unit: TemperatureUnit; by: Wording } | null =
    option === undefined ? null : { unit: option, by: (name) => `the option ${name("unit")}` };
  for (const { by, unit } of named) {
    if (unit === null) continue;
    if (unit === "K") {
      throw new InputError("unknown-unit", `${by} is in kelvin; convert it to °C, or to °F.`, {
        path: ["unit"],
        value: unit,
      });
    }
    if (known && known.unit !== unit) {
      const { unit: other, by: otherBy } = known;
      throw new InputError(
        "conflicting-units",
        (name) => `${by} says °${unit}, ${otherBy(name)} °${other}; they must agree.`,
        {
          path: ["unit"],
          value: unit,
        },
      );
    }
    known ??= { unit, by: () => by };
  }
  return known ? { unit: known.unit, stated: true } : { unit: "C", stated: false };
}

/** Turns the values of a file into °C one by one, and keeps count of what was not a temperature. */
export interface TemperatureCells {
  /**
   * @param value As written in the file; `null` where there is none.
   * @returns °C, or NaN for a missing value.
   * @throws {InputError} `implausible-temperature`.
   */
  celsius(value: number | null, entry: number, field: string): number;
  /** What to tell about the values taken so far. */
  notes(): Note[];
}

/**
 * @param options.probeFaults Whether readings of a faulty probe are looked for: in logger files only, and
 *   only in a stated unit, because 85 may as well be a warm day in °F.
 * @param options.sentinels Numbers for a missing value besides {@link SENTINELS}.
 */
export function temperatureCells(
  { unit, stated }: FileUnit,
  places: Places,
  options: { probeFaults: boolean; sentinels?: readonly number[] | undefined },
): TemperatureCells {
  const sentinels = new Set([...SENTINELS, ...(options.sentinels ?? [])]);
  const faults =
    options.probeFaults && stated
      ? FAULTY_PROBE_CELSIUS.map((fault) => (unit === "C" ? fault : celsiusToFahrenheit(fault)))
      : [];
  const empty: number[] = [];
  const sentinelEntries = new Map<number, number[]>();
  const faulty = new Map<number, number[]>();
  let taken = 0;

  return {
    celsius(value, entry, field) {
      if (value === null) {
        empty.push(entry);
        return NaN;
      }
      if (sentinels.has(value)) {
        listAt(sentinelEntries, value).push(entry);
        return NaN;
      }
      // Files in °F are rounded, so that the fault value is met only nearly.
      if (faults.some((fault) => Math.abs(value - fault) < 0.05)) {
        listAt(faulty, value).push(entry);
        return NaN;
      }
      const celsius = unit === "C" ? value : fahrenheitToCelsius(value);
      if (!(celsius >= POSSIBLE_CELSIUS.low && celsius <= POSSIBLE_CELSIUS.high)) {
        const range = `from ${POSSIBLE_CELSIUS.low} to ${POSSIBLE_CELSIUS.high} °C`;
        throw refusal("implausible-temperature", places, entry, field, value, (name) =>
          stated
            ? `temperatures run ${range}, and the file is in °${unit}; leave the value out${name("sentinels", (it) => `, or give it as ${it} if it means missing`)}.`
            : `no unit is named and temperatures run ${range}; say ${name("unit")} F if it is Fahrenheit, or ${name("unit")} C if it is a fault.`,
        );
      }
      taken++;
      return celsius;
    },
    notes() {
      const notes: Note[] = [];
      if (!stated) {
        notes.push({
          code: "unit-assumed",
          message:
            "Neither the file nor the options name a unit; the temperatures were taken as °C, in which all are possible.",
        });
      } else if (unit === "F" && taken > 0) {
        notes.push({
          code: "unit-converted",
          message: `${counted(taken, "temperature")} converted from °F to °C.`,
        });
      }
      if (empty.length > 0) {
        notes.push({
          code: "empty-cells",
          message: `${counted(empty.length, "temperature is", "temperatures are")} missing (${entriesText(places, empty)}).`,
        });
      }
      for (const [value, entries] of sentinelEntries) {
        const message = `The value ${value} stands for a missing temperature (${entriesText(places, entries)}).`;
        notes.push({ code: "sentinel-values", message });
      }
      for (const [value, entries] of faulty) {
        const message = `The value ${value} is what a probe reports when it was not read; left out (${entriesText(places, entries)}).`;
        notes.push({ code: "faulty-readings", message });
      }
      return notes;
    },
  };
}

function listAt(lists: Map<number, number[]>, key: number): number[] {
  const list = lists.get(key) ?? [];
  lists.set(key, list);
  return list;
}
