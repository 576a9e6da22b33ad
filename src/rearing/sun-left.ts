import type { Place } from "../diurnal/place.ts";
import { solarDayAt, sunOn } from "../diurnal/sun.ts";
import type { Instant } from "../time/zone.ts";
import { InputError } from "../errors.ts";
import { HOUR_MS } from "./hourly-weather.ts";

/** The sun over one hour. */
export type SunOfHour =
  /** It is up throughout, and sets so many hours after the hour's end. */
  | { readonly kind: "up"; readonly left: number }
  /** The polar day: it does not set. */
  | { readonly kind: "always-up" }
  /** It is down for some or all of the hour; `polarNight` where it does not rise that day. */
  | { readonly kind: "down"; readonly polarNight: boolean };

/** The sun over the time between two instants, an hour or less. */
export function sunOver(from: Instant, to: Instant, place: Place): SunOfHour {
  const sun = sunOn(solarDayAt((from + to) / 2, place.longitude), place);
  if (sun.kind === "always-up") return { kind: "always-up" };
  if (sun.kind !== "rises") return { kind: "down", polarNight: true };
  return sun.sunrise <= from && to <= sun.sunset
    ? { kind: "up", left: (sun.sunset - to) / HOUR_MS }
    : { kind: "down", polarNight: false };
}

/** Clocks of a place's own zone are never further from the sun. */
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
