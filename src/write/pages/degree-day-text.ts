import { givenList } from "../../given.ts";
import type { AccumulatedDay } from "../../clock/accumulate.ts";
import { type TemperatureUnit, displayUnit } from "../../units.ts";
import { columns } from "../layout/text-layout.ts";

/**
 * Degree-days day by day as a table of plain text.
 * @param days As `accumulateDegreeDays` returns them, in °C·day.
 * @param unit Unit to show them in. Default C.
 */
export function degreeDayText(days: readonly AccumulatedDay[], unit: TemperatureUnit = "C"): string {
  givenList(days, ["days"]);
  const { degree, sum } = displayUnit(unit);
  const rows = days.map(({ day, degreeDays, total }) => [
    day,
    sum(degreeDays).toFixed(1),
    sum(total).toFixed(1),
  ]);
  return columns([["day", `degree-days ${degree}`, "total"], ...rows], [1, 2]);
}
