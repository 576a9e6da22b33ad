import {
  type Hemisphere,
  type MonthDay,
  dayInSeason,
  referenceDay,
  seasonDay,
  seasonOf,
} from "../../rearing/season/season-calendar.ts";
import { greatest, least } from "../../numeric/extremes.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import { DAY_MS } from "../../time/zone.ts";
import { noonOf, shortDate } from "../dates.ts";

/** The year in which seasons are laid upon each other: its own year for the north, the one before for the south. */
const REFERENCE = { north: 2000, south: 1999 } as const;

/** A month and date on the axis that all seasons share. */
export function dateOnAxis(date: MonthDay, hemisphere: Hemisphere): Date {
  return noonOf(dayInSeason(date, seasonOf(REFERENCE[hemisphere], hemisphere)));
}

/** A day of a season on the same axis. @param label Label of its season, such as `2014`. */
export function dayOnAxis(day: CivilDay, label: string, hemisphere: Hemisphere): Date {
  const season = seasonOf(Number(label.slice(0, 4)), hemisphere);
  return noonOf(referenceDay(seasonDay(day, season, hemisphere), hemisphere));
}

/** First and last of points on that axis; without any, those of a season of the north. */
export function spanOf(
  points: readonly { readonly x: Date }[],
  [first, last]: readonly [MonthDay, MonthDay],
): [Date, Date] {
  if (points.length === 0) return [dateOnAxis(first, "north"), dateOnAxis(last, "north")];
  const times = points.map(({ x }) => Number(x));
  return [new Date(least(times)), new Date(greatest(times))];
}

/** Firsts of months from one day to another, as close as their labels have room. */
export function monthTicks(from: Date, to: Date, pixels: number): Date[] {
  const count = Math.ceil((to.getTime() - from.getTime()) / DAY_MS / 28) + 2;
  const months = Array.from(
    { length: count },
    (_, i) => new Date(Date.UTC(from.getUTCFullYear(), from.getUTCMonth() + i, 1, 12)),
  );
  const inside = months.filter((date) => date >= from && date <= to);
  const step = Math.max(1, Math.ceil((inside.length * MONTH_PIXELS) / pixels));
  return inside.filter((_, i) => i % step === 0);
}

const MONTH_PIXELS = 46;

/** Label of a tick: the day without a year, which no season has here. */
export function seasonTick(date: Date): string {
  return shortDate(date.toISOString());
}
