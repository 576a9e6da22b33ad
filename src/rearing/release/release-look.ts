import type { Place } from "../../diurnal/place.ts";
import { HOUR_MS, type Instant, formatInstant } from "../../time/zone.ts";
import type { HourlyWeather } from "./hourly-weather.ts";
import { type ReasonUnits, reasonsOf, scoreOf } from "./judge-hour.ts";
import type { ReleaseCriteria } from "./release-criteria.ts";
import type { ReleaseHour } from "./release-hour.ts";
import type { ReleaseAbsence, ReleaseLook } from "./release-plan.ts";
import { sunOver } from "./sun-left.ts";
import { slotsBetween, spanOf } from "./weather-slots.ts";

/** What hours are looked at with. */
export interface ReleaseSetting {
  readonly weather: HourlyWeather;
  readonly criteria: ReleaseCriteria;
  readonly place: Place;
  readonly zone: string;
  readonly units: ReasonUnits;
}

const UNKNOWN = { temperature: null, wind: null, rain: null, rainChance: null, cloud: null } as const;

/**
 * Every whole hour between two instants, judged and ranked.
 * @param heldFrom Hours that begin before it are refused.
 */
export function lookAt(from: Instant, to: Instant, heldFrom: Instant, setting: ReleaseSetting): ReleaseLook {
  const { weather, zone } = setting;
  const hours = ranked(judged(from, to, heldFrom, setting));
  const best = hours.find(({ rank }) => rank === 1) ?? null;
  const span = spanOf(weather);
  // Whether a whole hour before the weather's first or after its last would lie in between.
  const beginsLater = span.from - HOUR_MS >= from;
  const endsFirst = span.to + HOUR_MS <= to;
  return {
    from: formatInstant(from, zone),
    to: formatInstant(to, zone),
    hours,
    best,
    absence: best === null ? absenceOf(hours, { beginsLater, endsFirst }, setting) : null,
    complete: !beginsLater && !endsFirst && !hours.some(({ verdict }) => verdict === "not-judged"),
  };
}

function judged(
  from: Instant,
  to: Instant,
  heldFrom: Instant,
  { weather, criteria, place, zone, units }: ReleaseSetting,
): ReleaseHour[] {
  // The hours ahead of the last one are needed too.
  const slots = slotsBetween(weather, from, to + (criteria.fairHours.value + 1) * HOUR_MS);
  return slots.flatMap((slot, i): ReleaseHour[] => {
    if (slot.to > to) return [];
    const sun = sunOver(slot.from, slot.to, place);
    const reasons = reasonsOf(slot, { criteria, sun, heldFrom, after: slots.slice(i + 1), units });
    const good = reasons.map((one) => one.good);
    const verdict = good.includes(false) ? "refused" : good.includes(null) ? "not-judged" : "fit";
    return [
      {
        from: formatInstant(slot.from, zone),
        to: formatInstant(slot.to, zone),
        verdict,
        rank: null,
        score: verdict === "fit" ? scoreOf(reasons) : null,
        weather: slot.weather ?? UNKNOWN,
        sunLeftHours: sun.kind === "up" ? sun.left : null,
        reasons,
      },
    ];
  });
}

/** Hours with their ranks: the greater score first, of equals the earlier. */
function ranked(hours: readonly ReleaseHour[]): ReleaseHour[] {
  const order = hours
    .map(({ score }, index) => ({ score, index }))
    .filter(({ score }) => score !== null)
    .sort((a, b) => (b.score ?? 0) - (a.score ?? 0) || a.index - b.index)
    .map(({ index }) => index);
  return hours.map((hour, i) => ({ ...hour, rank: hour.score === null ? null : order.indexOf(i) + 1 }));
}

function absenceOf(
  hours: readonly ReleaseHour[],
  { beginsLater, endsFirst }: { readonly beginsLater: boolean; readonly endsFirst: boolean },
  { weather, zone }: ReleaseSetting,
): ReleaseAbsence {
  const span = spanOf(weather);
  const shown = (instant: Instant): string => formatInstant(instant, zone).slice(0, 16).replace("T", " ");
  if (endsFirst) {
    const end = shown(span.to);
    return hours.length === 0
      ? {
          reason: "beyond-weather",
          message: `The weather ends at ${end}, before this time; later weather is needed.`,
        }
      : {
          reason: "weather-ends",
          message: `No hour fits up to ${end}, where the weather ends; later hours are not judged.`,
        };
  }
  if (beginsLater) {
    const begin = shown(span.from);
    return hours.length === 0
      ? {
          reason: "before-weather",
          message: `The weather begins at ${begin}, after this time; earlier weather is needed.`,
        }
      : {
          reason: "weather-begins-later",
          message: `No hour fits from ${begin} on, where the weather begins; earlier hours are not judged.`,
        };
  }
  const open = hours.filter(({ verdict }) => verdict === "not-judged").length;
  return open > 0
    ? {
        reason: "not-judged",
        message: `No hour is known to fit; ${open} of ${hours.length} could not be judged for what is not known of them.`,
      }
    : { reason: "nothing-fits", message: "No hour fits: each is refused for at least one reason." };
}
