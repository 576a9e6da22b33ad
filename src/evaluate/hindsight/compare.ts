import { type LogEntry, checkLog, fateOf } from "../../cohort/log.ts";
import { InputError } from "../../errors.ts";
import { given } from "../../given.ts";
import type { DegreeDayTable, Forecast, IsoInstant, StageForecast } from "../../forecast/question/result.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { dayNumber } from "../../time/civil-day.ts";
import {
  DAY_MS,
  type Instant,
  type Zone,
  endOfDay,
  civilDayOf,
  noonOf,
  parseMoment,
  startOfDay,
} from "../../time/zone.ts";
import type { DegreeDays } from "../../units.ts";

/** One logged observation beside what was predicted. */
export interface ComparedStage {
  readonly stage: StageId;
  /** As logged. */
  readonly loggedOn: string;
  readonly count: number;
  readonly predicted: StageForecast["begins"];
  /** Logged less expected, days; above 0 the animal was later than expected. A day without a time counts as noon. */
  readonly errorDays: number | null;
  /** The same in degree-days of the stage that was ending, °C·day. */
  readonly errorDegreeDays: DegreeDays | null;
  /** Whether the logged day or time touches the window; `null` where the window is not known. */
  readonly insideWindow: boolean | null;
  /** Why something is `null`; `null` where nothing is. */
  readonly reason: string | null;
}

/** What {@link compare} returns. Means count each logged animal once. */
export interface Comparison {
  readonly species: string;
  readonly rows: readonly ComparedStage[];
  /** Mean error, days; above 0 the animals were later than expected. `null` without a single error. */
  readonly biasDays: number | null;
  readonly meanAbsoluteErrorDays: number | null;
  readonly biasDegreeDays: DegreeDays | null;
  /** Share of animals inside their windows, 0 to 1. */
  readonly shareInside: number | null;
  /** Share that would be inside if the windows were true, such as 0.8. */
  readonly shareExpectedInside: number;
}

/**
 * Predicted against logged, stage by stage.
 * @param forecast A forecast; nothing else is needed, its degree-day tables are part of it.
 * @param log What was seen: each entry says that a stage began on a day or at a time.
 * @returns One row for each entry, in the order of the log; entries of the stage that was found, of an
 *   earlier one, or of animals that died or were lost are kept with a reason and no error.
 * @throws {InputError} `invalid-log` for an empty log; what `checkLog` throws.
 */
export function compare(forecast: Forecast, log: readonly LogEntry[]): Comparison {
  given(
    forecast,
    ["forecast"],
    "a forecast, as forecast returns it",
    "stages",
    "found",
    "notes",
    "tables",
    "shares",
  );
  const entries = checkLog(log);
  if (entries.length === 0) {
    throw new InputError(
      "invalid-log",
      "the log has no entries; at least one observation is needed to compare.",
      {
        path: ["log"],
        value: log,
      },
    );
  }
  const rows = entries.map((entry, i) => comparedStage(forecast, entry, i));
  const errors = rows.filter((row) => row.errorDays !== null);
  const inside = rows.filter((row) => row.insideWindow !== null);
  const [early, , late] = forecast.shares;
  return {
    species: forecast.species,
    rows,
    biasDays: weightedMean(errors, (row) => row.errorDays ?? 0),
    meanAbsoluteErrorDays: weightedMean(errors, (row) => Math.abs(row.errorDays ?? 0)),
    biasDegreeDays: weightedMean(
      rows.filter((row) => row.errorDegreeDays !== null),
      (row) => row.errorDegreeDays ?? 0,
    ),
    shareInside: weightedMean(inside, (row) => Number(row.insideWindow)),
    shareExpectedInside: late - early,
  };
}

const NOT_KNOWN = { early: null, expected: null, late: null };

