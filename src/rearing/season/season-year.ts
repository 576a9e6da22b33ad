import type { DailyTemperatures } from "../../temperature/series.ts";
import { type CivilDay, civilDay, dayNumber } from "../../time/civil-day.ts";
import { DAY_MS, type Instant, civilDayOf, noonOf, startOfDay } from "../../time/zone.ts";
import type { MilestoneId } from "../../forecast/chance.ts";
import { type SeasonSpan, dayInSeason } from "./season-calendar.ts";
import { type Ending, endOf, firstWarmDay } from "./season-end.ts";
import type { Brood, SeasonInput, SeasonYear } from "./season-result.ts";
import { type SeasonWalk, type WalkOptions, seasonWalk } from "./season-walk.ts";

/** What is asked of each year, checked. */
export interface YearOptions extends WalkOptions {
  readonly firstEggs: SeasonInput["firstEggs"];
  /** Days; `null` where it is not known. */
  readonly preLaying: number | null;
  readonly frostBelow: number | null;
  readonly milestone: MilestoneId;
  readonly share: number;
}

/** No animal has more broods in a year; a guard for constants that need next to nothing. */
const MOST_BROODS = 40;

/** A season of the record, or `null` where the record ends before the season's end is known. */
export function seasonYear(span: SeasonSpan, options: YearOptions): SeasonYear | null {
  const walk = seasonWalk(span, options);
  const ending = endOf(span, walk, options.temperatures, options.frostBelow);
  if (ending === null) return null;
  const laid = firstLaid(span, walk, options);
  const broods = laid === null ? [] : broodsFrom(laid, broodsEnd(span, ending, options), walk, options);
  return {
    label: span.label,
    firstEggs: laid === null ? null : civilDayOf(laid, options.zone),
    broods,
    complete: broods.filter(({ adults }) => adults !== null).length,
    lastEggs: ending.ends === null ? null : lastEggs(span, ending.ends, walk, options),
    ...ending,
  };
}

function firstLaid(
  span: SeasonSpan,
  walk: SeasonWalk,
  { firstEggs, zone, temperatures }: YearOptions,
): Instant | null {
  if (firstEggs === undefined) {
    const day = firstWarmDay(span, walk);
    return day === null ? null : noonOf(day, zone);
  }
  if (typeof firstEggs !== "string") return walk.heatAt(firstEggs.degreeDays);
  const day = dayInSeason(firstEggs, span);
  return dayNumber(day) < recordEnd(temperatures) ? noonOf(day, zone) : null;
}

/** Where nothing ends a season, broods are counted up to the next midwinter. */
function broodsEnd(span: SeasonSpan, { ends }: Ending, { zone }: YearOptions): Instant {
  return startOfDay(ends ?? span.next, zone);
}

function broodsFrom(
  first: Instant,
  end: Instant,
  walk: SeasonWalk,
  { preLaying, zone }: YearOptions,
): Brood[] {
  const broods: Brood[] = [];
  for (let laid = first; laid < end && broods.length < MOST_BROODS;) {
    const at = walk.adultsOf(laid);
    const adults = at === null || at >= end ? null : at;
    broods.push({
      number: broods.length + 1,
      eggs: civilDayOf(laid, zone),
      adults: adults === null ? null : civilDayOf(adults, zone),
    });
    if (adults === null || preLaying === null) break;
    laid = adults + preLaying * DAY_MS;
  }
  return broods;
}

/** The last day whose eggs make it: the later an egg is laid, the later it is done, so halving finds the day. */
function lastEggs(
  span: SeasonSpan,
  ends: CivilDay,
  walk: SeasonWalk,
  { milestone, share, zone }: YearOptions,
): CivilDay | null {
  const end = startOfDay(ends, zone);
  const makesIt = (day: number): boolean => walk.shareBy(milestone, noonOf(day, zone), end) >= share;
  let [yes, no] = [dayNumber(span.from), dayNumber(ends)];
  if (!makesIt(yes)) return null;
  while (no - yes > 1) {
    const middle = Math.floor((yes + no) / 2);
    if (makesIt(middle)) yes = middle;
    else no = middle;
  }
  return civilDay(yes);
}

function recordEnd({ start, min }: DailyTemperatures): number {
  return dayNumber(start) + min.length;
}
