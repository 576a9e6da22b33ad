import type { DegreeDayOptions } from "../clock/degree-days.ts";
import { InputError, finite, shown } from "../errors.ts";
import { given } from "../given.ts";
import { type DayTable, STEP, totalSteps } from "./day-table.ts";
import type { SqlDialect } from "./dialect.ts";
import { absenceSql, firstDaySql } from "./milestone-query.ts";

/** What an amount is asked for, beside thresholds and method. */
export interface ReachedOptions extends DegreeDayOptions {
  /** Degree-days to reach, above 0, in the unit of the thresholds. */
  readonly amount: number;
}

/**
 * A query for the first day by whose end an amount of degree-days is reached, one row for each station and
 * season: `reached_on`, and `absence`, which is NULL where it is reached, `gap` where a missing day hides
 * whether it is, and `series-ends` where the days end first. No station is left out.
 * @param source The table and its columns; names are checked and quoted.
 * @param options The amount; thresholds, cutoff and method, as for `degreeDays`.
 * @throws {InputError} `invalid-number`, `invalid-thresholds`, `invalid-method`; `invalid-option` for an
 *   amount not above 0 or a name that cannot be quoted.
 * @example
 * reachedSql({ table: "days", day: "on", min: "tmin", max: "tmax" }, { lower: 10, amount: 352 }).includes(`MIN(CASE WHEN "total" >= 351.999999999648 THEN "day" END) AS "reached_on"`) // → true
 */
export function reachedSql(source: DayTable, options: ReachedOptions, dialect?: SqlDialect): string {
  given(options, ["options"], "an object with amount and lower");
  const amount = finite(options.amount, ["amount"], "a number of degree-days above 0");
  if (amount <= 0) {
    throw new InputError(
      "invalid-option",
      `amount is ${shown(amount)}; it must be above 0, or every season reaches it before it begins.`,
      { path: ["amount"], value: amount },
    );
  }
  const before = totalSteps(source, options, dialect);
  const { steps, own, groups } = before;
  const reached = firstDaySql(amount, before);
  const columns = [
    ...groups,
    `${reached} AS ${own("reached_on")}`,
    `CASE WHEN ${reached} IS NULL THEN ${absenceSql(before)} END AS ${own("absence")}`,
  ];
  return `WITH ${steps.join(", ")}
SELECT ${columns.join(",\n  ")}
FROM ${own(STEP.totals)}${groups.length === 0 ? "" : `\nGROUP BY ${groups.join(", ")}`}`;
}
