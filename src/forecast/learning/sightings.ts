import type { LifeCycle } from "../../species/life-cycle.ts";
import { DAY_MS, type Instant } from "../../time/zone.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import type { Moment } from "../arrivals/done-by.ts";
import { USUAL_PACE, waysTo } from "../arrivals/scenario.ts";
import { type StageClock, clocksOn, curveOf } from "../clocks/stage-clock.ts";
import type { ForecastStart } from "../question/forecast-input.ts";
import { byOffset } from "../question/learned.ts";
import type { LifePath, Milestone } from "../question/life-path.ts";
import { type Span, chancesOf } from "./log-span.ts";
import type { GridNode } from "./pace-grid.ts";

/** That some animals began a stage between two looks, or none of them before the last one. */
export interface Sighting {
  readonly span: Span;
  readonly milestone: Milestone;
  /** When they began the stage that they were seen in before. */
  readonly starts: readonly Moment[];
  /** What lies ahead of them from that stage on. */
  readonly path: LifePath;
  readonly animals: number;
}

/** The chance of a sighting of one animal, at each point of a grid of paces and offsets. */
export type SightingChances = (sighting: Omit<Sighting, "animals">, grid: readonly GridNode[]) => number[];

/**
 * Makes ready for sightings at one place.
 * @param until Last instant of a span that ends.
 */
export function sightingChances(
  series: TemperatureSeries,
  lifeCycle: LifeCycle,
  { zone, method, place, path: found, instant }: ForecastStart,
  until: Instant,
): SightingChances {
  const clocksFrom = (end: Instant): ((offset: number) => (StageClock | null)[]) => {
    const curve = curveOf(series, { method, place, zone, from: instant, until: end });
    const known = new Map<number, (StageClock | null)[]>();
    return (offset) => {
      const clocks = known.get(offset) ?? clocksOn(curve, lifeCycle, found, offset);
      known.set(offset, clocks);
      return clocks;
    };
  };
  const near = clocksFrom(until + DAY_MS);
  // Whether an animal is still to come is asked of all temperatures, and seldom.
  let all: typeof near | null = null;
  return ({ span, milestone, starts, path }, grid) => {
    const clocksAt = span.to === Infinity ? (all ??= clocksFrom(Infinity)) : near;
    return byOffset(grid).flatMap((nodes) => {
      const paces = nodes.map(({ pace }) => pace);
      const clocks = clocksAt(nodes[0]?.offset ?? 0);
      const ways = waysTo(milestone, [{ weight: 1, paces: USUAL_PACE, starts, path, clocks }], lifeCycle);
      return ways.flatMap((way) => chancesOf(span, way, paces));
    });
  };
}