function comparedStage(forecast: Forecast, entry: LogEntry, index: number): ComparedStage {
  const { zone } = forecast;
  const { day, instant } = parseMoment(entry.on, zone, ["log", index, "on"]);
  const [from, to] = instant === null ? [startOfDay(day, zone), endOfDay(day, zone) - 1] : [instant, instant];
  const middle = instant ?? noonOf(day, zone);
  const base = { stage: entry.stage, loggedOn: entry.on, count: entry.count };
  const notCompared = (reason: string): ComparedStage => {
    return {
      ...base,
      predicted: NOT_KNOWN,
      errorDays: null,
      errorDegreeDays: null,
      insideWindow: null,
      reason,
    };
  };
  const fate = fateOf(entry);
  if (fate !== "seen")
    return notCompared(
      `These animals ${fate === "died" ? "died" : "were lost"} in this stage; no begin was seen.`,
    );
  const predicted = forecast.stages.find(({ stage }) => stage === entry.stage);
  if (predicted === undefined)
    return notCompared(
      `This stage is not ahead of the ${forecast.found.stage} that was found, so it was not predicted.`,
    );
  const { begins, absence } = predicted;
  const expected = instantOf(begins.expected, zone);
  const early = instantOf(begins.early, zone);
  const late = instantOf(begins.late, zone);
  const errorDegreeDays =
    expected === null ? null : degreeDaysBetween(forecast, entry.stage, expected, middle);
  return {
    ...base,
    predicted: begins,
    errorDays: expected === null ? null : (middle - expected) / DAY_MS,
    errorDegreeDays,
    insideWindow: early === null || late === null ? null : to >= early && from <= late,
    reason:
      absence !== null
        ? absence.message
        : errorDegreeDays === null
          ? "The degree-day table of the forecast does not reach this day."
          : null,
  };
}

function instantOf(text: IsoInstant | null, zone: Zone): Instant | null {
  return text === null ? null : parseMoment(text, zone, ["begins"]).instant;
}

/** Degree-days, on the clock of the stage before, from one instant to another; negative when it is earlier. */
function degreeDaysBetween(
  forecast: Forecast,
  stage: StageId,
  from: Instant,
  to: Instant,
): DegreeDays | null {
  const table = tableBefore(forecast, stage);
  if (table === undefined) return null;
  const [a, b] = [totalAt(table, from, forecast), totalAt(table, to, forecast)];
  return a === null || b === null ? null : b - a;
}

// The stage that ends when another begins is the one before it in the forecast, or the one found. A hang
// has no thresholds of its own: it is the end of the larval stage before it.
function tableBefore(forecast: Forecast, stage: StageId): DegreeDayTable | undefined {
  const order = [forecast.found.stage, ...forecast.stages.map((one) => one.stage)];
  const before = order.slice(0, order.indexOf(stage)).reverse();
  for (const candidate of before) {
    const table = forecast.tables.find(({ stages }) => stages.includes(candidate));
    if (table !== undefined) return table;
  }
  return forecast.tables[0];
}

/** Running total at an instant, straight within a day, the first from the find on; `null` outside the table. */
function totalAt(table: DegreeDayTable, instant: Instant, { found, zone }: Forecast): DegreeDays | null {
  const day = civilDayOf(instant, zone);
  const index = dayNumber(day) - dayNumber(table.days[0] ?? "1970-01-01");
  const total = table.total[index];
  if (total === undefined) return null;
  const end = endOfDay(day, zone);
  const begin = Math.max(startOfDay(day, zone), instantOf(found.at, zone) ?? 0);
  const left = Math.min(1, (end - instant) / (end - begin));
  return total - (table.degreeDays[index] ?? 0) * left;
}

function weightedMean(rows: readonly ComparedStage[], value: (row: ComparedStage) => number): number | null {
  const weight = rows.reduce((sum, { count }) => sum + count, 0);
  return weight === 0 ? null : rows.reduce((sum, row) => sum + row.count * value(row), 0) / weight;
}
