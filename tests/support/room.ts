import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import type { DailyTemperatures, TemperatureReadings } from "../../src/temperature/series.ts";
import { dayNumber } from "../../src/time/civil-day.ts";

const HOUR_MS = 3_600_000;

/** Numbers that look random and are the same in every run, from -1 to 1 (the mulberry32 generator). */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 31 - 1;
  };
}

/** How an invented room follows an invented station. */
export interface Room {
  readonly offset: number;
  readonly damping: number;
  readonly rangeRatio: number;
  /** Largest daily departure, °C. */
  readonly scatter: number;
  /** Largest departure of the day's ratio of ranges. Default 0. */
  readonly rangeScatter?: number;
}

/**
 * Invented daily extremes of a station, °C: a wave of a fortnight with jumps from day to day, and ranges that
 * change.
 */
export function inventedStation(
  start: string,
  days: number,
  { mean = 20, seed = 5, jump = 2 } = {},
): DailyTemperatures {
  const next = noise(seed);
  const rows = Array.from({ length: days }, (_, i) => {
    const middle = mean + 4 * Math.sin((2 * Math.PI * i) / 14) + jump * next();
    const half = 5 + 2 * next();
    return [middle - half, middle + half] as const;
  });
  return dailyTemperatures(
    start,
    rows.map(([min]) => min),
    rows.map(([, max]) => max),
  );
}

/**
 * Hourly readings of a room on a local clock: each day a wave through its mean at both midnights, so that the
 * mean over time is the middle of the extremes, and a jump within two seconds at midnight.
 */
export function inventedLogger(station: DailyTemperatures, room: Room, seed = 11): TemperatureReadings {
  const next = noise(seed);
  const first = dayNumber(station.start);
  const at: number[] = [];
  const degrees: number[] = [];
  station.min.forEach((low, i) => {
    const high = station.max[i] ?? low;
    const middle = room.offset + (room.damping * (low + high)) / 2 + room.scatter * next();
    const half = ((room.rangeRatio + (room.rangeScatter ?? 0) * next()) * (high - low)) / 2;
    for (let k = 0; k <= 24; k++) {
      const aside = k === 0 ? 1000 : k === 24 ? -1000 : 0;
      at.push(((first + i) * 24 + k) * HOUR_MS + aside);
      degrees.push(middle - half * Math.sin((2 * Math.PI * k) / 24));
    }
  });
  return temperatureReadings(at, degrees, { clock: "local" });
}
