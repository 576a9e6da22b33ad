import type { LifeCycle } from "../../species/life-cycle.ts";
import type { WeatherEnsemble } from "../../temperature/ensemble.ts";
import type { DailyTemperatures, TemperatureSeries } from "../../temperature/series.ts";
import { dayNumber } from "../../time/civil-day.ts";
import { DAY_MS, type Instant } from "../../time/zone.ts";
import type { ForecastStart } from "../question/forecast-input.ts";
import type { Learned } from "../question/learned.ts";

/** Where the days cannot be added up quickly: most seasons are shorter. */
const USUAL_DAYS = 100;

/** How much more than the middle animal's need is waited for: late animals, slow paces, cool members. */
const MARGIN = 1.25;

/**
 * How far the temperatures are worth drawing at first, in days from the start: until the coldest member has
 * given, by rough daily means, a good deal more than the animals need, and two weeks more. Only a guess: whoever
 * draws so far must look whether it was enough.
 */
export function roughHorizon(
  temperatures: TemperatureSeries | WeatherEnsemble,
  { stages }: LifeCycle,
  { path, instant }: ForecastStart,
  learned: Learned | undefined,
): Instant {
  const ahead = stages.slice(path.period);
  const slowest = Math.max(1, learned?.pace.high ?? 1);
  const need = MARGIN * slowest * ahead.reduce((sum, { degreeDays }) => sum + degreeDays.value, 0);
  const lower = Math.max(...ahead.map((needs) => needs.lower.value));
  const series =
    temperatures.kind === "ensemble" ? temperatures.groups.flatMap((one) => one.members) : [temperatures];
  const first = Math.floor(instant / DAY_MS);
  const days = series.map((one) => daysFor(one, first, need, lower));
  return instant + (Math.max(...days) + 16) * DAY_MS;
}

/** Days from a day on until a need is met. */
function daysFor(series: TemperatureSeries, first: number, need: number, lower: number): number {
  let heat = 0;
  let day = first;
  for (const part of series.kind === "joined" ? series.parts : [series]) {
    if (part.kind !== "daily") return USUAL_DAYS;
    const { heat: given, days } = heatOf(part, day, need - heat, lower);
    heat += given;
    day += days;
    if (heat >= need) break;
  }
  return day - first;
}

/** Heat of the days of a part from a day on, until a need is met or the part ends or has a gap. */
function heatOf(
  { start, min, max }: DailyTemperatures,
  from: number,
  need: number,
  lower: number,
): { heat: number; days: number } {
  let heat = 0;
  const first = from - dayNumber(start);
  let i = Math.max(0, first);
  for (; i < min.length && heat < need; i++) {
    const mean = (Number(min[i]) + Number(max[i])) / 2;
    if (Number.isNaN(mean)) break;
    if (mean > lower) heat += mean - lower;
  }
  return { heat, days: Math.max(0, i - first) };
}
