import { given } from "../../given.ts";
import { capitalised } from "../../plain-words.ts";
import type { Caution } from "../../rearing/cautions.ts";
import type { SeasonOutlook, SeasonYear, YearShare } from "../../rearing/season/season-result.ts";
import { type TemperatureUnit, unitOf } from "../../units.ts";
import { percentText } from "../../rearing/chance-text.ts";
import { deedOf } from "../layout/milestone-words.ts";
import { degreesText } from "../layout/number-text.ts";
import { cautionsText, notesText } from "../layout/remarks-text.ts";
import { columns, dayLabel, pageOf, wrapped } from "../layout/text-layout.ts";

/**
 * A season as plain text, at most 80 columns: the broods, when to look for eggs, the last eggs that make it, each
 * year, cautions, notes.
 * @param options.cautions Cautions that fit the species; they are printed in full.
 * @param options.unit Unit to show the frost limit in. Default C.
 */
export function seasonText(
  outlook: SeasonOutlook,
  options: { cautions?: readonly Caution[]; unit?: TemperatureUnit } = {},
): string {
  given(outlook, ["outlook"], "what season returns", "years", "broods");
  unitOf(options);
  const { cautions = [], unit = "C" } = options;
  const blocks = [
    headingText(outlook),
    broodsText(outlook),
    searchText(outlook),
    lastEggsText(outlook, unit),
    yearsText(outlook),
    cautionsText(cautions),
    notesText(outlook.notes),
  ];
  return pageOf(blocks);
}

function headingText({ commonName, latinName, years, hemisphere }: SeasonOutlook): string {
  const [first, last] = [years[0]?.label ?? "", years.at(-1)?.label ?? ""];
  const span = first === last ? first : `${first} to ${last}`;
  return [
    "THE SEASON",
    wrapped(`${capitalised(commonName)} (${latinName})`),
    wrapped(
      `What ${years.length} past ${years.length === 1 ? "season says" : "seasons say"} (${span}, ${hemisphere}ern hemisphere).`,
    ),
  ].join("\n");
}

function broodsText({ broods, firstEggs, level }: SeasonOutlook): string {
  if (broods.length === 0 || firstEggs === null)
    return wrapped("No brood: in none of the seasons is it warm enough for an egg to go on.");
  const withDay = broods.some(({ dayLength }) => dayLength !== null);
  const rows = broods.map((brood) => [
    `  ${brood.number}`,
    brood.eggs === null ? "-" : monthDayLabel(brood.eggs.middle),
    ...(brood.adults === null
      ? ["-", "-", "-"]
      : [brood.adults.earliest, brood.adults.middle, brood.adults.latest].map(monthDayLabel)),
    yearsOf(brood),
    intervalOf(brood),
    ...(withDay ? [brood.dayLength === null ? "-" : `${brood.dayLength.hours.toFixed(1)} h`] : []),
  ]);
  return [
    "BROODS",
    columns(
      [
        [
          "  brood",
          "eggs",
          "adults",
          "middle",
          "latest",
          "seasons",
          `${levelText(level)} sure`,
          ...(withDay ? ["day"] : []),
        ],
        ...rows,
      ],
      [5, 6, 7],
    ),
    wrapped(
      `Eggs: the middle date over the seasons. Adults: when the middle animal emerges, in the earliest, the middle and the latest season. Sure: between which shares of seasons the truth lies.${withDay ? " Day: how long it is when they emerge." : ""}`,
    ),
  ].join("\n");
}

function searchText({ broods, lastEggs }: SeasonOutlook): string {
  const rows = broods.flatMap(({ number, eggs }) =>
    eggs === null ? [] : [[`  ${number}`, ...[eggs.earliest, eggs.middle, eggs.latest].map(monthDayLabel)]],
  );
  if (rows.length === 0) return "";
  const late =
    lastEggs.prudent === null
      ? ""
      : ` Eggs found after ${monthDayLabel(lastEggs.prudent.date)} may be too late to be done out of doors.`;
  return [
    "WHEN TO LOOK FOR EGGS",
    columns([["  brood", "look from", "likely by", "at the latest"], ...rows]),
    wrapped(
      `When the first eggs of each brood are reckoned to be there, in the earliest, the middle and the latest season; more follow in the days after.${late}`,
    ),
  ].join("\n");
}

function lastEggsText(
  { lastEggs, milestone, share, years, frostBelow, level }: SeasonOutlook,
  unit: TemperatureUnit,
): string {
  const { byDate, spread, prudent } = lastEggs;
  const who = `${percentText(share)} of the animals ${deedOf(milestone)}`;
  const frost = frostBelow === null ? "" : `a frost below ${degreesText(frostBelow, unit)} or `;
  if (spread === null) {
    const endless = years.some(({ endsBy }) => endsBy === "nothing");
    const why = endless
      ? "Nothing ends the season here, so there is no last date for eggs."
      : `In none of the seasons do ${who} before ${frost}lasting cold, whenever the eggs are laid.`;
    return ["LAST EGGS", wrapped(why)].join("\n");
  }
  // Days on which nothing changes say nothing.
  const changes = byDate.filter((row, i) => row.years !== byDate[i + 1]?.years);
  const rows = changes.map((row) => [
    `  ${monthDayLabel(row.date)}`,
    yearsOf(row),
    percentText(row.share),
    intervalOf(row),
  ]);
  const middle = `Eggs laid by ${monthDayLabel(spread.middle)} make it in the middle season (${monthDayLabel(spread.earliest)} to ${monthDayLabel(spread.latest)}).`;
  const careful =
    prudent === null
      ? ""
      : ` To be ${percentText(prudent.chance)} sure in a coming season of the same kind: by ${monthDayLabel(prudent.date)}.`;
  return [
    "LAST EGGS",
    wrapped(`Eggs make it when ${who} before ${frost}lasting cold. ${middle}${careful}`),
    columns([["  laid by", "seasons", "share", `${levelText(level)} sure`], ...rows], [1, 2, 3]),
  ].join("\n");
}

function yearsText({ years }: SeasonOutlook): string {
  const cell = (day: string | null): string => (day === null ? "-" : monthDayLabel(day.slice(5)));
  const ended = ({ ends, endsBy }: SeasonYear): string =>
    ends === null ? "nothing" : `${cell(ends)} (${endsBy})`;
  const rows = years.map((year) => [
    `  ${year.label}`,
    cell(year.firstEggs),
    String(year.complete),
    cell(year.lastEggs),
    cell(year.firstFrost),
    cell(year.standstill),
    ended(year),
  ]);
  return [
    "SEASON BY SEASON",
    columns([["  season", "eggs from", "broods", "last eggs", "frost", "no growth", "ends"], ...rows], [2]),
  ].join("\n");
}

function yearsOf({ years, of }: YearShare): string {
  return `${years} of ${of}`;
}

function intervalOf({ lower, upper }: YearShare): string {
  return `${(lower * 100).toFixed(0)} to ${percentText(upper)}`;
}

function levelText(level: number): string {
  return `${Number((level * 100).toPrecision(4))} %`;
}

/** `08-14` as ` 14 Aug`; the year lent to it has every date. */
function monthDayLabel(monthDay: string): string {
  return dayLabel(`2000-${monthDay}`).slice(4).trim();
}
