import { reversedDay, usableDay } from "./day-formula.ts";
import { type DayTable, STEP, follows, orderedSteps } from "./day-table.ts";
import type { SqlDialect } from "./dialect.ts";

/**
 * A query that says what is wrong with a table of days, one row for each station and season: `days` (rows),
 * `missing` (a reading is NULL, NaN or infinite), `reversed` (the minimum is above the maximum) and `breaks`
 * (a day that does not follow the one before it: days left out, or one given twice). SQL cannot refuse a row
 * as the library does, so ask this before you trust a sum.
 * @param source The table and its columns; names are checked and quoted.
 * @throws {InputError} `invalid-option` for a name that cannot be quoted.
 * @example
 * readingsCheckSql({ table: "days", day: "on", min: "tmin", max: "tmax" }).split("\n").at(-1) // → 'FROM "moltline_ordered"'
 */
export function readingsCheckSql(source: DayTable, dialect?: SqlDialect): string {
  const before = orderedSteps(source, dialect);
  const { steps, own, groups } = before;
  const [low, high] = [own("low"), own("high")];
  const counts = [
    ...groups,
    `COUNT(*) AS ${own("days")}`,
    // Unknown is not true: a day of which nothing can be said is missing.
    `SUM(CASE WHEN ${usableDay(low, high)} THEN 0 WHEN ${reversedDay(low, high)} THEN 0 ELSE 1 END) AS ${own("missing")}`,
    `SUM(CASE WHEN ${reversedDay(low, high)} THEN 1 ELSE 0 END) AS ${own("reversed")}`,
    `SUM(1 - ${follows(before)}) AS ${own("breaks")}`,
  ];
  return `WITH ${steps.join(", ")}
SELECT ${counts.join(",\n  ")}
FROM ${own(STEP.ordered)}${groups.length === 0 ? "" : `\nGROUP BY ${groups.join(", ")}`}`;
}
