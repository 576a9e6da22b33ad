import { binomialInterval } from "../../cohort/binomial-interval.ts";
import { dayLength } from "../../diurnal/day-length.ts";
import type { Place } from "../../diurnal/place.ts";
import { studentQuantile } from "../../numeric/student-t.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import { type Hemisphere, type SeasonSpan, monthDayAt, referenceDay, seasonDay } from "./season-calendar.ts";
import type { BroodOutlook, DateSpread, LastEggs, SeasonYear, YearShare } from "./season-result.ts";

/** A season with its span, so that its dates can be laid beside those of others. */
export interface PlacedYear {
  readonly span: SeasonSpan;
  readonly year: SeasonYear;
}

/** Dates of several years as the earliest, the middle and the latest; `null` for none. */
export function spreadOf(
  years: readonly PlacedYear[],
  dayOf: (year: SeasonYear) => CivilDay | null | undefined,
  hemisphere: Hemisphere,
): DateSpread | null {
  const places = placesOf(years, dayOf, hemisphere).sort((a, b) => a - b);
  const [earliest, latest] = [places[0], places.at(-1)];
  if (earliest === undefined || latest === undefined) return null;
  return {
    earliest: monthDayAt(earliest, hemisphere),
    middle: monthDayAt(middleOf(places), hemisphere),
    latest: monthDayAt(latest, hemisphere),
  };
}

function placesOf(
  years: readonly PlacedYear[],
  dayOf: (year: SeasonYear) => CivilDay | null | undefined,
  hemisphere: Hemisphere,
): number[] {
  return years.flatMap(({ span, year }) => {
    const day = dayOf(year);
    return day == null ? [] : [seasonDay(day, span, hemisphere)];
  });
}

function middleOf(sorted: readonly number[]): number {
  const half = (sorted.length - 1) / 2;
  return Math.floor(((sorted[Math.floor(half)] ?? 0) + (sorted[Math.ceil(half)] ?? 0)) / 2);
}

/** Each brood over the years. */
export function broodOutlooks(
  years: readonly PlacedYear[],
  options: { readonly hemisphere: Hemisphere; readonly place: Place | null; readonly level: number },
): BroodOutlook[] {
  const { hemisphere, place, level } = options;
  const most = Math.max(0, ...years.map(({ year }) => year.broods.length));
  return Array.from({ length: most }, (_, i): BroodOutlook => {
    const done = years.filter(({ year }) => year.complete > i);
    const middle = middleOf(
      placesOf(done, (year) => year.broods[i]?.adults, hemisphere).sort((a, b) => a - b),
    );
    return {
      number: i + 1,
      ...shareOf(done.length, years.length, level),
      eggs: spreadOf(done, (year) => year.broods[i]?.eggs, hemisphere),
      adults: spreadOf(done, (year) => year.broods[i]?.adults, hemisphere),
      dayLength: place === null || done.length === 0 ? null : lengthAt(middle, place, hemisphere),
    };
  });
}

function lengthAt(place: number, at: Place, hemisphere: Hemisphere): BroodOutlook["dayLength"] {
  const hoursAt = (days: number): number =>
    dayLength(referenceDay(place + days, hemisphere), at.latitude, { longitude: at.longitude });
  return { hours: hoursAt(0), minutesAWeek: (hoursAt(7) - hoursAt(0)) * 60 };
}

/** How sure the prudent date is meant to be. */
const PRUDENT_CHANCE = 0.9;

/** Days shown before the first and after the last date on which a year decides. */
const MARGIN_DAYS = 7;

/**
 * The last eggs that make it, over the years. A year is one trial: eggs of a date made it or not, and what can be
 * said of the coming year is the share of years with its binomial interval. The prudent date is the one place
 * where a distribution is assumed: the years' dates are a sample, so the coming one is Student-distributed around
 * their mean, widened by √(1 + 1/n).
 */
export function lastEggsOver(years: readonly PlacedYear[], hemisphere: Hemisphere, level: number): LastEggs {
  // Infinity: eggs of any date make it; -Infinity: of none.
  const places = years.map(({ span, year }) =>
    year.lastEggs !== null
      ? seasonDay(year.lastEggs, span, hemisphere)
      : year.endsBy === "nothing"
        ? Infinity
        : -Infinity,
  );
  const dated = places.filter(Number.isFinite);
  const [from, to] = [Math.min(...dated) - MARGIN_DAYS, Math.max(...dated) + MARGIN_DAYS];
  const byDate = Array.from({ length: dated.length === 0 ? 0 : to - from + 1 }, (_, i) => ({
    date: monthDayAt(from + i, hemisphere),
    ...shareOf(places.filter((last) => last >= from + i).length, years.length, level),
  }));
  return {
    byDate,
    spread: spreadOf(years, (year) => year.lastEggs, hemisphere),
    prudent: dated.length === years.length ? prudentDate(dated, hemisphere) : null,
  };
}

function prudentDate(places: readonly number[], hemisphere: Hemisphere): LastEggs["prudent"] {
  const count = places.length;
  if (count < 3) return null;
  const mean = places.reduce((sum, one) => sum + one, 0) / count;
  const variance = places.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (count - 1);
  const widened = Math.sqrt(variance * (1 + 1 / count));
  const place = Math.floor(mean + studentQuantile(1 - PRUDENT_CHANCE, count - 1) * widened);
  return { date: monthDayAt(place, hemisphere), chance: PRUDENT_CHANCE };
}

function shareOf(years: number, of: number, level: number): YearShare {
  return { years, of, share: years / of, ...binomialInterval(years, of, { level }) };
}
