import { HOUR_MS, type Instant } from "../../time/zone.ts";
import { type TemperatureUnit, celsiusToFahrenheit } from "../../units.ts";
import type { ReleaseCriteria } from "./release-criteria.ts";
import type { ReleaseReason, WeatherOfHour } from "./release-hour.ts";
import type { SunOfHour } from "./sun-left.ts";
import type { WeatherSlot } from "./weather-slots.ts";
import { type WindUnit, windIn } from "./wind-unit.ts";

/** Common practice, no source: from this far above the limit on, more warmth or more sun no longer counts. */
const FULL_WARMTH = 5;
const FULL_SUN_HOURS = 3;

/** Temperatures and winds that were converted between units may miss a limit by their rounding. */
const SLACK = 1e-9;

/** What an hour is judged by besides its own weather. */
export interface HourSetting {
  readonly criteria: ReleaseCriteria;
  readonly sun: SunOfHour;
  /** The animal may go from here on. */
  readonly heldFrom: Instant;
  /** The hours that begin after this one ends, in order, as far as the weather goes. */
  readonly after: readonly WeatherSlot[];
  readonly units: ReasonUnits;
}

/** Units that reasons are worded in. What they decide does not depend on them. */
export interface ReasonUnits {
  /** Default C. */
  readonly temperature?: TemperatureUnit;
  /** Default m/s. */
  readonly wind?: WindUnit;
}

/** What speaks for and against releasing in an hour, one reason for each aspect. */
export function reasonsOf(slot: WeatherSlot, setting: HourSetting): ReleaseReason[] {
  const { criteria } = setting;
  return [
    holdReason(slot, setting),
    warmthReason(slot.weather, setting),
    windReason(slot.weather, setting),
    rainReason(slot.weather, criteria),
    aheadReason(slot, setting),
    daylightReason(setting.sun, criteria),
  ];
}

/** The smallest margin of an hour that is fit: its weakest point. */
export function scoreOf(reasons: readonly ReleaseReason[]): number {
  return reasons.reduce((least, { margin }) => (margin === null ? least : Math.min(least, margin)), 1);
}

function holdReason({ from }: WeatherSlot, { heldFrom, criteria }: HourSetting): ReleaseReason {
  const hours = criteria.shortestHold.value;
  return from >= heldFrom
    ? reason("hold", "held-long-enough", true, null, `Held for at least ${hours} hours.`)
    : reason("hold", "too-soon", false, null, `Less than ${hours} hours after emergence: the wings harden.`);
}

function warmthReason(weather: WeatherOfHour | null, { criteria, units }: HourSetting): ReleaseReason {
  const degrees = weather?.temperature ?? null;
  if (degrees === null)
    return reason("warmth", "temperature-unknown", null, null, "The temperature is not known.");
  const [never, sunFrom, sunBelow] = [
    criteria.neverBelow.value,
    criteria.sunOnlyFrom.value,
    criteria.sunOnlyBelow.value,
  ];
  const inUnit = (celsius: number): string => degreesTold(celsius, units);
  const air = `The air has ${inUnit(degrees)}`;
  if (below(degrees, never)) {
    const message = `${air}: below ${inUnit(never)} not even the sun warms the animal enough to fly.`;
    return reason("warmth", "far-too-cold", false, null, message);
  }
  const least = Math.max(criteria.warm.value, sunFrom);
  if (below(degrees, least))
    return reason("warmth", "too-cold", false, null, `${air}; at least ${inUnit(least)} are asked for.`);
  const margin = (degrees - least) / FULL_WARMTH;
  if (!below(degrees, sunBelow)) return reason("warmth", "warm", true, margin, `${air}: warm enough to fly.`);
  const cloud = weather?.cloud ?? null;
  const needsSun = `${air}: below ${inUnit(sunBelow)} only sun and calm will do`;
  if (cloud === null)
    return reason("warmth", "sun-unknown", null, null, `${needsSun}, and clouds are not known.`);
  return cloud <= criteria.sunnyCloud.value
    ? reason("warmth", "cool-but-sunny", true, margin, `${needsSun}, and the sun shines.`)
    : reason("warmth", "cool-without-sun", false, null, `${needsSun}, and ${told(cloud)} % is cloud.`);
}

function windReason(weather: WeatherOfHour | null, { criteria, units }: HourSetting): ReleaseReason {
  const limit = criteria.wind;
  const wind = weather?.wind ?? null;
  if (wind === null) return reason("wind", "wind-unknown", null, null, "The wind is not known.");
  const blows = `The wind blows at ${windTold(wind, units)}`;
  return wind <= limit.value + SLACK
    ? reason("wind", "calm", true, marginBelow(wind, limit.value), `${blows}: calm enough.`)
    : reason(
        "wind",
        "windy",
        false,
        null,
        `${blows}; at most ${windTold(limit.value, units)} are asked for.`,
      );
}

