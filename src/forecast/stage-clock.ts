import { type ThermalClock, thermalClock } from "../clock/thermal-clock.ts";
import type { TimelineOptions } from "../diurnal/part-arcs.ts";
import { type Timeline, timelineOf } from "../diurnal/timeline.ts";
import { type LinearResponse, linearResponse } from "../response/linear.ts";
import type { LifeCycle, StageId } from "../species/life-cycle.ts";
import type { TemperatureSeries } from "../temperature/series.ts";
import type { LifePath } from "./life-path.ts";

/** One pair of thresholds with its curve and its clock. */
export interface StageClock {
  readonly response: LinearResponse;
  readonly timeline: Timeline;
  readonly clock: ThermalClock;
  readonly stages: StageId[];
}

/** A clock for each period from the found one on; periods with the same thresholds share one. */
export function stageClocks(
  { stages }: LifeCycle,
  path: LifePath,
  temperatures: TemperatureSeries,
  options: Required<Omit<TimelineOptions, "limits" | "until">> & Pick<TimelineOptions, "until">,
): (StageClock | null)[] {
  const known = new Map<string, StageClock>();
  let shared: Timeline | null = null;
  return stages.map((needs, period) => {
    if (period < path.period) return null;
    const thresholds = { lower: needs.lower.value, upper: needs.upper?.value ?? null, cutoff: needs.cutoff };
    const key = JSON.stringify(thresholds);
    let entry = known.get(key);
    if (entry === undefined) {
      const response = linearResponse(thresholds);
      // Only the clamped methods draw another curve for other thresholds.
      const timeline: Timeline =
        shared !== null && !options.method.startsWith("clamped-")
          ? shared
          : timelineOf(temperatures, { ...options, limits: response });
      shared = timeline;
      entry = { response, timeline, clock: thermalClock(timeline, response), stages: [] };
      known.set(key, entry);
    }
    entry.stages.push(needs.stage);
    return entry;
  });
}

/** The clocks of some periods, each once. */
export function distinct(clocks: readonly (StageClock | null)[]): StageClock[] {
  return [...new Set(clocks)].filter((entry) => entry !== null);
}
