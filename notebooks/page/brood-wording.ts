import { monthDayText, shortDate } from "../../src/plot/index.ts";
import { displayUnit, short, temperatureText } from "../../src/plot/display-unit.ts";
import type { BroodOutlook, DateSpread, SeasonOutlook } from "../../src/rearing/season/season-result.ts";
import type { SeasonOfPlace } from "../../src/plot/index.ts";
import type { DailyTemperatures } from "../../src/temperature/series.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { type TemperatureUnit, celsiusDegreesToFahrenheit } from "../../src/units.ts";
import { percent } from "./wording.ts";

/** What the season of a place says, in a few sentences. */
export function seasonOfPlace(
  { name, outlook }: SeasonOfPlace,
  warmer: number,
  unit: TemperatureUnit,
): string {
  const { commonName, years, lastEggs } = outlook;
  const what =
    warmer === 0 ? "" : `If every day were ${degreesText(warmer, unit)} warmer, which is no forecast: `;
  const count = broodsOf(outlook);
  const time = `in ${name} the ${commonName} has time for ${count} ${count === "1" ? "brood" : "broods"} a season (${spanOf(years)})`;
  const { spread, prudent } = lastEggs;
  const last =
    spread === null
      ? "There is no last date for eggs."
      : `Eggs laid by ${monthDayText(spread.middle)} still become adults in the middle season` +
        (prudent === null
          ? "."
          : `; to be ${percent(prudent.chance)} sure of a coming season of the same kind, they have to be laid by ${monthDayText(prudent.date)}.`);
  const text = `${what}${time}. ${last}`;
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Fewest and most whole broods of a season, such as `3 to 4`. */
export function broodsOf({ years }: SeasonOutlook): string {
  const counts = years.map(({ complete }) => complete);
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  return least === most ? String(least) : `${least} to ${most}`;
}

/** Earliest, middle and latest date. */
export function spreadText(spread: DateSpread | null): string {
  if (spread === null) return "–";
  const [middle, earliest, latest] = [spread.middle, spread.earliest, spread.latest].map((date) =>
    shortDate(`2000-${date}`),
  );
  return earliest === latest ? `${middle}` : `${middle} (${earliest} to ${latest})`;
}

/** A date of the prudent, or a dash. */
export function prudentText({ lastEggs: { prudent } }: SeasonOutlook): string {
  return prudent === null ? "–" : monthDayText(prudent.date);
}

/** In how many seasons, and between which shares the truth lies. */
export function seasonsText({
  years,
  of,
  lower,
  upper,
}: Pick<BroodOutlook, "years" | "of" | "lower" | "upper">): string {
  return `${years} of ${of} (${Math.round(lower * 100)} to ${percent(upper).replace(" ", "\u00a0")})`;
}

/** Day length when a brood emerges, and its change in a week. */
export function dayLengthText({ dayLength }: BroodOutlook): string {
  if (dayLength === null) return "–";
  const { hours, minutesAWeek } = dayLength;
  const change = Math.round(Math.abs(minutesAWeek));
  return `${hours.toFixed(1)} h, ${change} min a week ${minutesAWeek < 0 ? "shorter" : "longer"}`;
}

/** Notes of some places, each once with the names of all places that it is for. */
export function notesOf(
  places: readonly SeasonOfPlace[],
): readonly { readonly title: string; readonly text: string }[] {
  const texts = places.flatMap(({ name, outlook: { notes } }) =>
    notes
      .filter(({ code }) => code !== "shortening-days")
      .map(({ message }) => ({ title: name, text: message })),
  );
  return [...new Set(texts.map(({ text }) => text))].map((text) => {
    const names = texts.filter((note) => note.text === text).map(({ title }) => title);
    return { title: [...new Set(names)].join(" and "), text };
  });
}

/** The dates of two places beside each other, for the question at the end. */
export function besideOf(
  here: SeasonOfPlace,
  there: SeasonOfPlace,
  warmer: number,
  unit: TemperatureUnit,
): string {
  const by = warmer === 0 ? "as measured" : `with ${degreesText(warmer, unit)} more on every day`;
  return `${here.name} as measured: ${broodsOf(here.outlook)} broods. ${there.name} ${by}: ${broodsOf(there.outlook)}.`;
}

/** A frost limit in words. */
export function frostText(celsius: number, unit: TemperatureUnit): string {
  return temperatureText(celsius, displayUnit(unit));
}

/** Days of a filled record that were missing before. */
export function filledText(before: DailyTemperatures, after: DailyTemperatures): string | null {
  const days = Array.from(before.min, (low, i) =>
    Number.isNaN(low + (before.max[i] ?? 0)) && !Number.isNaN(after.min[i] ?? 0)
      ? addDays(before.start, i)
      : null,
  ).filter((day) => day !== null);
  if (days.length === 0) return null;
  return `${days.length} missing ${days.length === 1 ? "day is" : "days are"} filled from the days around, the first ${days[0] ?? ""}.`;
}

/** Degrees that something is warmer by. */
export function degreesText(celsius: number, unit: TemperatureUnit): string {
  return `${short(unit === "F" ? celsiusDegreesToFahrenheit(celsius) : celsius)}\u00a0°${unit}`;
}

function spanOf(years: SeasonOutlook["years"]): string {
  const [first, last] = [years[0]?.label ?? "", years.at(-1)?.label ?? ""];
  return first === last ? first : `${first} to ${last}`;
}
