import { dayNumber } from "../time/civil-day.ts";
import type { Zone } from "../time/zone.ts";
import { isMissing } from "./gaps.ts";
import { loggerDays } from "./logger-days.ts";
import type { DailyTemperatures, TemperatureReadings } from "./series.ts";

/** One day that a room's logger and a station both measured, °C. @internal */
export interface SharedDay {
  readonly number: number;
  readonly room: { readonly mean: number; readonly half: number; readonly max: number };
  readonly station: { readonly mean: number; readonly half: number; readonly max: number };
}

/**
 * The complete days of a logger on which the station was observed too. The room's mean is that over time, the
 * station's the middle of its extremes.
 * @internal
 */
export function sharedDays(logger: TemperatureReadings, station: DailyTemperatures, zone: Zone): SharedDay[] {
  const start = dayNumber(station.start);
  return loggerDays(logger, zone).flatMap(({ day, min, max, mean }): SharedDay[] => {
    const number = dayNumber(day);
    const i = number - start;
    if (station.origin[i] !== "observed" || isMissing(station, i)) return [];
    const [low, high] = [station.min[i] ?? Number.NaN, station.max[i] ?? Number.NaN];
    return [
      {
        number,
        room: { mean, half: (max - min) / 2, max },
        station: { mean: (low + high) / 2, half: (high - low) / 2, max: high },
      },
    ];
  });
}
