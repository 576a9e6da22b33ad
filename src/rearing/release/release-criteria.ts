import { InputError, type Wording, finite } from "../../errors.ts";
import type { Sourced } from "../../species/life-cycle.ts";
import { sourced } from "../../species/sourced.ts";

/** What makes an hour fit for release; each limit with where it comes from. */
export interface ReleaseCriteria {
  /** Lowest air temperature of an hour that is warm enough, °C. */
  readonly warm: Sourced;
  /** From here up to `sunOnlyBelow` an hour is warm enough only in the sun; below, not even then. °C. */
  readonly sunOnlyFrom: Sourced;
  /** Below this an hour is warm enough only in the sun, °C. */
  readonly sunOnlyBelow: Sourced;
  /** Below this there is no release, whatever the other limits are set to, °C. */
  readonly neverBelow: Sourced;
  /** The sun counts as shining up to so much cloud, % of the sky. */
  readonly sunnyCloud: Sourced;
  /** Strongest wind of an hour that is calm, m/s. */
  readonly wind: Sourced;
  /** Most rain of an hour that is dry, mm. */
  readonly rain: Sourced;
  /** Highest chance of rain of an hour that counts as dry, %. */
  readonly rainChance: Sourced;
  /** Hours after the hour of release that have to be dry too, a whole number. */
  readonly fairHours: Sourced;
  /** Least time from the end of the hour of release to sunset, hours. */
  readonly sunLeft: Sourced;
  /** Least time from emergence to the begin of the hour of release, hours. */
  readonly shortestHold: Sourced;
  /** Most time from emergence to the end of the hour of release, hours. */
  readonly longestHold: Sourced;
}

const practice = (source: string): ((value: number) => Sourced) =>
  sourced("common practice, no source", source);

const MASTERS =
  "Masters, Malcolm & Brower 1988, Ecology 69:458-467, monarchs, abstract read, volume and pages from memory";

/**
 * The limits that are used unless others are given. Most are common practice; none is a law of nature. To
 * change one, spread this object and replace it.
 * @example
 * RELEASE_CRITERIA.warm.value // → 15
 * RELEASE_CRITERIA.wind.mark // → "common practice, no source"
 */
export const RELEASE_CRITERIA: ReleaseCriteria = Object.freeze({
  warm: practice("keepers ask for air above 15 or 16 °C")(15),
  sunOnlyFrom: sourced(
    "derived",
    `12.7 °C, the lower end of the thoracic temperatures at which flight begins, rounded up; ${MASTERS}`,
  )(13),
  sunOnlyBelow: sourced(
    "read",
    `upper end of the thoracic temperatures at which flight begins; ${MASTERS}`,
  )(16),
  neverBelow: sourced(
    "derived",
    `basking in the sun reached the flight threshold from air of 9 °C, rounded up; ${MASTERS}`,
  )(10),
  sunnyCloud: practice("up to half of the sky under cloud")(50),
  wind: practice("no published limit for release is known; a gentle breeze, to be set by the user")(5),
  rain: practice("no rain at all")(0),
  rainChance: practice("forecasts are seldom at 0 %; one chance in five at most")(20),
  fairHours: practice("keepers ask for at least 4 hours of fair weather ahead")(4),
  sunLeft: practice("keepers ask for at least 3 hours of sun")(3),
  shortestHold: practice(
    "wings are said to harden in 1 to 2 h (Monarch Watch help page, read); 4 h leaves a margin",
  )(4),
  longestHold: practice("about a day; adults are said to need no food on their first day")(24),
});

/** What each limit may be. */
const RANGES: Readonly<Record<keyof ReleaseCriteria, readonly [low: number, high: number, unit: string]>> = {
  warm: [-60, 60, "°C"],
  sunOnlyFrom: [-60, 60, "°C"],
  sunOnlyBelow: [-60, 60, "°C"],
  neverBelow: [-60, 60, "°C"],
  sunnyCloud: [0, 100, "%"],
  wind: [0, 90, "m/s"],
  rain: [0, 400, "mm"],
  rainChance: [0, 100, "%"],
  fairHours: [0, 48, "hours, a whole number"],
  sunLeft: [0, 24, "hours"],
  shortestHold: [0, 72, "hours"],
  longestHold: [0, 72, "hours"],
};

/**
 * The criteria themselves when their numbers make sense together.
 * @throws {InputError} `invalid-number`, `invalid-option`, with the path `criteria`.
 */
export function checkedCriteria(criteria: ReleaseCriteria): ReleaseCriteria {
  const limits: Readonly<Record<string, Sourced | undefined>> = { ...criteria };
  for (const [name, [low, high, unit]] of Object.entries(RANGES)) {
    const limit = limits[name];
    const path = ["criteria", name, "value"];
    const value = finite(limit?.value, path, `from ${low} to ${high} ${unit}`);
    if (value < low || value > high || (name === "fairHours" && !Number.isInteger(value)))
      throw refused(path, value, `from ${low} to ${high} ${unit}`);
  }
  const { sunOnlyFrom, sunOnlyBelow, shortestHold, longestHold } = criteria;
  if (sunOnlyFrom.value > sunOnlyBelow.value) {
    throw refused(
      ["criteria", "sunOnlyFrom", "value"],
      sunOnlyFrom.value,
      `at most sunOnlyBelow, ${sunOnlyBelow.value} °C`,
    );
  }
  // An hour of release has to fit between the two.
  if (shortestHold.value + 1 > longestHold.value) {
    throw refused(
      ["criteria", "longestHold", "value"],
      longestHold.value,
      (name) => `at least an hour more than ${name("shortestHold")}, ${shortestHold.value} hours`,
    );
  }
  return criteria;
}

function refused(path: readonly string[], value: number, mustBe: string | Wording): InputError {
  const wording: Wording = (name) =>
    `${name(path.join("."))} is ${value}; it must be ${typeof mustBe === "string" ? mustBe : mustBe(name)}.`;
  return new InputError("invalid-option", wording, { path, value });
}
