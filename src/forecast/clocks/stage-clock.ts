import { type ThermalClock, thermalClock } from "../../clock/thermal-clock.ts";
import type { TimelineOptions } from "../../diurnal/part-arcs.ts";
import { type Timeline, timelineOf } from "../../diurnal/timeline.ts";
import { type LinearResponse, linearResponse } from "../../response/linear.ts";
import type { LifeCycle, StageId } from "../../species/life-cycle.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import type { LifePath } from "../question/life-path.ts";

/** One pair of thresholds with its curve and its clock. */
export interface StageClock {
  readonly response: LinearResponse;
  /** How much warmer than the curve the animals are, °C. */
  readonly offset: number;
  readonly timeline: Timeline;
  readonly clock: ThermalClock;
  readonly stages: StageId[];
}

/** How a curve is drawn for the clocks that run on it. */
type CurveOptions = Required<Omit<TimelineOptions, "limits" | "until">> & Pick<TimelineOptions, "until">;

/** The curve that temperatures give for thresholds, drawn once. */
export type Curve = (limits: LinearResponse) => Timeline;

/** The curve of temperatures. Only the clamped methods draw another one for other thresholds. */
export function curveOf(temperatures: TemperatureSeries, options: CurveOptions): Curve {
  let shared: Timeline | null = null;
  const draw: Curve = (limits) => timelineOf(temperatures, { ...options, limits });
  return options.method.startsWith("clamped-") ? draw : (limits) => (shared ??= draw(limits));
}

/** A clock for each period from the found one on; periods with the same thresholds share one. */
export function stageClocks(
  lifeCycle: LifeCycle,
  path: LifePath,
  temperatures: TemperatureSeries,
  options: CurveOptions,
): (StageClock | null)[] {
  return clocksOn(curveOf(temperatures, options), lifeCycle, path, 0);
}

/**
 * The clocks of {@link stageClocks} on a curve, for animals that are warmer than it by an offset.
 * @param offset °C. Warmer temperatures are the same as lower thresholds, and need no other curve.
 */
export function clocksOn(
  curve: Curve,
  { stages }: LifeCycle,
  path: LifePath,
  offset: number,
): (StageClock | null)[] {
  const known: StageClock[] = [];
  return stages.map((needs, period) => {
    if (period < path.period) return null;
    const [lower, upper] = [needs.lower.value, needs.upper?.value ?? null];
    let entry = known.find(({ response }) => {
      return (
        response.lower === lower && response.upper === (upper ?? Infinity) && response.cutoff === needs.cutoff
      );
    });
    if (entry === undefined) {
      const response = linearResponse({ lower, upper, cutoff: needs.cutoff });
      const felt =
        offset === 0
          ? response
          : linearResponse({
              lower: lower - offset,
              upper: upper === null ? null : upper - offset,
              cutoff: needs.cutoff,
            });
      const timeline = curve(felt);
      entry = { response, offset, timeline, clock: thermalClock(timeline, felt), stages: [] };
      known.push(entry);
    }
    entry.stages.push(needs.stage);
    return entry;
  });
}

/** The clocks of some periods, each once. */
export function distinct(clocks: readonly (StageClock | null)[]): StageClock[] {
  return [...new Set(clocks)].filter((entry) => entry !== null);
}
