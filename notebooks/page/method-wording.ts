import {
  type MethodComparison,
  type MethodRow,
  compareMethods,
} from "../../src/evaluate/methods/compare-methods.ts";
import { comparedSpan } from "../../src/evaluate/methods/compared-span.ts";
import { displayUnit, short, temperatureText } from "../../src/plot/display-unit.ts";
import { type CurveReading, longDate, methodName, shortDate } from "../../src/plot/index.ts";
import { loggerDays } from "../../src/temperature/logger-days.ts";
import type { TemperatureSeries } from "../../src/temperature/series.ts";
import { type CivilDay, addDays, dayNumber } from "../../src/time/civil-day.ts";
import { type Zone, formatInstant, startOfDay } from "../../src/time/zone.ts";
import type { Celsius, TemperatureUnit } from "../../src/units.ts";

/** The row of the reference and those of all methods with one cutoff; the clamped ones know only their own. */
export function withCutoff(comparison: MethodComparison, cutoff: MethodRow["cutoff"]): MethodComparison {
  const rows = comparison.rows.filter((row) => row.cutoff === cutoff || row.method.startsWith("clamped-"));
  return { ...comparison, rows };
}

/** When each method says that the sum is reached, from the earliest to the latest, in sentences. */
export function spreadOf(comparison: MethodComparison, unit: TemperatureUnit): string {
  const { reference, amount, from } = comparison;
  const { sum, degreeDay } = displayUnit(unit);
  const wanted = `${short(sum(amount ?? 0))} ${degreeDay}, counted from ${longDate(from)},`;
  const hours = reference.method === "measured";
  const who = hours ? "The hours themselves" : `The ${methodName(reference.method)}`;
  const own =
    reference.reachedAt === null
      ? `${who} ${hours ? "do" : "does"} not reach ${wanted} within these temperatures.`
      : `${who} ${hours ? "reach" : "reaches"} ${wanted} on ${longDate(reference.reachedAt)}.`;
  return `${own} ${apartOf(comparison)}`;
}

/** How far apart the methods are. */
export function apartOf({ rows }: MethodComparison): string {
  const ends = endsOf(rows);
  if (ends === null) return "No method reaches it within these temperatures.";
  const { first, last, days, missing } = ends;
  const told = ({ method, reachedAt }: Reached): string =>
    `${longDate(reachedAt)} by the ${methodName(method)}`;
  const rest = missing === 0 ? "" : ` ${missing} of the methods never get there.`;
  return `The methods say from ${told(first)} to ${told(last)}: ${days.toFixed(1)} days apart.${rest}`;
}

/** The lowest lower threshold, in whole degrees, from which on the methods are more than a week apart. */
export function weekApartOf(
  series: TemperatureSeries,
  {
    lower,
    upper,
    options,
  }: { lower: Celsius; upper: Celsius; options: Parameters<typeof compareMethods>[2] },
  unit: TemperatureUnit,
): string {
  const tried = [-4, -2, -1, 0, 1, 2, 3, 4, 6].flatMap((step) => {
    const at = lower + step;
    if (at >= upper) return [];
    const ends = endsOf(compareMethods(series, { lower: at, upper }, options).rows);
    return ends === null ? [] : [{ at, ...ends }];
  });
  const told = tried.map(
    ({ at, days, missing }) =>
      `${temperatureText(at, displayUnit(unit))}: ${days.toFixed(1)} days${missing === 0 ? "" : ` (${missing} never get there)`}`,
  );
  const found = tried.find(({ days }) => days > 7);
  const answer =
    found === undefined
      ? "None of these puts the methods more than a week apart."
      : `The first of these with more than a week is ${temperatureText(found.at, displayUnit(unit))}.`;
  return (
    `Between the earliest and the latest method, by lower threshold: ${told.join("; ")}. ${answer} The higher the threshold, the more ` +
    `days have it between their lowest and their highest temperature, and only on those days does the course matter; what ` +
    `counts is then the tip of the curve, where the methods differ most.`
  );
}

