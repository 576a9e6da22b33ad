import type { DegreeDayOptions } from "../clock/degree-days.ts";
import { type DayTable, STEP, totalSteps } from "./day-table.ts";
import type { SqlDialect } from "./dialect.ts";

/**
 * A query for the degree-days of every day and their running total in each station and season: columns
 * `station` and `season` (where the table has them), `day`, `degree_days`, `total`. Rows come in no order.
 *
 * `degree_days` is NULL where a reading is missing or the minimum is above the maximum. `total` is NULL from
 * the first such day on, and from the first day that does not follow the one before it (a hole, or a day
 * given twice): a missing day is not a day without heat. The `double-` methods take the next day's minimum by
 * LEAD, and the last day of a season its own; a day before a missing one is NULL by them.
 * @param source The table and its columns; names are checked and quoted.
 * @param options Thresholds, cutoff and method, as for `degreeDays`.
 * @throws {InputError} `invalid-thresholds`, `invalid-number`, `invalid-method`; `invalid-option` for a name
 *   that cannot be quoted.
 * @example
 * const query = degreeDayRowsSql(
 *   { table: "days", station: "cell", season: "year", day: "on", min: "tmin", max: "tmax" },
 *   { lower: 10, upper: 30 },
 * );
 * query.split("\n").at(-2) // → 'SELECT "station", "season", "day", "degree_days", "total"'
 */
export function degreeDayRowsSql(source: DayTable, options: DegreeDayOptions, dialect?: SqlDialect): string {
  const { steps, own, groups } = totalSteps(source, options, dialect);
  const columns = [...groups, ...["day", "degree_days", "total"].map(own)];
  return `WITH ${steps.join(", ")}
SELECT ${columns.join(", ")}
FROM ${own(STEP.totals)}`;
}
