import { thermalClock } from "../../clock/thermal-clock.ts";
import type { Note } from "../../notes.ts";
import { linearResponse } from "../../response/linear.ts";
import type { TestedRange } from "../../species/life-cycle.ts";
import { DAY_MS, startOfDay } from "../../time/zone.ts";
import { type NoteContext, note, usedDays } from "./note-context.ts";

const ABSOLUTE_ZERO = -273.15;

/** Days whose mean leaves the temperatures that the constants were measured at. */
export function testedNotes(context: NoteContext): Note[] {
  const { lifeCycle, path, clocks, table, usedUntil, zone, ends } = context;
  const ranges = new Map<string, TestedRange>();
  for (const { tested } of lifeCycle.stages.slice(path.period)) {
    if (tested !== null) ranges.set(`${tested.low} ${tested.high}`, tested);
  }
  const timeline = clocks[0]?.timeline;
  const [firstDay] = table?.days ?? [];
  if (ranges.size === 0 || timeline === undefined || firstDay === undefined) return [];
  // Degree-days above absolute zero are the mean temperature's integral.
  const warmth = thermalClock(timeline, linearResponse({ lower: ABSOLUTE_ZERO }));
  const end = Math.min(usedUntil, timeline.to);
  const begins = [startOfDay(firstDay, zone), ...ends];
  const means = begins.slice(0, usedDays(context)).map((begin, i) => {
    const from = Math.max(begin, timeline.from);
    const to = Math.max(from + 1, Math.min(ends[i] ?? end, end));
    return ((warmth.amountAt(to) - warmth.amountAt(from)) / (to - from)) * DAY_MS + ABSOLUTE_ZERO;
  });
  return [...ranges.values()].flatMap(({ low, high, source }) => {
    const outside = means.filter((mean) => mean < low || mean > high);
    if (outside.length === 0) return [];
    return [
      note(
        "outside-tested-temperatures",
        `${outside.length} of ${means.length} days have a mean temperature outside ${low} to ${high} °C, where the constants were measured (${source}): lowest ${Math.min(...outside).toFixed(1)}, highest ${Math.max(...outside).toFixed(1)} °C. Dates that rest on them are extrapolated.`,
      ),
    ];
  });
}
