import { given } from "../given.ts";
import { dailyTemperatures } from "./daily.ts";
import type { RoomNote, RoomRelation } from "./room-relation.ts";
import type { DailyTemperatures } from "./series.ts";

/**
 * Daily extremes of a room, estimated from those of a station by what was learned: origin `estimated`. A day
 * that the station lacks stays missing.
 * @param station Daily extremes of the same station.
 * @param relation What `relateRoom` found.
 * @returns Daily minima and maxima, °C.
 * @example
 * const days = Array.from({ length: 16 }, (_, i) => i);
 * const station = dailyTemperatures("1970-01-01", days.map((i) => 10 + i), days.map((i) => 20 + i));
 * const hours = Array.from({ length: 65 }, (_, i) => 6 * i);
 * const logger = temperatureReadings(hours.map((h) => h * 3_600_000), hours.map((h) => 21 + h / 48), { clock: "local" });
 * roomTemperatures(station, relateRoom(logger, station)).origin[0] // → "estimated"
 */
export function roomTemperatures(station: DailyTemperatures, relation: RoomRelation): DailyTemperatures {
  given(station, ["station"], "daily temperatures, as dailyTemperatures makes them", "start", "min", "max");
  given(relation, ["relation"], "what relateRoom returns", "damping", "level", "rangeRatio", "seen", "notes");
  const { level, damping, rangeRatio, stationMean } = relation;
  const middle = (i: number): number => {
    const mean = ((station.min[i] ?? Number.NaN) + (station.max[i] ?? Number.NaN)) / 2;
    return level.value + damping.value * (mean - stationMean);
  };
  // Noise can make a very even room's ratio negative; a range cannot be.
  const half = (i: number): number =>
    (Math.max(0, rangeRatio.value) * ((station.max[i] ?? Number.NaN) - (station.min[i] ?? Number.NaN))) / 2;
  return dailyTemperatures(
    station.start,
    station.min.map((_, i) => middle(i) - half(i)),
    station.max.map((_, i) => middle(i) + half(i)),
    "estimated",
  );
}

/**
 * What to know before the estimates for a stretch of a station's days are used: sun on the cage, and days
 * that are colder or warmer than any that the relation was learned from.
 * @example
 * const days = Array.from({ length: 16 }, (_, i) => i);
 * const station = dailyTemperatures("1970-01-01", days.map((i) => 10 + i), days.map((i) => 20 + i));
 * const hours = Array.from({ length: 65 }, (_, i) => 6 * i);
 * const logger = temperatureReadings(hours.map((h) => h * 3_600_000), hours.map((h) => 21 + h / 48), { clock: "local" });
 * roomNotes(dailyTemperatures("1970-08-01", [30], [40]), relateRoom(logger, station))[0]?.code // → "station-outside-overlap"
 */
export function roomNotes(station: DailyTemperatures, relation: RoomRelation): RoomNote[] {
  given(station, ["station"], "daily temperatures, as dailyTemperatures makes them", "start", "min", "max");
  given(relation, ["relation"], "what relateRoom returns", "damping", "level", "rangeRatio", "seen", "notes");
  const { low, high } = relation.seen;
  const means = Array.from(station.min, (min, i) => (min + (station.max[i] ?? Number.NaN)) / 2);
  const outside = means.filter((mean) => mean < low || mean > high);
  if (outside.length === 0) return [...relation.notes];
  return [
    ...relation.notes,
    {
      code: "station-outside-overlap",
      message: `${outside.length} of ${means.length} days have a station mean outside ${low.toFixed(1)} to ${high.toFixed(1)} °C, the range that the room was compared over; what the room does on them is extrapolated.`,
    },
  ];
}
