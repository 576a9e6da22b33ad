import type { DegreeDayOptions } from "../clock/degree-days.ts";
import { knownMethod } from "../diurnal/method.ts";
import { given } from "../given.ts";
import { linearResponse } from "../response/linear.ts";
import { dayFormula, needsNextDay, usableDay } from "./day-formula.ts";
import { asDouble } from "./degree-days-sql.ts";
import { type SqlDialect, type Writing, writingOf } from "./dialect.ts";
import { type SqlName, quoted } from "./name.ts";

/** A table or view of daily extremes, one row for each station and day. */
export interface DayTable {
  /** Name of the table or view. */
  readonly table: SqlName;
  /** Column of the civil day: a DATE, or a whole number of days with the dialect's `oneDay` of `1`. */
  readonly day: SqlName;
  readonly min: SqlName;
  readonly max: SqlName;
  /** Column that tells stations or grid cells apart. Default: the table holds one. */
  readonly station?: SqlName;
  /**
   * Column that tells seasons apart, such as the year: totals begin anew in each, with its first row. Default:
   * the days of a station are one season.
   */
  readonly season?: SqlName;
}

/** Names of the steps, made so that no table of the caller's is likely to have one of them. @internal */
export const STEP = {
  readings: "moltline_readings",
  ordered: "moltline_ordered",
  nights: "moltline_nights",
  heat: "moltline_heat",
  totals: "moltline_totals",
  reached: "moltline_reached",
  wanted: "moltline_wanted",
} as const;

/** The steps that queries over a table of days have in common, and the names in them. @internal */
export interface DaySteps {
  readonly writing: Writing;
  /** One of our own column or step names, in quotes. */
  readonly own: (name: string) => string;
  /** Station and season, as far as the table has them; our own names, in quotes. */
  readonly groups: readonly string[];
  /** The steps, each `name AS (query)`, in order. */
  readonly steps: readonly string[];
}

/** Steps as far as `ordered`: each day with its readings as doubles and its neighbours. @internal */
export function orderedSteps(source: DayTable, dialect: SqlDialect | undefined): DaySteps {
  given(source, ["source"], "an object with table, day, min and max");
  const writing = writingOf(dialect);
  const own = (name: string): string => quoted(name, ["name"], writing);
  const rows = own("moltline_source");
  const grouping = (["station", "season"] as const).filter((field) => source[field] !== undefined);
  const column = (field: "day" | "min" | "max" | "station" | "season"): string =>
    `${rows}.${quoted(source[field] ?? field, ["source", field], writing)}`;
  const read = [
    ...grouping.map((field) => `${column(field)} AS ${own(field)}`),
    `${column("day")} AS ${own("day")}`,
    `${asDouble(column("min"), writing)} AS ${own("low")}`,
    `${asDouble(column("max"), writing)} AS ${own("high")}`,
  ];
  const groups = grouping.map(own);
  const kept = [...groups, ...["day", "low", "high"].map(own)];
  const over = `OVER (${partition(groups)}ORDER BY ${own("day")})`;
  const step = (name: string, select: readonly string[], from: string): string =>
    `${own(name)} AS (\n  SELECT ${select.join(",\n    ")}\n  FROM ${from}\n)`;
  return {
    writing,
    own,
    groups,
    steps: [
      step(STEP.readings, read, `${quoted(source.table, ["source", "table"], writing)} AS ${rows}`),
      step(
        STEP.ordered,
        [
          ...kept,
          `LAG(${own("day")}) ${over} AS ${own("previous_day")}`,
          `LEAD(${own("day")}) ${over} AS ${own("next_day")}`,
          `LEAD(${own("low")}) ${over} AS ${own("next_low")}`,
          `LEAD(${own("high")}) ${over} AS ${own("next_high")}`,
        ],
        own(STEP.readings),
      ),
    ],
  };
}

/** Steps as far as `totals`: each day with its degree-days and the running total. @internal */
export function totalSteps(
  source: DayTable,
  options: DegreeDayOptions,
  dialect: SqlDialect | undefined,
): DaySteps {
  const response = linearResponse(options);
  const method = knownMethod(options.method ?? "single-sine");
  const before = orderedSteps(source, dialect);
  const { own, groups } = before;
  const kept = [...groups, own("day")].join(", ");
  const next = needsNextDay(method) ? own("night_low") : null;
  const formula = dayFormula(method, { low: own("low"), high: own("high"), next }, response);
  const soFar = `OVER (${partition(groups)}ORDER BY ${own("day")} ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW)`;
  const lost = `CASE WHEN ${own("degree_days")} IS NULL OR ${own("follows")} = 0 THEN 1 ELSE 0 END`;
  return {
    ...before,
    steps: [
      ...before.steps,
      ...(next === null ? [] : [nightStep(before, next)]),
      `${own(STEP.heat)} AS (
  SELECT ${kept},
    ${follows(before)} AS ${own("follows")},
    ${formula} AS ${own("degree_days")}
  FROM ${own(next === null ? STEP.ordered : STEP.nights)}
)`,
      `${own(STEP.totals)} AS (
  SELECT ${kept}, ${own("degree_days")},
    CASE WHEN SUM(${lost}) ${soFar} = 0 THEN SUM(${own("degree_days")}) ${soFar} END AS ${own("total")}
  FROM ${own(STEP.heat)}
)`,
    ],
  };
}

/** 1 where a day is the first of its season or the day after the one before it; 0 behind a hole. @internal */
export function follows({ own, writing }: DaySteps): string {
  const [day, before] = [own("day"), own("previous_day")];
  return `CASE WHEN ${before} IS NULL OR ${day} = ${before} + ${writing.oneDay} THEN 1 ELSE 0 END`;
}

/**
 * Adds the minimum that ends a day: its own on the last day, which is the library's rule, and NULL where the
 * next day is missing or its readings are reversed: a hole is not the end.
 */
function nightStep({ own, writing }: DaySteps, name: string): string {
  const [day, next, low, high] = [own("day"), own("next_day"), own("next_low"), own("next_high")];
  return `${own(STEP.nights)} AS (
  SELECT *,
    CASE WHEN ${next} IS NULL THEN ${own("low")} WHEN ${next} = ${day} + ${writing.oneDay} AND ${usableDay(low, high)} THEN ${low} END AS ${name}
  FROM ${own(STEP.ordered)}
)`;
}

function partition(groups: readonly string[]): string {
  return groups.length === 0 ? "" : `PARTITION BY ${groups.join(", ")} `;
}
