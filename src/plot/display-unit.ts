import { InputError, shown } from "../errors.ts";
import { type Celsius, type DegreeDays, type TemperatureUnit } from "../units.ts";
import { celsiusDegreesToFahrenheit, celsiusToFahrenheit } from "../units.ts";

/** How temperatures and degree-day sums are shown. Results stay in °C; only their display changes. */
export interface DisplayUnit {
  /** `°C` or `°F`. */
  readonly degree: string;
  /** Name of degree-day sums on this scale. */
  readonly degreeDay: string;
  readonly temperature: (value: Celsius) => number;
  readonly sum: (value: DegreeDays) => number;
}

const UNITS: Readonly<Record<TemperatureUnit, DisplayUnit>> = {
  C: { degree: "°C", degreeDay: "°C·day", temperature: (value) => value, sum: (value) => value },
  F: {
    degree: "°F",
    degreeDay: "°F·day",
    temperature: celsiusToFahrenheit,
    sum: celsiusDegreesToFahrenheit,
  },
};

/** The display of a unit; °C when none is named. */
export function displayUnit(unit: TemperatureUnit = "C"): DisplayUnit {
  if (Object.hasOwn(UNITS, unit)) return UNITS[unit];
  throw new InputError("unknown-unit", `unit is ${shown(unit)}; it must be C or F.`, {
    path: ["unit"],
    value: unit,
  });
}

/** A temperature with its degree sign, such as `11.5 °C`, on one line wherever text wraps. */
export function temperatureText(value: Celsius, unit: DisplayUnit): string {
  return `${short(unit.temperature(value))}\u00a0${unit.degree}`;
}

/** A threshold likewise, with the second decimal that some sources give. */
export function thresholdText(value: Celsius, unit: DisplayUnit): string {
  return `${Math.round(unit.temperature(value) * 100) / 100}\u00a0${unit.degree}`;
}

/** A number with at most one decimal, without a trailing zero. */
export function short(value: number): string {
  return String(Math.round(value * 10) / 10);
}
