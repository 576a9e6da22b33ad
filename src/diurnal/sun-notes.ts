import type { Note } from "../notes.ts";
import type { TemperatureSeries } from "../temperature/series.ts";
import { civilDay, dayNumber } from "../time/civil-day.ts";
import { type Instant, type Zone, civilDayOf, startOfDay } from "../time/zone.ts";
import { type CurveMethod, isSunMethod } from "./method.ts";
import type { Place } from "./place.ts";
import { isDrawnBySun } from "./sun-arcs.ts";

/**
 * What a reader must know of a curve that follows the sun: where its figures come from, and on how many
 * days there was no sunrise, or too short a night, to follow. Empty for other methods, and where no daily
 * extremes are used.
 * @param series The series that the curve was drawn through; several where the weather is uncertain.
 * @param from First instant that counts. @param to Last one; whole civil days around them are looked at.
 */
export function sunNotes(
  series: readonly TemperatureSeries[],
  options: { readonly method: CurveMethod; readonly zone: Zone; readonly place?: Place | null },
  from: Instant,
  to: Instant,
): Note[] {
  const { method, zone, place = null } = options;
  if (!isSunMethod(method) || place === null) return [];
  const used = daysUsed(series, dayNumber(civilDayOf(from, zone)), dayNumber(civilDayOf(to - 1, zone)));
  if (used.length === 0) return [];
  const source: Note =
    method === "sunrise-exponential"
      ? {
          code: "constant-from-memory",
          message:
            "The hours within a day rest on the coefficients of Parton & Logan (1981) for air at 150 cm, from memory, not yet looked up in print.",
        }
      : {
          code: "common-practice",
          message:
            "The maximum is taken to be two hours after the sun is highest: common practice, no source.",
        };
  const other = used.filter((day) => !isDrawnBySun(method, startOfDay(day, zone), place));
  const [first] = other;
  const last = other.at(-1);
  if (first === undefined || last === undefined) return [source];
  const why =
    method === "sunrise-sine"
      ? "the sun did not both rise and set"
      : "the sun did not both rise and set, or day or night was too short for the method";
  const span = first === last ? civilDay(first) : `${civilDay(first)} to ${civilDay(last)}`;
  const message = `On ${other.length} of ${used.length} days (${span}) ${why}: half waves between the extremes were drawn instead.`;
  return [source, { code: "no-sunrise", message }];
}

/** Numbers of the days within a span that have daily extremes in some part of some series. */
function daysUsed(series: readonly TemperatureSeries[], from: number, to: number): number[] {
  const days = new Set<number>();
  for (const part of series.flatMap((one) => (one.kind === "joined" ? one.parts : [one]))) {
    if (part.kind !== "daily") continue;
    const start = dayNumber(part.start);
    for (let day = Math.max(start, from); day <= Math.min(start + part.min.length - 1, to); day++)
      if (Number(part.min[day - start]) <= Number(part.max[day - start])) days.add(day);
  }
  return [...days].sort((a, b) => a - b);
}
