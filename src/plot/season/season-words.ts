import { givenList } from "../../given.ts";
import { counted } from "../../plain-words.ts";
import { longDate } from "../dates.ts";
import type { DayLengthRow, LastEggRow, SeasonRow } from "./season-rows.ts";

/** Broods of each season in words: their numbers, when each flies, and what ends the season. */
export function describeSeasons(rows: readonly SeasonRow[]): string {
  givenList(rows, ["rows"], "a list of rows");
  if (rows.length === 0) return "There are no seasons to show.";
  return rows
    .map(({ place, label, broods, complete, ends, endsBy }) => {
      const flown = broods.flatMap(({ number, adults }) =>
        adults === null ? [] : [`adults of brood ${number} on ${longDate(adults)}`],
      );
      const end = ends === null ? "nothing ends it" : `it ends on ${longDate(ends)} by ${endsBy}`;
      const list = flown.length === 0 ? "" : `: ${flown.join(", ")}`;
      return `${place} ${label} has ${counted(complete, "brood")}${list}; ${end}.`;
    })
    .join(" ");
}

/** The last eggs in words: the dates on which the share of seasons changes. */
export function describeLastEggs(rows: readonly LastEggRow[]): string {
  givenList(rows, ["rows"], "a list of rows");
  if (rows.length === 0) return "There is no last date for eggs.";
  return placesOf(rows)
    .map((place) => {
      const own = rows.filter((row) => row.place === place);
      const changes = own.filter((row, i) => i === own.length - 1 || row.years !== own[i + 1]?.years);
      const parts = changes.flatMap(({ date, years, of }) =>
        years === 0 ? [] : [`laid by ${monthDayText(date)} they make it in ${years} of ${of} seasons`],
      );
      const none = own.at(-1)?.years === 0 ? ", later in none" : "";
      return `Eggs at ${place}: ${parts.join(", ")}${none}.`;
    })
    .join(" ");
}

/** Day lengths in words: the longest, and those on the dates of emergence. */
export function describeDayLengths(rows: readonly DayLengthRow[]): string {
  givenList(rows, ["rows"], "a list of rows");
  if (rows.length === 0) return "No place is known for a day length.";
  return placesOf(rows)
    .map((place) => {
      const own = rows.filter((row) => row.place === place);
      const longest = own.reduce((a, b) => (b.hours > a.hours ? b : a));
      const broods = own.flatMap(({ brood, date, hours }) =>
        brood === null ? [] : [`${hours.toFixed(1)} hours on ${monthDayText(date)} for brood ${brood}`],
      );
      const list = broods.length === 0 ? "" : `; ${broods.join(", ")}`;
      return `The longest day at ${place} has ${longest.hours.toFixed(1)} hours${list}.`;
    })
    .join(" ");
}

/** A month and date as words, such as `4 July`. */
export function monthDayText(date: string): string {
  return longDate(`2000-${date}`);
}

/** The places of rows, in their order. @internal */
export function placesOf(rows: readonly { readonly place: string }[]): string[] {
  return [...new Set(rows.map(({ place }) => place))];
}
