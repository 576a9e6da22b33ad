// How the curves of the methods compare with temperatures by the hour, as the table of docs/explanation/methods-hours.md.
// `npm run report:hours` prints it; hours.test.ts compares it with the page.
import { readFileSync } from "node:fs";
import { thermalClock } from "../../src/clock/thermal-clock.ts";
import { arcTemperature } from "../../src/diurnal/arc.ts";
import { CURVE_METHODS, type CurveMethod } from "../../src/diurnal/method.ts";
import { type Timeline, timelineOf } from "../../src/diurnal/timeline.ts";
import { linearResponse } from "../../src/response/linear.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import type { DailyTemperatures } from "../../src/temperature/series.ts";
import { dayNumber } from "../../src/time/civil-day.ts";
import { startOfDay } from "../../src/time/zone.ts";

/** Hourly temperatures of one year and the day that each belongs to. */
export interface HourlyYear {
  readonly day: readonly string[];
  readonly hour: readonly number[];
  readonly temperature: readonly number[];
}

/** Seattle: the city's latitude and longitude to a tenth of a degree; the file names no station. */
const PLACE = { latitude: 47.6, longitude: -122.3 };
/** Local standard time all year: from memory for these normals, and no day of theirs has 23 or 25 hours. */
const ZONE = "Etc/GMT+8";

/** Lower thresholds of the table, °C. */
export const BASES = [5, 10, 12] as const;

/**
 * Hourly normals 1981 to 2010 of Seattle, dated 2010, °C: NOAA through vega-datasets 3.2.1. The file starts at
 * 01:00, so its first day has 23 hours.
 */
export function seattleNormals(): HourlyYear {
  const file = new URL(
    "../../node_modules/vega-datasets/data/seattle-weather-hourly-normals.csv",
    import.meta.url,
  );
  const [head = "", ...lines] = readFileSync(file, "utf8").trim().split("\n");
  if (!head.startsWith("date,pressure,temperature")) throw new Error(`unexpected columns: ${head}`);
  const cells = lines.map((line) => line.split(","));
  return {
    day: cells.map(([date = ""]) => date.slice(0, 10)),
    hour: cells.map(([date = ""]) => Number(date.slice(11, 13))),
    temperature: cells.map(([, , temperature = ""]) => Number(temperature)),
  };
}

/** Lowest and highest of each day's hours. */
export function extremesOfHours({ day, temperature }: HourlyYear): DailyTemperatures {
  const days = byDay(day, temperature);
  return dailyTemperatures(
    day[0] ?? "",
    days.map((hours) => Math.min(...hours)),
    days.map((hours) => Math.max(...hours)),
  );
}

/** Degree-days of the year from the hours themselves: each day the mean of its hours' excess. */
export function hourlyDegreeDays({ day, temperature }: HourlyYear, lower: number): number {
  const excess = temperature.map((t) => Math.max(t - lower, 0));
  return byDay(day, excess).reduce((sum, hours) => sum + hours.reduce((a, b) => a + b) / hours.length, 0);
}

function byDay(day: readonly string[], values: readonly number[]): number[][] {
  const days = new Map<string, number[]>();
  day.forEach((one, i) => days.set(one, [...(days.get(one) ?? []), values[i] ?? Number.NaN]));
  return [...days.values()];
}

/** The curve that a method draws through the extremes. */
function curveOf(extremes: DailyTemperatures, method: CurveMethod, lower: number): Timeline {
  const from = startOfDay(extremes.start, ZONE);
  return timelineOf(extremes, {
    method,
    zone: ZONE,
    place: PLACE,
    from,
    limits: { lower, upper: Infinity },
  });
}

/** Degree-days of the year along a method's curve, no upper threshold. */
export function methodDegreeDays(extremes: DailyTemperatures, method: CurveMethod, lower: number): number {
  return thermalClock(curveOf(extremes, method, lower), linearResponse({ lower })).total;
}

/** Mean error and root mean square error of a method's hourly temperatures, °C. */
export function hourlyErrors(
  year: HourlyYear,
  extremes: DailyTemperatures,
  method: CurveMethod,
): { readonly mean: number; readonly rmse: number } {
  const { arcs } = curveOf(extremes, method, 0);
  let [next, sum, squares] = [0, 0, 0];
  year.temperature.forEach((seen, i) => {
    const instant = startOfDay(dayNumber(year.day[i] ?? ""), ZONE) + (year.hour[i] ?? 0) * 3_600_000;
    while ((arcs[next]?.to ?? Infinity) <= instant) next++;
    const arc = arcs[next];
    if (arc === undefined) throw new Error(`no temperature at hour ${i}`);
    const u = arc.u0 + ((arc.u1 - arc.u0) * (instant - arc.from)) / (arc.to - arc.from);
    const error = arcTemperature(arc, u) - seen;
    sum += error;
    squares += error * error;
  });
  const count = year.temperature.length;
  return { mean: sum / count, rmse: Math.sqrt(squares / count) };
}

/** The table of the page, a heading and a row for each method. */
export function hoursTable(year: HourlyYear = seattleNormals()): string[][] {
  const extremes = extremesOfHours(year);
  const measured = BASES.map((base) => hourlyDegreeDays(year, base));
  return [
    ["method", "mean error, °C", "RMSE, °C", ...BASES.map((base) => `degree-days over ${base} °C`)],
    ["the hours themselves", "", "", ...measured.map((sum) => sum.toFixed(1))],
    ...CURVE_METHODS.map((method) => {
      const { mean, rmse } = hourlyErrors(year, extremes, method);
      // Brought between the thresholds, the temperatures are not meant to be those of the air.
      const hours = method.startsWith("clamped-") ? ["-", "-"] : [signed(mean, 2), rmse.toFixed(2)];
      const sums = BASES.map((base, i) => {
        const sum = methodDegreeDays(extremes, method, base);
        return `${sum.toFixed(1)} (${signed((sum / (measured[i] ?? Number.NaN) - 1) * 100, 1)} %)`;
      });
      return [`\`${method}\``, ...hours, ...sums];
    }),
  ];
}

function signed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  return `${value < 0 && Number(text) > 0 ? "−" : "+"}${text}`;
}

/** Rows as a table of Markdown. */
export function markdownTable(rows: readonly (readonly string[])[]): string {
  const [head = [], ...body] = rows;
  return [head, head.map(() => "---"), ...body].map((cells) => `| ${cells.join(" | ")} |`).join("\n");
}
