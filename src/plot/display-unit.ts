import type { Celsius, DisplayUnit } from "../units.ts";

export { type DisplayUnit, displayUnit, unitOf } from "../units.ts";

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
