import { getTimes } from "suncalc";
import { DAY_MS, type Instant } from "../time/zone.ts";
import type { Place } from "./place.ts";

// The only file that asks where the sun stands. Sunrise and sunset are those of the disc's upper edge on a
// level horizon with the usual refraction: the centre at -0.833°. Solar coordinates after Meeus as suncalc
// 2.x computes them, meant for about 1900 to 2150; tests/published holds them to printed sunrise times.

/** The sun over one solar day at a place: instants in UTC, `noon` when it is highest. */
export type SunDay =
  | { readonly kind: "rises"; readonly sunrise: Instant; readonly noon: Instant; readonly sunset: Instant }
  | { readonly kind: "always-up" | "always-down"; readonly noon: Instant };

const HALF_DAY_MS = DAY_MS / 2;
/** The mean sun crosses a degree of longitude in four minutes. */
const MS_PER_DEGREE = 240_000;

/** Number of the day, as in `dayNumber`, that a clock of local mean solar time shows at an instant. */
export function solarDayAt(instant: Instant, longitude: number): number {
  return Math.floor((instant + longitude * MS_PER_DEGREE) / DAY_MS);
}

// Forecasts draw the same days many times over, and the sun takes longer than the curve.
const known = new Map<string, Map<number, SunDay>>();
const MOST_DAYS = 20_000;

/**
 * The sun on a day of local mean solar time.
 * @param solarDay Number of the day, see {@link solarDayAt}.
 * @param place Checked before.
 */
export function sunOn(solarDay: number, place: Place): SunDay {
  const key = `${place.latitude} ${place.longitude}`;
  let days = known.get(key);
  if (days === undefined || days.size >= MOST_DAYS) {
    if (known.size >= 100) known.clear();
    known.set(key, (days = new Map<number, SunDay>()));
  }
  let sun = days.get(solarDay);
  if (sun === undefined) days.set(solarDay, (sun = sunComputed(solarDay, place)));
  return sun;
}

function sunComputed(solarDay: number, { latitude, longitude }: Place): SunDay {
  const meanNoon = solarDay * DAY_MS + HALF_DAY_MS - longitude * MS_PER_DEGREE;
  const times = getTimes(new Date(meanNoon), latitude, longitude);
  const noon = times.solarNoon.getTime();
  if (times.sunrise === null || times.sunset === null)
    return { kind: times.alwaysUp === true ? "always-up" : "always-down", noon };
  return {
    kind: "rises",
    noon,
    // On the few days when the sun only grazes the horizon, the refinement can overshoot by hours.
    sunrise: Math.min(noon, Math.max(noon - HALF_DAY_MS, times.sunrise.getTime())),
    sunset: Math.max(noon, Math.min(noon + HALF_DAY_MS, times.sunset.getTime())),
  };
}
