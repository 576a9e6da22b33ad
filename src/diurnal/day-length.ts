import { given } from "../given.ts";
import { type CivilDay, dayNumber } from "../time/civil-day.ts";
import { within } from "./place.ts";
import { sunOn } from "./sun.ts";
import { HOUR_MS } from "../time/zone.ts";

/**
 * Time from sunrise to sunset, hours.
 *
 * Sunrise and sunset are those of the upper edge of the sun's disc on a level horizon with the usual
 * refraction (centre at -0.833°). Formulas that take the disc's centre and no refraction give some minutes
 * less: seven at the equator, more towards the poles.
 * @param day Civil day of the place, ISO 8601.
 * @param latitude Degrees, north positive, -90 to 90.
 * @param options.longitude Degrees, east positive. It moves the moment of noon within the day, and so the day
 *   length: by up to two minutes at 50°, more near the polar circles. Default 0.
 * @returns Hours, 0 (the sun stays down) to 24 (it stays up).
 * @throws {InputError} `invalid-day`; `invalid-number` or `invalid-option` for the coordinates.
 * @example
 * dayLength("2026-06-21", 40).toFixed(2) // → "15.02"
 * dayLength("2026-06-21", 80) // → 24
 * dayLength("2026-12-21", 80) // → 0
 * @see Meeus, Astronomical Algorithms, chapters 15 and 25 (as named by suncalc, which computes it).
 */
export function dayLength(day: CivilDay, latitude: number, options: { longitude?: number } = {}): number {
  given(options, ["options"], "an object of options");
  const { longitude = 0 } = options;
  within(latitude, 90, ["latitude"]);
  within(longitude, 180, ["longitude"]);
  const sun = sunOn(dayNumber(day), { latitude, longitude });
  if (sun.kind === "rises") return (sun.sunset - sun.sunrise) / HOUR_MS;
  return sun.kind === "always-up" ? 24 : 0;
}
