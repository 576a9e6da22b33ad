import { dailyTemperatures, lastDay } from "../../temperature/daily.ts";
import { isMissing } from "../../temperature/gaps.ts";
import type { DailyTemperatures, Origin, TemperatureSeries } from "../../temperature/series.ts";
import { dayNumber } from "../../time/civil-day.ts";

/**
 * Several files of days as one series of days, so that files of single years are a record like any other. At each
 * day the first that has it counts. Anything with readings or a held temperature in it stays as it is.
 */
export function mergedDays(series: TemperatureSeries): TemperatureSeries {
  if (series.kind !== "joined") return series;
  const parts = series.parts.filter((part): part is DailyTemperatures => part.kind === "daily");
  const starts = parts.map(({ start }) => start).sort();
  const [start] = starts;
  const end = parts.map(lastDay).sort().at(-1);
  if (parts.length < series.parts.length || start === undefined || end === undefined) return series;
  const first = dayNumber(start);
  const min = new Float64Array(dayNumber(end) - first + 1).fill(Number.NaN);
  const max = min.slice();
  const origin = Array.from(min, (): Origin => "observed");
  for (const part of parts) {
    const offset = dayNumber(part.start) - first;
    part.min.forEach((low, i) => {
      const day = offset + i;
      if (isMissing(part, i) || !Number.isNaN(min[day])) return;
      min[day] = low;
      max[day] = part.max[i] ?? Number.NaN;
      origin[day] = part.origin[i] ?? "observed";
    });
  }
  return dailyTemperatures(start, min, max, origin);
}
