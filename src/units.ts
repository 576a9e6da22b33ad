// Temperatures and temperature differences convert differently: a temperature has the 32° offset, a
// difference, a degree-day sum or a standard error does not. Mixing them up is the classic silent error
// of this field, so they are separate functions with separate type names.

import { InputError, shown } from "./errors.ts";
import { given } from "./given.ts";

/** A temperature in degrees Celsius. */
export type Celsius = number;
/** A temperature in degrees Fahrenheit. */
export type Fahrenheit = number;
/** A sum of excess temperature over time, °C·day unless said otherwise. */
export type DegreeDays = number;
/** The two temperature scales that files come in. */
export type TemperatureUnit = "C" | "F";

/** How temperatures and degree-day sums are shown. Results stay in °C; only their display changes. */
export interface DisplayUnit {
  /** `°C` or `°F`. */
  readonly degree: string;
  /** Name of degree-day sums on this scale. */
  readonly degreeDay: string;
  readonly temperature: (value: Celsius) => number;
  /** A difference or a standard error, which has no offset. */
  readonly difference: (value: number) => number;
  readonly sum: (value: DegreeDays) => number;
}

/** Temperature in °C from a temperature in °F. */
export function fahrenheitToCelsius(temperature: Fahrenheit): Celsius {
  return (temperature - 32) / 1.8;
}

/** Temperature in °F from a temperature in °C. */
export function celsiusToFahrenheit(temperature: Celsius): Fahrenheit {
  return temperature * 1.8 + 32;
}

/** Difference, or degree-day sum, in Celsius degrees from one in Fahrenheit degrees (no offset). */
export function fahrenheitDegreesToCelsius(difference: number): number {
  return difference / 1.8;
}

/** Difference, or degree-day sum, in Fahrenheit degrees from one in Celsius degrees (no offset). */
export function celsiusDegreesToFahrenheit(difference: number): number {
  return difference * 1.8;
}

const DISPLAY_UNITS: Readonly<Record<TemperatureUnit, DisplayUnit>> = {
  C: {
    degree: "°C",
    degreeDay: "°C·day",
    temperature: (value) => value,
    difference: (value) => value,
    sum: (value) => value,
  },
  F: {
    degree: "°F",
    degreeDay: "°F·day",
    temperature: celsiusToFahrenheit,
    difference: celsiusDegreesToFahrenheit,
    sum: celsiusDegreesToFahrenheit,
  },
};

/**
 * The display of a unit; °C when none is named.
 * @throws {InputError} `unknown-unit`.
 */
export function displayUnit(unit: TemperatureUnit = "C"): DisplayUnit {
  if (Object.hasOwn(DISPLAY_UNITS, unit)) return DISPLAY_UNITS[unit];
  throw new InputError("unknown-unit", `unit is ${shown(unit)}; it must be C or F.`, {
    path: ["unit"],
    value: unit,
  });
}

/**
 * The display of the unit that options name.
 * @throws {InputError} `invalid-option` for what is no object, `unknown-unit`.
 */
export function unitOf(options: { readonly unit?: TemperatureUnit | undefined }): DisplayUnit {
  given(options, ["options"], "an object of options");
  return displayUnit(options.unit);
}
