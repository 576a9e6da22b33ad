import { givenList } from "../../given.ts";
import { dayLength } from "../../diurnal/day-length.ts";
import type { Place } from "../../diurnal/place.ts";
import type { Hemisphere, MonthDay } from "../../rearing/season/season-calendar.ts";
import type { SeasonOutlook, SeasonYear, YearShare } from "../../rearing/season/season-result.ts";
import { addDays } from "../../time/civil-day.ts";

/** The seasons of one place. */
export interface SeasonOfPlace {
  /** Name of the place, as it is shown. */
  readonly name: string;
  readonly outlook: SeasonOutlook;
  /** Where it is; needed for the day length alone. */
  readonly place?: Place | null;
}

/** One season of one place. */
export interface SeasonRow extends SeasonYear {
  readonly place: string;
  readonly hemisphere: Hemisphere;
}

/** The seasons of places, in their order. */
export function seasonRows(places: readonly SeasonOfPlace[]): SeasonRow[] {
  givenList(places, ["places"], "a list of seasons");
  return places.flatMap(({ name, outlook: { years, hemisphere } }) =>
    years.map((year) => ({ place: name, hemisphere, ...year })),
  );
}

/** For eggs of one date at one place: the share of seasons in which they make it. */
export interface LastEggRow extends YearShare {
  readonly place: string;
  readonly hemisphere: Hemisphere;
  readonly date: MonthDay;
}

/** The chance of the last eggs of places, date by date. */
export function lastEggRows(places: readonly SeasonOfPlace[]): LastEggRow[] {
  givenList(places, ["places"], "a list of seasons");
  return places.flatMap(({ name, outlook: { lastEggs, hemisphere } }) =>
    lastEggs.byDate.map((share) => ({ place: name, hemisphere, ...share })),
  );
}

/** The day length of a date at a place. */
export interface DayLengthRow {
  readonly place: string;
  readonly hemisphere: Hemisphere;
  readonly date: MonthDay;
  readonly hours: number;
  /** Number of the brood whose middle date of emergence it is; `null` for a date of the curve. */
  readonly brood: number | null;
}

/** Day lengths of the whole season, week by week, and on the dates of emergence; of places whose place is known. */
export function dayLengthRows(places: readonly SeasonOfPlace[]): DayLengthRow[] {
  givenList(places, ["places"], "a list of seasons");
  return places.flatMap(({ name, outlook: { hemisphere, broods }, place }) => {
    if (place == null) return [];
    const rowOf = (date: MonthDay, brood: number | null): DayLengthRow => ({
      place: name,
      hemisphere,
      date,
      hours: dayLength(`2000-${date}`, place.latitude, { longitude: place.longitude }),
      brood,
    });
    const midwinter = hemisphere === "north" ? "2000-01-01" : "1999-07-01";
    const weeks = Array.from({ length: 53 }, (_, i) => rowOf(addDays(midwinter, i * 7).slice(5), null));
    const emergences = broods.flatMap(({ number, adults }) =>
      adults === null ? [] : [rowOf(adults.middle, number)],
    );
    return [...weeks, ...emergences];
  });
}
