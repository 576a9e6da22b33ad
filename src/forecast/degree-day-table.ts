import { civilDay, dayNumber } from "../time/civil-day.ts";
import { type Instant, type Zone, civilDayOf, startOfDay } from "../time/zone.ts";
import { ORIGINS, type Origin } from "../temperature/series.ts";
import { type StageClock, distinct } from "./stage-clock.ts";
import type { DegreeDayTable } from "./result.ts";

/** Longest table, so that a temperature held for ever does not fill the memory. */
const LONGEST_TABLE_DAYS = 800;

/**
 * Degree-days of each civil day on each clock, from the start to the day of an instant. Where the weather
 * may go several ways, their mean.
 */
export function degreeDayTables(weather: readonly Weather[], until: Instant, zone: Zone): DegreeDayTable[] {
  const [first] = weather;
  if (first === undefined) return [];
  return distinct(first.clocks).map((entry) => {
    const period = first.clocks.indexOf(entry);
    const same = weather.flatMap(({ weight, clocks }) => {
      const other = clocks[period];
      return other == null ? [] : [{ weight, entry: other }];
    });
    return tableOf(same, until, zone);
  });
}

interface Weather {
  readonly weight: number;
  readonly clocks: readonly (StageClock | null)[];
}

function tableOf(
  members: readonly { weight: number; entry: StageClock }[],
  until: Instant,
  zone: Zone,
): DegreeDayTable {
  const [first] = members;
  if (first === undefined) throw new Error("a table needs at least one clock");
  const { response, stages } = first.entry;
  const end = Math.max(...members.map(({ entry }) => entry.timeline.to));
  const firstDay = dayNumber(civilDayOf(first.entry.timeline.from, zone));
  const days: string[] = [];
  const degreeDays: number[] = [];
  const total: number[] = [];
  const ends: Instant[] = [];
  for (let n = firstDay; n < firstDay + LONGEST_TABLE_DAYS; n++) {
    const midnight = startOfDay(n + 1, zone);
    const sum = members.reduce(
      (mean, { weight, entry }) => mean + weight * entry.clock.amountAt(midnight),
      0,
    );
    degreeDays.push(sum - (total.at(-1) ?? 0));
    total.push(sum);
    days.push(civilDay(n));
    ends.push(midnight);
    if (midnight >= until || midnight >= end) break;
  }
  const { lower, upper, cutoff } = response;
  const origin = originsOf(first.entry, ends);
  return { lower, upper: upper === Infinity ? null : upper, cutoff, stages, days, degreeDays, total, origin };
}

/** The least certain origin of each day, given where the days end. */
function originsOf({ timeline }: StageClock, ends: readonly Instant[]): Origin[] {
  let arc = 0;
  return ends.map((end) => {
    let least = 0;
    while (arc < timeline.arcs.length && (timeline.arcs[arc]?.from ?? Infinity) < end) {
      least = Math.max(least, ORIGINS.indexOf(timeline.arcs[arc]?.origin ?? "observed"));
      if ((timeline.arcs[arc]?.to ?? Infinity) > end) break;
      arc++;
    }
    return ORIGINS[least] ?? "observed";
  });
}
