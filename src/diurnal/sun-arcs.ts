import { InputError } from "../errors.ts";
import { DAY_MS, HOUR_MS, type Instant, type Zone } from "../time/zone.ts";
import { type Arc, DrawnArc, arcTemperature } from "./arc.ts";
import type { DayPlace } from "./day-arcs.ts";
import type { SunMethod } from "./method.ts";
import { type Place, checkedPlace } from "./place.ts";
import { checkSunAgainstClock } from "./sun-against-clock.ts";
import { type SunDay, solarDayAt, sunOn } from "./sun.ts";

/** Lowest and highest temperature of a day, °C. */
export interface Extremes {
  readonly min: number;
  readonly max: number;
}

/** A day with its neighbours; `null` where a neighbour is not known, and the day's own values stand in. */
export interface SunContext {
  readonly previous: Extremes | null;
  readonly today: Extremes;
  readonly next: Extremes | null;
}

/**
 * How long after the sun's highest the `sunrise-sine` has its maximum, hours. Two in the afternoon by the
 * sun is the hour of de Wit et al. (1978), from memory; common practice otherwise.
 */
const SINE_LAG_MS = 2 * HOUR_MS;

// Coefficients of Parton, W. J. & Logan, J. A. (1981), Agric. Meteorol. 23, 205-216, for air at 150 cm: these
// two and the volume and pages from memory, the night's 2.2 in arc.ts read second-hand. Values of the curve
// computed elsewhere with the same three agree with this one.
/** How much wider than the day half the sine's period is, on either side, a: hours. */
const SINE_WIDER_MS = 1.86 * HOUR_MS;
/** How far from sunrise the minimum is, c: before it. */
const MINIMUM_AFTER_SUNRISE_MS = -0.17 * HOUR_MS;

/**
 * The shortest night of an exponential. Our own choice: towards the polar day the sine is still high at
 * sunset, and what is left of the night would be a fall as steep as a cliff.
 */
const SHORTEST_NIGHT_MS = 4 * HOUR_MS;

/** What a place's sun makes of one day, between two minima. */
interface Turns {
  readonly lowest: Instant;
  readonly highest: Instant;
  /** Where the night's decay begins; `null` where the day is two half waves. */
  readonly sunset: Instant | null;
  readonly nextLowest: Instant;
}

/**
 * The temperature curve that a method draws through a civil day at a place, with some of the nights on
 * either side: what lies outside the civil day is for the caller to cut off.
 *
 * Without sunrise and sunset there is no night to speak of. Under the midnight sun the minimum is when the
 * sun is lowest; in the polar night it is half a day before the maximum. On these days, and where the night
 * is shorter than four hours or the maximum would come after sunset, both methods draw half waves.
 */
export function sunArcs(
  method: SunMethod,
  days: SunContext,
  { from, origin }: DayPlace,
  place: Place,
): Arc[] {
  const solarDay = solarDayAt(from + DAY_MS / 2, place.longitude);
  const { today, previous, next } = days;
  return [
    { day: previous ?? today, nextMin: today.min, offset: -1 },
    { day: today, nextMin: next?.min ?? today.min, offset: 0 },
    // Far north the sun can rise before midnight: the next day's rise may belong to this one.
    { day: next ?? today, nextMin: (next ?? today).min, offset: 1 },
  ].flatMap(({ day, nextMin, offset }) => {
    const turns = turnsOf(method, solarDay + offset, place);
    return roundOf(day, nextMin, turns, origin).map((arc) => new DrawnArc(arc));
  });
}

/** Whether a method's own shape, not the half waves, is drawn on a civil day that begins at an instant. */
export function isDrawnBySun(method: SunMethod, midnight: Instant, place: Place): boolean {
  const solarDay = solarDayAt(midnight + DAY_MS / 2, place.longitude);
  return method === "sunrise-sine"
    ? sunOn(solarDay, place).kind === "rises"
    : turnsOf(method, solarDay, place).sunset !== null;
}

/**
 * The place itself when a curve can be anchored at its sun.
 * @param midnight When the first civil day to be drawn begins.
 * @throws {InputError} `place-needed`; `zone-needed`, because a clock without a zone cannot be set beside
 *   the sun; `invalid-option` where the sun is highest far from noon by the zone's clocks.
 */
export function placeForSun(method: SunMethod, place: Place | null, zone: Zone, midnight: Instant): Place {
  if (place === null) {
    throw new InputError(
      "place-needed",
      (name) =>
        `the method ${method} needs to know when the sun rises; give the place as ${name("latitude")} and ${name("longitude")}, or take a method that needs no place, such as single-sine.`,
      { path: ["place"], value: place },
    );
  }
  checkedPlace(place);
  if (zone === null) {
    throw new InputError(
      "zone-needed",
      (name) =>
        `the method ${method} sets the clock beside the sun, but no time zone was given; name the zone that the dates are in with ${name("zone")}, such as America/New_York.`,
      { path: ["zone"], value: zone },
    );
  }
  checkSunAgainstClock(midnight + DAY_MS / 2, place, zone);
  return place;
}

function turnsOf(method: SunMethod, solarDay: number, place: Place): Turns {
  const sun = sunOn(solarDay, place);
  const lowest = lowestOf(method, sun);
  const highest = highestOf(method, sun);
  const nextLowest = lowestOf(method, sunOn(solarDay + 1, place));
  const night =
    method === "sunrise-exponential" &&
    sun.kind === "rises" &&
    sun.sunset >= highest &&
    nextLowest - sun.sunset >= SHORTEST_NIGHT_MS;
  return { lowest, highest, sunset: night ? sun.sunset : null, nextLowest };
}

function lowestOf(method: SunMethod, sun: SunDay): Instant {
  switch (sun.kind) {
    case "rises":
      return sun.sunrise + (method === "sunrise-exponential" ? MINIMUM_AFTER_SUNRISE_MS : 0);
    case "always-up":
      return sun.noon - DAY_MS / 2;
    case "always-down":
      return highestOf(method, sun) - DAY_MS / 2;
  }
}

function highestOf(method: SunMethod, sun: SunDay): Instant {
  if (method === "sunrise-sine") return sun.noon + SINE_LAG_MS;
  const middle = sun.kind === "rises" ? (sun.sunrise + sun.sunset) / 2 : sun.noon;
  return middle + MINIMUM_AFTER_SUNRISE_MS + SINE_WIDER_MS;
}

/** The curve from a day's minimum to the next. */
function roundOf({ min, max }: Extremes, nextMin: number, turns: Turns, origin: Arc["origin"]): Arc[] {
  const { lowest, highest, sunset, nextLowest } = turns;
  if (sunset === null) {
    return [
      { shape: "wave", start: min, end: max, u0: 0, u1: 1, from: lowest, to: highest, origin },
      { shape: "wave", start: max, end: nextMin, u0: 0, u1: 1, from: highest, to: nextLowest, origin },
    ];
  }
  // A quarter of a sine that begins at its mean is half of a cosine's half wave from as far below.
  const below = min - (max - min);
  const falling: Arc = {
    shape: "wave",
    start: max,
    end: below,
    u0: 0,
    // The sine's half period is twice the way from the minimum to the maximum.
    u1: (sunset - highest) / (2 * (highest - lowest)),
    from: highest,
    to: sunset,
    origin,
  };
  const dusk = arcTemperature(falling, falling.u1);
  return [
    { shape: "wave", start: below, end: max, u0: 0.5, u1: 1, from: lowest, to: highest, origin },
    falling,
    { shape: "decay", start: dusk, end: nextMin, u0: 0, u1: 1, from: sunset, to: nextLowest, origin },
  ];
}
