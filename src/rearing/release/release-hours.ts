import { givenLifeCycle } from "../../species/given-life-cycle.ts";
import { type Place, checkedPlace } from "../../diurnal/place.ts";
import { checkSunAgainstClock } from "../../diurnal/sun-against-clock.ts";
import { InputError, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import { checkLifeCycle } from "../../species/check-life-cycle.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import { DAY_MS, HOUR_MS, civilDayOf, formatInstant, knownZone, noonOf } from "../../time/zone.ts";
import { type CautionId, cautionsFor } from "../cautions.ts";
import { type Emergence, type Emergences, emergencesOf, forecastOf, wereSeen } from "./emergences.ts";
import { type HourlyWeather, hourlyWeather } from "./hourly-weather.ts";
import type { ReasonUnits } from "./judge-hour.ts";
import { adviceFor, bestOf } from "./release-advice.ts";
import { RELEASE_CRITERIA, type ReleaseCriteria, checkedCriteria } from "./release-criteria.ts";
import { type ReleaseSetting, lookAt } from "./release-look.ts";
import { releaseNotes } from "./release-notes.ts";
import type { EmergencePlan, ReleasePlan } from "./release-plan.ts";
import { type AdultCounts, adultCounts } from "./unfit-adults.ts";
import { windIn } from "./wind-unit.ts";

/** What {@link releaseHours} needs besides emergences and weather. */
export interface ReleaseOptions {
  /** The species: its `handling` decides whether release is planned at all. */
  readonly lifeCycle: LifeCycle;
  /** Where the animals are: daylight follows from it. */
  readonly place: Place;
  /** IANA zone of the place. Default: that of the forecast. */
  readonly zone?: string | null;
  /** Default {@link RELEASE_CRITERIA}. */
  readonly criteria?: ReleaseCriteria;
  /** How many healthy adults there are, where that is known otherwise. */
  readonly healthy?: number;
  /** How many adults are crumpled, weak or known to be infected, besides those marked in a list. Default 0. */
  readonly unfit?: number;
  /** Units that the reasons are worded in; numbers stay in °C and m/s. Default C and m/s. */
  readonly units?: ReasonUnits;
}

/** Why a species is not planned for release, or `null`. `null` is no permission: see {@link cautionsFor}. */
export function releaseRuledOut(lifeCycle: LifeCycle): ReleasePlan["ruledOut"] {
  givenLifeCycle(lifeCycle);
  const cautions = cautionsFor(lifeCycle);
  const textOf = (wanted: CautionId): string | undefined => cautions.find(({ id }) => id === wanted)?.text;
  for (const code of ["never-release", "not-native"] as const) {
    const message = textOf(code);
    if (message !== undefined) return { code, message };
  }
  return null;
}

/**
 * The hours that are fit for releasing adults, for each emergence, best first by rank, and every other hour with
 * the reasons against it.
 *
 * An hour is fit when the animal was held long enough and not too long, the air is warm enough, the wind calm,
 * the hour and those after it dry, the sun up with enough of it left. All of the hour must be: hold and sun are
 * counted from its worse end. Whatever is known to be wrong refuses it; otherwise anything unknown leaves it not
 * judged. A fit hour is worth its weakest point, the smallest of its margins; of equals the earlier comes first.
 *
 * Species that are never released or not native everywhere get no hours, and neither do adults that are unfit.
 * Nothing here is a permission.
 * @param emergences A forecast, the window in which adults emerge, or emergences that were seen.
 * @param weather Hours of weather; what lies beyond them is not guessed.
 * @returns Plain data.
 * @throws {InputError} `zone-needed`, `invalid-zone`; `invalid-number` or `invalid-option` for the place, the
 *   criteria and the counts; `invalid-found`, `invalid-instant`, `invalid-day` for the emergences; those of
 *   {@link hourlyWeather} and of the life cycle; `unknown-unit`.
 * @example
 * releaseHours(
 *   [{ at: "2026-07-05T06:30" }],
 *   hourlyWeather({
 *     at: Array.from({ length: 30 }, (_, i) => Date.UTC(2026, 6, 5, 10 + i)),
 *     temperature: Array(30).fill(24),
 *     wind: Array(30).fill(2),
 *     rainChance: Array(30).fill(0),
 *   }),
 *   { lifeCycle: danausPlexippus, place: { latitude: 41, longitude: -74 }, zone: "America/New_York" },
 * ).emergences[0]?.best?.from // → "2026-07-05T11:00:00-04:00"
 */
export function releaseHours(
  emergences: Emergences,
  weather: HourlyWeather,
  options: ReleaseOptions,
): ReleasePlan {
  given(weather, ["weather"], "hourly weather, as hourlyWeather makes it", "at", "temperature", "wind");
  given(options, ["options"], "an object of options", "lifeCycle", "place");
  const lifeCycle = checkLifeCycle(options.lifeCycle);
  if (!wereSeen(emergences))
    given(emergences, ["emergences"], "a forecast, the window of the emergence, or a list of emergences");
  const forecast = forecastOf(emergences);
  if (forecast !== null && forecast.species !== lifeCycle.species) {
    throw new InputError(
      "invalid-option",
      `lifeCycle is that of ${lifeCycle.species}, but the forecast is of ${forecast.species}; give the same to both.`,
      { path: ["lifeCycle", "species"], value: lifeCycle.species },
    );
  }
  const zone = neededZone(options.zone ?? forecast?.zone ?? null);
  const place = checkedPlace(options.place);
  const criteria = checkedCriteria(options.criteria ?? RELEASE_CRITERIA);
  const setting: ReleaseSetting = {
    weather: hourlyWeather(weather),
    criteria,
    place,
    zone,
    units: checkedUnits(options.units),
  };
  checkSun(setting);
  const all = emergencesOf(emergences, zone);
  const counts = adultCounts(all, {
    seen: wereSeen(emergences),
    found: forecast?.found.count ?? null,
    healthy: options.healthy,
    unfit: options.unfit,
  });
  const ruledOut = releaseRuledOut(lifeCycle) ?? noneHealthy(counts);
  const plans = ruledOut === null ? all.filter((one) => !one.unfit).map((one) => planOf(one, setting)) : [];
  return {
    species: lifeCycle.species,
    latinName: lifeCycle.latinName,
    commonName: lifeCycle.commonName,
    zone,
    place: { latitude: place.latitude, longitude: place.longitude },
    ruledOut,
    cautions: cautionsFor(lifeCycle),
    criteria,
    healthy: counts.healthy,
    unfit: counts.unfit,
    emergences: plans,
    notes: [
      ...(ruledOut === null ? releaseNotes(plans, setting, lifeCycle) : []),
      ...(forecast?.notes ?? []),
    ],
  };
}

function planOf(emergence: Emergence, setting: ReleaseSetting): EmergencePlan {
  const { which, animal, count, at } = emergence;
  const { criteria, zone } = setting;
  if (at === null) {
    const absence = { reason: "emergence-unknown", message: emergence.unknown } as const;
    const nothing = { emergesAt: null, heldFrom: null, firstDay: null, nextDay: null, best: null };
    return { which, animal, count, ...nothing, absence, advice: [] };
  }
  const heldFrom = at + criteria.shortestHold.value * HOUR_MS;
  const dayOver = at + criteria.longestHold.value * HOUR_MS;
  const firstDay = lookAt(at, dayOver, heldFrom, setting);
  const nextDay = firstDay.best === null ? lookAt(dayOver, dayOver + DAY_MS, heldFrom, setting) : null;
  return {
    which,
    animal,
    count,
    emergesAt: formatInstant(at, zone),
    heldFrom: formatInstant(heldFrom, zone),
    firstDay,
    nextDay,
    ...bestOf(firstDay, nextDay),
    advice: adviceFor(firstDay, nextDay, dayOver, zone),
  };
}

function noneHealthy({ healthy }: AdultCounts): ReleasePlan["ruledOut"] {
  return healthy === 0 ? { code: "none-healthy", message: "No healthy adult is left to release." } : null;
}

function neededZone(zone: string | null): string {
  if (zone !== null) return knownZone(zone);
  throw new InputError(
    "zone-needed",
    "release hours follow the sun, but no time zone was given; name the zone that the place is in, such as America/New_York.",
    { path: ["zone"], value: zone },
  );
}

function checkedUnits(units: ReasonUnits = {}): ReasonUnits {
  given(units, ["units"], "an object with temperature and wind");
  const { temperature = "C", wind = "m/s" } = units;
  if (!["C", "F"].includes(temperature)) {
    const path = ["units", "temperature"];
    throw new InputError("unknown-unit", `${path.join(".")} is ${shown(temperature)}; it must be C or F.`, {
      path,
      value: temperature,
    });
  }
  windIn(0, wind);
  return { temperature, wind };
}

function checkSun({ weather, place, zone }: ReleaseSetting): void {
  const day = civilDayOf(weather.at[0] ?? 0, zone);
  checkSunAgainstClock(noonOf(day, zone), place, zone);
}
