import { givenList } from "../../given.ts";
import type { AccumulatedDay } from "../../clock/accumulate.ts";
import { type TemperatureUnit, celsiusDegreesToFahrenheit } from "../../units.ts";
import { columns } from "../layout/text-layout.ts";

/**
 * Degree-days day by day as a table of plain text.
 * @param days As `accumulateDegreeDays` returns them, in °C·day.
 * @param unit Unit to show them in. Default C.
 */
export function degreeDayText(days: readonly AccumulatedDay[], unit: TemperatureUnit = "C"): string {
  givenList(days, ["days"]);
  const shown = (value: number): string =>
    (unit === "F" ? celsiusDegreesToFahrenheit(value) : value).toFixed(1);
  const rows = days.map(({ day, degreeDays, total }) => [day, shown(degreeDays), shown(total)]);
  return columns([["day", `degree-days °${unit}`, "total"], ...rows], [1, 2]);
}
