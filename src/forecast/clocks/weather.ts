import type { LifeCycle } from "../../species/life-cycle.ts";
import type { WeatherEnsemble } from "../../temperature/ensemble.ts";
import type { TemperatureSeries } from "../../temperature/series.ts";
import { type Instant, startOfDay } from "../../time/zone.ts";
import type { ForecastStart } from "../question/forecast-input.ts";
import { type StageClock, clocksOn, curveOf, distinct } from "./stage-clock.ts";
import { spreadClocks } from "./weather-spread.ts";

/** A clock for each period of the life cycle, `null` for those before the find. */
export type PeriodClocks = readonly (StageClock | null)[];

/** Ways the weather may go, with the clocks that run on them. */
export interface Weather {
  readonly weight: number;
  /** Clocks with weights that add up to 1, for animals warmer than the thermometer by an offset. */
  clocksAt(offset: number): readonly { readonly weight: number; readonly clocks: PeriodClocks }[];
}

/**
 * The ways that the temperatures of a forecast may go; one where they are certain.
 * @param until Nothing is drawn after it.
 */
export function weatherOf(
  temperatures: TemperatureSeries | WeatherEnsemble,
  lifeCycle: LifeCycle,
  start: ForecastStart,
  until: Instant,
): Weather[] {
  const certain = temperatures.kind !== "ensemble";
  const known = certain ? Infinity : startOfDay(temperatures.from, start.zone);
  const groups = certain ? [{ members: [temperatures], weight: 1 }] : temperatures.groups;
  return groups.map(({ members, weight }) => {
    const done = new Map<number, ReturnType<Weather["clocksAt"]>>();
    const { path, method, place, zone, instant: from } = start;
    const curves = members.map((series) => curveOf(series, { method, place, zone, from, until }));
    return {
      weight,
      clocksAt(offset) {
        let clocks = done.get(offset);
        if (clocks === undefined) {
          clocks = spread(
            curves.map((curve) => clocksOn(curve, lifeCycle, path, offset)),
            known,
          );
          done.set(offset, clocks);
        }
        return clocks;
      },
    };
  });
}

/** Members as clocks that stand for what they are a sample of. */
function spread(members: readonly PeriodClocks[], known: number): ReturnType<Weather["clocksAt"]> {
  const [first] = members;
  if (first === undefined) return [];
  if (members.length < 3) return members.map((clocks) => ({ weight: 1 / members.length, clocks }));
  const spreads = new Map(
    distinct(first).map((entry) => {
      const period = first.indexOf(entry);
      const same = members.flatMap((clocks) => clocks[period] ?? []);
      return [
        entry,
        spreadClocks(
          same.map(({ clock }) => clock),
          known,
        ),
      ];
    }),
  );
  const count = [...spreads.values()][0]?.length ?? 0;
  const shared = new Map<StageClock, StageClock[]>();
  return Array.from({ length: count }, (_, k) => ({
    weight: 1 / count,
    clocks: first.map((entry): StageClock | null => {
      const clock = entry === null ? undefined : spreads.get(entry)?.[k]?.clock;
      if (entry === null || clock === undefined) return null;
      return remembered(entry, k, clock);
    }),
  }));

  // Periods that share a clock must share it in every member, so that their needs add up on it.
  function remembered(entry: StageClock, k: number, clock: StageClock["clock"]): StageClock {
    let made = shared.get(entry);
    if (made === undefined) shared.set(entry, (made = []));
    return (made[k] ??= { ...entry, clock });
  }
}
