import { civilDay, dayNumber } from "../time/civil-day.ts";
import { type Instant, type Zone, civilDayOf, startOfDay } from "../time/zone.ts";
import type { Origin } from "../temperature/series.ts";
import type { StageClock } from "./stage-clock.ts";
import type { DegreeDayTable } from "./result.ts";

/** Longest table, so that a temperature held for ever does not fill the memory. */
const LONGEST_TABLE_DAYS = 800;

const CERTAINTY: readonly Origin[] = ["observed", "filled", "forecast", "normal", "assumed"];

/** Degree-days of each civil day on each clock, from the start to the day of an instant. */
export function degreeDayTables(clocks: readonly StageClock[], until: Instant, zone: Zone): DegreeDayTable[] {
  return clocks.map(({ response, clock, timeline, stages }) => {
    const first = dayNumber(civilDayOf(timeline.from, zone));
    const days: string[] = [];
    const degreeDays: number[] = [];
    const total: number[] = [];
    const origin: Origin[] = [];
    let arc = 0;
    for (let n = first; n < first + LONGEST_TABLE_DAYS; n++) {
      const end = startOfDay(n + 1, zone);
      let least = 0;
      while (arc < timeline.arcs.length && (timeline.arcs[arc]?.from ?? Infinity) < end) {
        least = Math.max(least, CERTAINTY.indexOf(timeline.arcs[arc]?.origin ?? "observed"));
        if ((timeline.arcs[arc]?.to ?? Infinity) > end) break;
        arc++;
      }
      const sum = clock.amountAt(end);
      degreeDays.push(sum - (total.at(-1) ?? 0));
      total.push(sum);
      days.push(civilDay(n));
      origin.push(CERTAINTY[least] ?? "observed");
      if (end >= until || end >= timeline.to) break;
    }
    const { lower, upper, cutoff } = response;
    return {
      lower,
      upper: upper === Infinity ? null : upper,
      cutoff,
      stages,
      days,
      degreeDays,
      total,
      origin,
    };
  });
}
