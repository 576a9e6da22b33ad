// Temperatures and temperature differences convert differently: a temperature has the 32° offset, a
// difference, a degree-day sum or a standard error does not. Mixing them up is the classic silent error
// of this field, so they are separate functions with separate type names.

/** A temperature in degrees Celsius. */
export type Celsius = number;
/** A temperature in degrees Fahrenheit. */
export type Fahrenheit = number;
/** A sum of excess temperature over time, °C·day unless said otherwise. */
export type DegreeDays = number;
/** The two temperature scales that files come in. */
export type TemperatureUnit = "C" | "F";

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
