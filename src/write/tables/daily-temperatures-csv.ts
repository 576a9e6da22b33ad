import { given } from "../../given.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import { civilDays, dayNumber } from "../../time/civil-day.ts";
import { fixedText } from "../layout/number-text.ts";
import { csvText } from "../layout/csv-table.ts";

/**
 * Daily extremes as a CSV text that `readDailyCsv` reads: a line a day with hundredths of a degree, and empty
 * cells for a day that is missing. Where the values come from is not in it.
 * @example
 * dailyTemperaturesCsv(dailyTemperatures("2026-05-01", [8, NaN], [24.126, NaN])) // → "date,min °C,max °C\r\n2026-05-01,8.00,24.13\r\n2026-05-02,,\r\n"
 */
export function dailyTemperaturesCsv(series: DailyTemperatures): string {
  given(series, ["series"], "daily temperatures, as dailyTemperatures makes them", "start", "min", "max");
  const { start, min, max } = series;
  const days = civilDays(dayNumber(start), min.length);
  const rows = days.map((day, i) => [day, cell(min[i] ?? Number.NaN), cell(max[i] ?? Number.NaN)]);
  return csvText(["date", "min °C", "max °C"], rows);
}

function cell(celsius: number): string {
  return Number.isNaN(celsius) ? "" : fixedText(celsius, 2);
}
