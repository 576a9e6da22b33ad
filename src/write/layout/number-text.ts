import { type Celsius, type TemperatureUnit, celsiusToFahrenheit } from "../../units.ts";

/** A number with at most one decimal. */
export function numberText(value: number): string {
  return String(Number(value.toFixed(1)));
}

/** A difference with its sign and one decimal; `-` where there is none. */
export function signedText(value: number | null): string {
  if (value === null) return "-";
  const text = value.toFixed(1);
  return Number(text) > 0 ? `+${text}` : Number(text) === 0 ? "0.0" : text;
}

/** A temperature in the unit it is shown in, such as `24 °C`, with at most so many decimals. */
export function degreesText(celsius: Celsius, unit: TemperatureUnit, decimals = 1): string {
  const value = unit === "F" ? celsiusToFahrenheit(celsius) : celsius;
  return `${Number(value.toFixed(decimals))} °${unit}`;
}
