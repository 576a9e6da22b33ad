import { InputError } from "../errors.ts";
import { HOUR_MS, type Instant } from "../time/zone.ts";
import type { Place } from "./place.ts";
import { solarDayAt, sunOn } from "./sun.ts";

/** Noon by the clocks of a place's own zone is never further from the sun's. */
const FARTHEST_NOON_MS = 4 * HOUR_MS;

/**
 * Refuses a place whose sun does not fit the clocks of its zone: a longitude with the wrong sign would move
 * daylight into the night.
 * @param civilNoon Noon of some day by the clocks of the zone.
 * @throws {InputError} `invalid-option`.
 */
export function checkSunAgainstClock(civilNoon: Instant, place: Place, zone: string): void {
  const { noon } = sunOn(solarDayAt(civilNoon, place.longitude), place);
  if (Math.abs(noon - civilNoon) <= FARTHEST_NOON_MS) return;
  const hours = ((noon - civilNoon) / HOUR_MS).toFixed(1);
  throw new InputError(
    "invalid-option",
    `place.longitude is ${place.longitude}, where the sun is highest ${hours} hours from noon by the clocks of ${zone}; give the zone of the place, and its longitude with east positive.`,
    { path: ["place", "longitude"], value: place.longitude },
  );
}
