import { given } from "../../given.ts";
import type { DegreeDayTable, Forecast, IsoInstant } from "../../forecast/question/result.ts";
import type { Cutoff } from "../../response/linear.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import type { Origin } from "../../temperature/series.ts";
import { type CivilDay, dayNumber } from "../../time/civil-day.ts";
import { DAY_MS, type Zone } from "../../time/zone.ts";
import type { Celsius, DegreeDays } from "../../units.ts";
import { wallClock } from "../dates.ts";

/** One day of degree-days on one pair of thresholds. */
export interface DegreeDayRow {
  /** Lower developmental threshold, °C. */
  readonly lower: Celsius;
  /** Upper developmental threshold, °C, or `null`. */
  readonly upper: Celsius | null;
  readonly cutoff: Cutoff;
  readonly day: CivilDay;
  /** Degree-days of the day, °C·day. */
  readonly degreeDays: DegreeDays;
  /** Running total at the end of the day, °C·day. */
  readonly total: DegreeDays;
  readonly origin: Origin;
}

/** When a stage begins and what had added up by then. */
export interface StageTotalRow {
  readonly stage: StageId;
  readonly name: string;
  /** When the middle animal begins it; for the found stage, the instant that the forecast counts from. */
  readonly at: IsoInstant;
  /** Degree-days since the find on the thresholds that led up to it, °C·day. */
  readonly total: DegreeDays;
}

/** The degree-day tables of a forecast, one row a day and pair of thresholds. */
export function degreeDayRows(forecast: Forecast): DegreeDayRow[] {
  given(forecast, ["forecast"], "a forecast, as forecast returns it", "stages", "found", "notes", "tables");
  return forecast.tables.flatMap(({ lower, upper, cutoff, days, degreeDays, total, origin }) =>
    days.map((day, i) => ({
      lower,
      upper,
      cutoff,
      day,
      degreeDays: degreeDays[i] ?? 0,
      total: total[i] ?? 0,
      origin: origin[i] ?? "observed",
    })),
  );
}

/**
 * Where on the running totals the stages begin: the found stage at zero, then every later stage that the
 * temperatures reach. On a single pair of thresholds the total is the forecast's own; on several it is read
 * off the running total of the pair that led up to the stage, on a straight line through the day.
 */
export function stageTotalRows(forecast: Forecast): StageTotalRow[] {
  given(forecast, ["forecast"], "a forecast, as forecast returns it", "stages", "found", "notes", "tables");
  const { found, stages, tables } = forecast;
  const rows: StageTotalRow[] = [
    { stage: found.stage, name: stageName(found.stage), at: found.at, total: 0 },
  ];
  let before = found.stage;
  for (const { stage, begins, degreeDays } of stages) {
    if (begins.expected !== null) {
      const table = tables.find(({ stages }) => stages.includes(before));
      const total = tables.length === 1 || !table ? degreeDays : totalAt(table, begins.expected);
      rows.push({ stage, name: stageName(stage), at: begins.expected, total });
    }
    // The hang is the last share of a larval stage and runs on that stage's thresholds.
    if (stage !== "prepupa") before = stage;
  }
  return rows;
}

/** The days whose temperatures a forecast rests on, to be handed to `temperatureRows`. */
export function forecastDays(forecast: Forecast): {
  from: CivilDay;
  to: CivilDay;
  zone: Zone;
} {
  given(forecast, ["forecast"], "a forecast, as forecast returns it", "stages", "found", "notes", "tables");
  const { found, tables, zone } = forecast;
  const day = found.at.slice(0, 10);
  const days = tables[0]?.days ?? [];
  return { from: days[0] ?? day, to: days.at(-1) ?? day, zone };
}

function totalAt(table: DegreeDayTable, at: IsoInstant): DegreeDays {
  const days = wallClock(at).getTime() / DAY_MS - dayNumber(table.days[0] ?? at.slice(0, 10));
  const whole = Math.floor(days);
  return (table.total[whole - 1] ?? 0) + (table.degreeDays[whole] ?? 0) * (days - whole);
}
