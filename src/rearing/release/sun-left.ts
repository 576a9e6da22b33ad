import type { Place } from "../../diurnal/place.ts";
import { solarDayAt, sunOn } from "../../diurnal/sun.ts";
import { HOUR_MS, type Instant } from "../../time/zone.ts";

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
