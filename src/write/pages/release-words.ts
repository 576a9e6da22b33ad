import type { ReleaseCriteria } from "../../rearing/release/release-criteria.ts";
import type { ReleaseHour, ReleaseReasonCode } from "../../rearing/release/release-hour.ts";
import { type WindUnit, windIn } from "../../rearing/release/wind-unit.ts";
import type { Sourced } from "../../species/life-cycle.ts";
import type { TemperatureUnit } from "../../units.ts";
import { degreesText, numberText } from "../layout/number-text.ts";

/** Units to show the weather in. */
export interface ShownUnits {
  readonly unit: TemperatureUnit;
  readonly windUnit: WindUnit;
}

/** What is against an hour, in a few words. */
const AGAINST: Readonly<Partial<Record<ReleaseReasonCode, string>>> = {
  "too-soon": "too soon",
  "far-too-cold": "far too cold",
  "too-cold": "too cold",
  "cool-without-sun": "cool without sun",
  "sun-unknown": "cool, and clouds not known",
  "temperature-unknown": "temperature not known",
  windy: "windy",
  "wind-unknown": "wind not known",
  rain: "rain",
  "rain-unknown": "rain not known",
  "rain-ahead": "rain soon after",
  "ahead-unknown": "rain soon after not known",
  "little-sun-left": "little sun left",
  dark: "dark",
};

/** Why an hour is not fit, such as `windy, rain soon after`; what is known before what is not. */
export function againstHour({ reasons, weather }: ReleaseHour): string {
  const gap = Object.values(weather).every((value) => value === null);
  const refusing = reasons.filter(({ good }) => good === false);
  const open = reasons.filter(({ good, aspect }) => good === null && !(gap && aspect !== "ahead"));
  const words = [...refusing, ...open].flatMap(({ code }) => AGAINST[code] ?? []);
  return (gap ? [...words.filter((word) => !word.endsWith("not known")), "no weather"] : words).join(", ");
}

/** A wind in the unit it is shown in, such as `3.5 m/s`. */
export function windText(metres: number, { windUnit }: ShownUnits): string {
  return `${numberText(windIn(metres, windUnit))} ${windUnit}`;
}

/** Rain as it is known: `0 mm, 10 %`. */
export function rainText({ weather: { rain, rainChance } }: ReleaseHour): string {
  return [
    ...(rain === null ? [] : [`${numberText(rain)} mm`]),
    ...(rainChance === null ? [] : [`${numberText(rainChance)} %`]),
  ].join(", ");
}

/** What counts as fit, a sentence for each limit with how far it can be trusted. */
export function criteriaSentences(criteria: ReleaseCriteria, units: ShownUnits): string[] {
  const degrees = ({ value }: Sourced): string => degreesText(value, units.unit);
  const { warm, sunOnlyFrom, sunOnlyBelow, neverBelow, sunnyCloud, rain, rainChance } = criteria;
  return [
    `warm: at least ${degrees(warm)}${trust(warm)}`,
    `below ${degrees(sunOnlyBelow)} only in sun and calm, below ${degrees(sunOnlyFrom)} not even then${trust(sunOnlyFrom)}`,
    `never below ${degrees(neverBelow)}${trust(neverBelow)}`,
    `sun: at most ${numberText(sunnyCloud.value)} % of the sky is cloud${trust(sunnyCloud)}`,
    `calm: at most ${windText(criteria.wind.value, units)}${trust(criteria.wind)}`,
    `dry: at most ${numberText(rain.value)} mm and a chance of at most ${numberText(rainChance.value)} %${trust(rain)}`,
    `dry hours after it: ${criteria.fairHours.value}${trust(criteria.fairHours)}`,
    `daylight, with at least ${numberText(criteria.sunLeft.value)} hours of sun left${trust(criteria.sunLeft)}`,
    `held for at least ${numberText(criteria.shortestHold.value)} and at most ${numberText(criteria.longestHold.value)} hours${trust(criteria.longestHold)}`,
  ];
}

function trust({ mark, source }: Sourced): string {
  return mark === "common practice, no source" ? ` [${mark}]` : ` [${mark}: ${source}]`;
}
