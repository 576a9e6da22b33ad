import type { DailyTemperatures } from "../../temperature/series.ts";
import { type CivilDay, addDays, civilDays, dayNumber } from "../../time/civil-day.ts";
import type { Celsius } from "../../units.ts";
import type { SeasonSpan } from "./season-calendar.ts";
import { SEASON_LIMITS } from "./season-limits.ts";
import type { SeasonYear } from "./season-result.ts";
import type { SeasonWalk } from "./season-walk.ts";

/** How a season ended. */
export type Ending = Pick<SeasonYear, "firstFrost" | "standstill" | "ends" | "endsBy">;

/**
 * When a season ended: on the first day after midsummer with frost, or from which development stands still,
 * whichever comes first; neither has to come.
 * @returns `null` when the record ends before it is known.
 */
export function endOf(
  season: SeasonSpan,
  walk: SeasonWalk,
  record: DailyTemperatures,
  frostBelow: Celsius | null,
): Ending | null {
  const first = dayNumber(record.start);
  const recordEnd = first + record.min.length;
  const last = Math.min(recordEnd, dayNumber(season.nextTurn));
  const turn = dayNumber(season.turn);
  const days = civilDays(turn, last - turn);
  const minOn = (day: CivilDay): number => record.min[dayNumber(day) - first] ?? Number.NaN;
  const firstFrost = frostBelow === null ? null : (days.find((day) => minOn(day) < frostBelow) ?? null);
  const standstill =
    days.find((day) => dayNumber(day) + STALL_DAYS <= recordEnd && standsStill(walk, day)) ?? null;
  const ends = [firstFrost, standstill].flatMap((day) => day ?? []).sort()[0] ?? null;
  if (ends === null && recordEnd < dayNumber(season.nextTurn)) return null;
  return {
    firstFrost,
    standstill,
    ends,
    endsBy: ends === null ? "nothing" : ends === firstFrost ? "frost" : "cold",
  };
}

/**
 * The first day from midwinter on from which development does not stand still again before midsummer: an egg laid
 * then goes on. `null` when it still stands still at midsummer.
 */
export function firstWarmDay(season: SeasonSpan, walk: SeasonWalk): CivilDay | null {
  const first = dayNumber(season.from);
  const days = civilDays(first, dayNumber(season.turn) - first);
  return days[days.findLastIndex((day) => standsStill(walk, day)) + 1] ?? null;
}

const STALL_DAYS = SEASON_LIMITS.stallDays.value;

function standsStill(walk: SeasonWalk, day: CivilDay): boolean {
  return walk.progress(day, addDays(day, STALL_DAYS)) < SEASON_LIMITS.stallShare.value;
}