/** How far the middle between a day's extremes is from the mean of its hours. */
export function middleOf(series: TemperatureSeries, zone: Zone, unit: TemperatureUnit): string {
  if (series.kind !== "readings")
    return "These temperatures have no hours. The single sine takes their place, so nothing here says which method is right.";
  const days = loggerDays(series, zone);
  const gap = days.reduce((sum, { min, max, mean }) => sum + (min + max) / 2 - mean, 0) / days.length;
  const { sum, degree } = displayUnit(unit);
  const size = Math.abs(sum(gap)).toFixed(1);
  return (
    `Over ${days.length} days the middle between the lowest and the highest is ${size} ${degree} ${gap < 0 ? "below" : "above"} the mean of the ` +
    `hours. A method knows only the middle, and ${gap < 0 ? "misses" : "counts"} that much more on every day that is warm throughout.`
  ).replace("misses that much more", "misses that much");
}

/** When a row reaches the sum, or a dash. */
export function reachedText(row: MethodRow | undefined): string {
  return row?.reachedAt == null ? "–" : longDate(row.reachedAt);
}

/** The row of a method with a cutoff; the clamped methods have one row whatever the cutoff. */
export function rowOf(
  { rows }: MethodComparison,
  method: MethodRow["method"],
  cutoff: MethodRow["cutoff"],
): MethodRow | undefined {
  const own = rows.filter((row) => row.method === method);
  return own.find((row) => row.cutoff === cutoff) ?? own[0];
}

/** Quarters of a year within a span, as groups under their first and last day. */
export function quartersOf({ from, to }: { readonly from: CivilDay; readonly to: CivilDay }) {
  const year = from.slice(0, 4);
  const starts = ["01", "04", "07", "10"].map((month) => `${year}-${month}-01`);
  return starts.flatMap((start, i) => {
    const end = addDays(starts[i + 1] ?? `${Number(year) + 1}-01-01`, -1);
    const part = { from: start > from ? start : from, to: end < to ? end : to };
    return part.from > part.to ? [] : [{ ...part, group: `${shortDate(part.from)} – ${shortDate(part.to)}` }];
  });
}

/** The most rings that one day shows. */
const MOST_RINGS = 48;

/** Days and hours of temperatures as the methods see them, and as they were. */
export function hoursOf(series: TemperatureSeries, zone: Zone) {
  const { from, to, extremes, measured } = comparedSpan(series, zone, {});
  return {
    from,
    to,
    extremes,
    measured,
    /** Readings of one day, thinned where there are very many. */
    on: (day: CivilDay): CurveReading[] => {
      if (series.kind !== "readings") return [];
      const [begin, end] = [startOfDay(day, zone), startOfDay(dayNumber(day) + 1, zone)];
      const readings = Array.from(series.at, (at, i) => ({ at, temperature: series.temperature[i] ?? NaN }));
      const within = readings.filter(({ at }) => at >= begin && at <= end);
      const every = Math.ceil(within.length / MOST_RINGS);
      return within
        .filter((_, i) => i % every === 0)
        .map(({ at, temperature }) => ({ at: formatInstant(at, zone), temperature }));
    },
  };
}

interface Reached extends MethodRow {
  readonly reachedAt: string;
}

// The earliest and the latest of the methods that get there, and how many do not.
function endsOf(rows: readonly MethodRow[]) {
  const methods = rows.filter(({ method }) => method !== "measured");
  const reached = methods.flatMap((row) =>
    row.reachedAt === null ? [] : [{ ...row, reachedAt: row.reachedAt }],
  );
  const at = ({ reachedAt }: Reached): number => Date.parse(reachedAt);
  const [first, last] = [
    reached.reduce<Reached | undefined>((a, b) => (a && at(a) <= at(b) ? a : b), undefined),
    reached.reduce<Reached | undefined>((a, b) => (a && at(a) >= at(b) ? a : b), undefined),
  ];
  if (first === undefined || last === undefined) return null;
  const days = (at(last) - at(first)) / 86_400_000;
  return { first, last, days, missing: methods.length - reached.length };
}
