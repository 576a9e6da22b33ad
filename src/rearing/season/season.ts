import { checkedLevel } from "../../cohort/binomial-interval.ts";
import { knownCurveMethod } from "../../diurnal/method.ts";
import { checkedPlace } from "../../diurnal/place.ts";
import { InputError, finite, shown } from "../../errors.ts";
import { given } from "../../given.ts";
import { checkLifeCycle } from "../../species/check-life-cycle.ts";
import type { Sourced } from "../../species/life-cycle.ts";
import { lastDay } from "../../temperature/daily.ts";
import { gapInRecord, gapsOf } from "../../temperature/gaps.ts";
import type { DailyTemperatures } from "../../temperature/series.ts";
import { addDays, dayNumber } from "../../time/civil-day.ts";
import { knownZone } from "../../time/zone.ts";
import { type Hemisphere, checkedMonthDay, seasonOf } from "./season-calendar.ts";
import { SEASON_LIMITS, preLayingOf } from "./season-limits.ts";
import { seasonNotes } from "./season-notes.ts";
import { type PlacedYear, broodOutlooks, lastEggsOver, spreadOf } from "./season-over-years.ts";
import type { SeasonInput, SeasonOutlook } from "./season-result.ts";
import { type YearOptions, seasonYear } from "./season-year.ts";

/**
 * What past years say of a place's season: when each brood of a species is possible, how many there are, and until
 * when eggs can be laid that still become adult before frost or cold ends the season.
 *
 * Each year is one trial. Broods follow the middle animal; the last eggs are those of which `share` make it, by the
 * exact distribution of the forecast on that year's temperatures. Over the years, shares are counts with binomial
 * intervals.
 * @throws {InputError} `missing-temperature` for a record with gaps, `no-temperatures` for one that covers no season,
 *   and for anything else in the input that cannot be used.
 */
export function season(input: SeasonInput): SeasonOutlook {
  given(input, ["input"], "an object with lifeCycle and temperatures", "lifeCycle", "temperatures");
  const { lifeCycle, temperatures, hemisphere: asked } = input;
  const { options, level, preLaying } = checkedInput(input);
  const { hemisphere, by } = hemisphereOf(asked, options.place?.latitude, temperatures);
  const placed: PlacedYear[] = [];
  const leftOut: string[] = [];
  for (const span of spansOf(temperatures, hemisphere)) {
    const covered = span.from >= temperatures.start && span.turn <= lastDay(temperatures);
    const year = covered ? seasonYear(span, options) : null;
    if (year === null) leftOut.push(span.label);
    else placed.push({ span, year });
  }
  if (placed.length === 0) throw tooShort(temperatures, hemisphere);
  const outlook: Omit<SeasonOutlook, "notes"> = {
    species: lifeCycle.species,
    latinName: lifeCycle.latinName,
    commonName: lifeCycle.commonName,
    hemisphere,
    milestone: options.milestone,
    share: options.share,
    level,
    frostBelow: options.frostBelow,
    preLaying,
    firstEggsBy:
      options.firstEggs === undefined
        ? "temperature"
        : typeof options.firstEggs === "string"
          ? "date"
          : "degree-days",
    firstEggs: spreadOf(placed, (year) => year.firstEggs, hemisphere),
    years: placed.map(({ year }) => year),
    leftOut,
    broods: broodOutlooks(placed, { hemisphere, place: options.place, level }),
    lastEggs: lastEggsOver(placed, hemisphere, level),
  };
  return { ...outlook, notes: seasonNotes(outlook, lifeCycle, by) };
}

