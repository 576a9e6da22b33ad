import { type Celsius, type TemperatureUnit, displayUnit } from "../../units.ts";

/** A number with at most one decimal. */
export function numberText(value: number): string {
  return String(Number(value.toFixed(1)));
}

/** A number with so many decimals, without a minus before a zero. */
export function fixedText(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** A difference with its sign and one decimal; `-` where there is none. */
export function signedText(value: number | null): string {
  if (value === null) return "-";
  const text = fixedText(value, 1);
  return Number(text) > 0 ? `+${text}` : text;
}

/** A temperature in the unit it is shown in, such as `24 °C`, with at most so many decimals. */
export function degreesText(celsius: Celsius, unit: TemperatureUnit, decimals = 1): string {
  const { degree, temperature } = displayUnit(unit);
  return `${Number(temperature(celsius).toFixed(decimals))} ${degree}`;
}
