import { type CivilDay, civilDays, dayNumber } from "../../time/civil-day.ts";
import { type Instant, type Zone, civilDayOf, startOfDay } from "../../time/zone.ts";
import { ORIGINS, type Origin } from "../../temperature/series.ts";
import { type StageClock, distinct } from "./stage-clock.ts";
import type { DegreeDayTable } from "../question/result.ts";

/** Longest table, so that a temperature held for ever does not fill the memory. */
const LONGEST_TABLE_DAYS = 800;

/** Tables, with the instants at which the days of the first one end. */
export interface DatedTables {
  readonly tables: readonly DegreeDayTable[];
  readonly ends: readonly Instant[];
}

/**
 * Degree-days of each civil day on each clock, from the start to the day of an instant. Where the weather
 * may go several ways, their mean.
 */
export function degreeDayTables(weather: readonly Weather[], until: Instant, zone: Zone): DatedTables {
  const [first] = weather;
  if (first === undefined) return { tables: [], ends: [] };
  const calendars = new Map<string, Calendar>();
  const tables = distinct(first.clocks).map((entry) => {
    const period = first.clocks.indexOf(entry);
    const same = weather.flatMap(({ weight, clocks }) => {
      const other = clocks[period];
      return other == null ? [] : [{ weight, entry: other }];
    });
    const from = entry.timeline.from;
    const end = Math.max(...same.map((member) => member.entry.timeline.to));
    const key = `${from} ${end}`;
    let calendar = calendars.get(key);
    if (calendar === undefined) calendars.set(key, (calendar = calendarOf(from, Math.min(until, end), zone)));
    return tableOf(entry, same, calendar);
  });
  const [calendar] = calendars.values();
  return { tables, ends: calendar?.ends ?? [] };
}

interface Weather {
  readonly weight: number;
  readonly clocks: readonly (StageClock | null)[];
}

/** Civil days and the instants at which they end. */
interface Calendar {
  readonly days: readonly CivilDay[];
  readonly ends: readonly Instant[];
}

/** The civil days from that of an instant to the first that ends at or after another. */
function calendarOf(from: Instant, until: Instant, zone: Zone): Calendar {
  const firstDay = dayNumber(civilDayOf(from, zone));
  const ends: Instant[] = [];
  for (let n = firstDay; n < firstDay + LONGEST_TABLE_DAYS; n++) {
    const midnight = startOfDay(n + 1, zone);
    ends.push(midnight);
    if (midnight >= until) break;
  }
  return { days: civilDays(firstDay, ends.length), ends };
}

function tableOf(
  { response, stages, timeline }: StageClock,
  members: readonly { readonly weight: number; readonly entry: StageClock }[],
  { days, ends }: Calendar,
): DegreeDayTable {
  const degreeDays: number[] = [];
  const total: number[] = [];
  let before = 0;
  for (const end of ends) {
    let sum = 0;
    for (const { weight, entry } of members) sum += weight * entry.clock.amountAt(end);
    degreeDays.push(sum - before);
    total.push((before = sum));
  }
  const { lower, upper, cutoff } = response;
  const origin = originsOf(timeline.arcs, ends);
  return { lower, upper: upper === Infinity ? null : upper, cutoff, stages, days, degreeDays, total, origin };
}

/** The least certain origin of each day, given where the days end. */
function originsOf(arcs: StageClock["timeline"]["arcs"], ends: readonly Instant[]): Origin[] {
  let i = 0;
  return ends.map((end) => {
    let least: Origin = "observed";
    for (let arc = arcs[i]; arc !== undefined && arc.from < end; arc = arcs[++i]) {
      if (arc.origin !== least && ORIGINS.indexOf(arc.origin) > ORIGINS.indexOf(least)) least = arc.origin;
      if (arc.to > end) break;
    }
    return least;
  });
}
