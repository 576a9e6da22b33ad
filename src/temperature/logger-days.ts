import { InputError } from "../errors.ts";
import { given } from "../given.ts";
import { type CivilDay, civilDay } from "../time/civil-day.ts";
import { DAY_MS, HOUR_MS, type Instant, type Zone, knownZone, localClock, startOfDay } from "../time/zone.ts";
import type { Celsius } from "../units.ts";
import type { TemperatureReadings } from "./series.ts";

/** One civil day of a logger. */
export interface LoggerDay {
  readonly day: CivilDay;
  readonly min: Celsius;
  readonly max: Celsius;
  /** Mean over time, which is not the middle of the extremes, °C. */
  readonly mean: Celsius;
}

/**
 * The civil days that a logger covers from midnight to midnight without a gap, with their extremes and their
 * mean over time. The temperature between two readings runs along a straight line; readings further apart
 * than the series allows are a gap, and a day that one touches is left out.
 * @param readings A logger's readings.
 * @param zone Zone whose midnights count. Needed for readings in UTC; a local clock has its own midnights.
 * @throws {InputError} `zone-needed` for readings in UTC without a zone.
 * @example
 * loggerDays(temperatureReadings([0, 6, 12, 18, 24].map((hour) => hour * 3_600_000), [10, 10, 20, 10, 10], { clock: "local" }), null) // → [{ day: "1970-01-01", min: 10, max: 20, mean: 12.5 }]
 */
export function loggerDays(readings: TemperatureReadings, zone: Zone): LoggerDay[] {
  given(readings, ["readings"], "readings, as temperatureReadings makes them", "at", "temperature");
  const { at, temperature, clock } = readings;
  // Callers without types may leave the zone out: it is never that of the machine.
  if (zone != null) knownZone(zone);
  else if (clock === "utc") {
    throw new InputError(
      "zone-needed",
      (name) =>
        `the readings count in UTC, but no time zone was given; name the zone that the days are in with ${name("zone")}, such as America/New_York.`,
      { path: ["zone"], value: zone },
    );
  }
  const own = clock === "local" ? null : zone;
  const longest = readings.longestGapHours * HOUR_MS;
  const numberOf = (instant: Instant): number => Math.floor(localClock(instant, own) / DAY_MS);
  const days: LoggerDay[] = [];
  const [first, last] = [numberOf(at[0] ?? 0), numberOf(at.at(-1) ?? 0)];
  let i = 1;
  for (let number = first; number <= last; number++) {
    const [begin, end] = [startOfDay(number, own), startOfDay(number + 1, own)];
    let [min, max, sum, covered] = [Infinity, -Infinity, 0, 0];
    for (; i < at.length; i++) {
      const [from, to] = [at[i - 1] ?? 0, at[i] ?? 0];
      const [a, b] = [Math.max(from, begin), Math.min(to, end)];
      if (a < b && to - from <= longest) {
        const [start, stop] = [temperature[i - 1] ?? 0, temperature[i] ?? 0];
        const perMs = (stop - start) / (to - from);
        const [p, q] = [start + (a - from) * perMs, stop - (to - b) * perMs];
        min = Math.min(min, p, q);
        max = Math.max(max, p, q);
        sum += ((p + q) / 2) * (b - a);
        covered += b - a;
      }
      // What reaches into the next day, or ends with this one, is looked at again there.
      if (to >= end) break;
    }
    // Times of half a millisecond may round.
    if (end - begin - covered < 1) days.push({ day: civilDay(number), min, max, mean: sum / covered });
  }
  return days;
}