function rainReason(weather: WeatherOfHour | null, criteria: ReleaseCriteria): ReleaseReason {
  const dry = isDry(weather, criteria);
  if (weather === null || dry === null)
    return reason("rain", "rain-unknown", null, null, "Whether it rains is not known.");
  const { rain, rainChance } = weather;
  const says = [
    ...(rain === null ? [] : [`${told(rain)} mm of rain`]),
    ...(rainChance === null ? [] : [`a chance of rain of ${told(rainChance)} %`]),
  ].join(" and ");
  if (!dry) return reason("rain", "rain", false, null, `Not dry: ${says}.`);
  const margin = Math.min(
    marginBelow(rain ?? 0, criteria.rain.value),
    marginBelow(rainChance ?? 0, criteria.rainChance.value),
  );
  return reason("rain", "dry", true, margin, `Dry: ${says}.`);
}

function aheadReason({ to }: WeatherSlot, { after, criteria }: HourSetting): ReleaseReason {
  const hours = criteria.fairHours.value;
  const until = to + hours * HOUR_MS;
  const ahead = after.filter(({ from }) => from < until);
  const dry = ahead.map(({ weather }) => isDry(weather, criteria));
  if (dry.includes(false)) {
    const first = ahead[dry.indexOf(false)]?.from ?? to;
    const wait = Math.round((first - to) / HOUR_MS);
    const when = wait === 0 ? "in the next hour" : `within ${wait + 1} hours`;
    return reason("ahead", "rain-ahead", false, null, `Rain is expected ${when} after it.`);
  }
  if (dry.includes(null) || (ahead.at(-1)?.to ?? to) < until) {
    const message = `Whether the ${hours} hours after it stay dry is not known.`;
    return reason("ahead", "ahead-unknown", null, null, message);
  }
  return reason("ahead", "fair-ahead", true, null, `The ${hours} hours after it are dry.`);
}

function daylightReason(sun: SunOfHour, { sunLeft }: ReleaseCriteria): ReleaseReason {
  if (sun.kind === "always-up") return reason("daylight", "daylight", true, 1, "The sun does not set.");
  if (sun.kind === "down") {
    const message = sun.polarNight ? "The sun does not rise." : "It is dark for some or all of the hour.";
    return reason("daylight", "dark", false, null, message);
  }
  const left = `The sun sets ${sun.left.toFixed(1)} hours after it`;
  return sun.left >= sunLeft.value
    ? reason("daylight", "daylight", true, (sun.left - sunLeft.value) / FULL_SUN_HOURS, `${left}.`)
    : reason("daylight", "little-sun-left", false, null, `${left}; at least ${sunLeft.value} are asked for.`);
}

/** Whether an hour is dry by what is given of amount and chance; `null` where neither is. */
function isDry(weather: WeatherOfHour | null, criteria: ReleaseCriteria): boolean | null {
  if (weather === null || (weather.rain === null && weather.rainChance === null)) return null;
  return (weather.rain ?? 0) <= criteria.rain.value && (weather.rainChance ?? 0) <= criteria.rainChance.value;
}

function below(value: number, limit: number): boolean {
  return value < limit - SLACK;
}

/** How far below its limit a value is, as a share of the limit. */
function marginBelow(value: number, limit: number): number {
  return limit === 0 ? 1 : 1 - value / limit;
}

function reason(
  aspect: ReleaseReason["aspect"],
  code: ReleaseReason["code"],
  good: boolean | null,
  margin: number | null,
  message: string,
): ReleaseReason {
  // Rounded, so that units and their rounding do not decide between hours that are alike.
  const within = margin === null ? null : Number(Math.min(1, Math.max(0, margin)).toFixed(6));
  return { aspect, code, good, margin: within, message };
}

function degreesTold(celsius: number, { temperature = "C" }: ReasonUnits): string {
  return temperature === "F" ? `${told(celsiusToFahrenheit(celsius), 1)} °F` : `${told(celsius)} °C`;
}

function windTold(metres: number, { wind = "m/s" }: ReasonUnits): string {
  return `${wind === "m/s" ? told(metres) : told(windIn(metres, wind), 1)} ${wind}`;
}

// What was converted has lost the round numbers that it was given in, and one decimal says enough.
function told(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)));
}