function checkedInput(input: SeasonInput): {
  options: YearOptions;
  level: number;
  preLaying: Sourced | null;
} {
  const { lifeCycle, temperatures, firstEggs, preLayingDays, milestone = "adult", share = 0.9 } = input;
  checkLifeCycle(lifeCycle);
  if (firstEggs !== undefined && typeof firstEggs !== "string")
    given(firstEggs, ["firstEggs"], "a month and a date such as 05-20, or an object with degreeDays");
  const [gap] = gapsOf(temperatures);
  if (gap !== undefined) throw gapInRecord(gap);
  if (!(share > 0 && share < 1)) {
    throw new InputError(
      "invalid-option",
      `share is ${shown(share)}; it must be a share of the animals above 0 and below 1, such as 0.9.`,
      { path: ["share"], value: share },
    );
  }
  const own = preLayingDays === undefined ? null : atLeastZero(preLayingDays, "preLayingDays", "days");
  const preLaying: Sourced | null =
    own === null
      ? preLayingOf(lifeCycle)
      : { value: own, mark: "common practice, no source", source: "given by you" };
  const { frostBelow = SEASON_LIMITS.frostBelow.value } = input;
  const options: YearOptions = {
    lifeCycle,
    temperatures,
    method: knownCurveMethod(input.method ?? "single-sine"),
    place: input.place == null ? null : checkedPlace(input.place),
    zone: input.zone == null ? null : knownZone(input.zone),
    firstEggs:
      typeof firstEggs === "string"
        ? checkedMonthDay(firstEggs, ["firstEggs"])
        : firstEggs === undefined
          ? undefined
          : { degreeDays: atLeastZero(firstEggs.degreeDays, "firstEggs.degreeDays", "degree-days") },
    preLaying: preLaying?.value ?? null,
    frostBelow: frostBelow === null ? null : finite(frostBelow, ["frostBelow"], "a temperature in °C"),
    milestone,
    share,
  };
  return { options, level: checkedLevel(input.level), preLaying };
}

function atLeastZero(value: number, name: string, what: string): number {
  if (finite(value, [name], `a number of ${what}`) >= 0) return value;
  throw new InputError("invalid-option", `${name} is ${value}; it must be 0 ${what} or more.`, {
    path: [name],
    value,
  });
}

/** The hemisphere as given, by the place, or by the warmer half of the record's years. */
function hemisphereOf(
  asked: Hemisphere | undefined,
  latitude: number | undefined,
  record: DailyTemperatures,
): { hemisphere: Hemisphere; by: "given" | "place" | "record" } {
  if (asked !== undefined) {
    if (["north", "south"].includes(asked)) return { hemisphere: asked, by: "given" };
    throw new InputError("invalid-option", `hemisphere is ${shown(asked)}; it must be north or south.`, {
      path: ["hemisphere"],
      value: asked,
    });
  }
  if (latitude !== undefined && latitude !== 0)
    return { hemisphere: latitude > 0 ? "north" : "south", by: "place" };
  const meanOf = (months: readonly string[]): number => {
    const sums = Array.from(record.min, (low, i) => ({
      day: addDays(record.start, i),
      sum: low + (record.max[i] ?? 0),
    }))
      .filter(({ day }) => months.includes(day.slice(5, 7)))
      .map(({ sum }) => sum);
    return sums.reduce((total, one) => total + one, 0) / Math.max(1, sums.length);
  };
  const northern = meanOf(["06", "07", "08"]) >= meanOf(["12", "01", "02"]);
  return { hemisphere: northern ? "north" : "south", by: "record" };
}

function spansOf(record: DailyTemperatures, hemisphere: Hemisphere): ReturnType<typeof seasonOf>[] {
  const [first, last] = [Number(record.start.slice(0, 4)), Number(lastDay(record).slice(0, 4))];
  return Array.from({ length: last - first + 2 }, (_, i) => seasonOf(first - 1 + i, hemisphere)).filter(
    // Only seasons of which the record holds some summer are worth a word.
    ({ turn, from }) => turn >= record.start && dayNumber(from) < dayNumber(lastDay(record)),
  );
}

function tooShort(record: DailyTemperatures, hemisphere: Hemisphere): InputError {
  const { from } = seasonOf(2000, hemisphere);
  return new InputError(
    "no-temperatures",
    `the temperatures run from ${record.start} to ${lastDay(record)} and hold no whole season; at least one is needed, from ${from.slice(5)} until frost or lasting cold.`,
    { path: ["temperatures"], value: record.start },
  );
}
