import type { DegreeDayOptions } from "../clock/degree-days.ts";
import { knownMethod } from "../diurnal/method.ts";
import { InputError } from "../errors.ts";
import { given } from "../given.ts";
import { linearResponse } from "../response/linear.ts";
import { dayFormula, needsNextDay, reversedDay } from "./day-formula.ts";
import { type SqlDialect, type Writing, writingOf } from "./dialect.ts";
import { type SqlName, quoted } from "./name.ts";

/** Columns that hold a day's extremes; numbers of any type. */
export interface ExtremeColumns {
  readonly min: SqlName;
  readonly max: SqlName;
  /** Minimum of the next day; for the `double-` methods, which need it. */
  readonly nextMin?: SqlName;
}

/**
 * Degree-days of one day as a standard SQL expression over columns of a row; the same numbers as `degreeDays`
 * to rounding.
 *
 * SQL cannot refuse a row. A row gives NULL, never 0, where a reading is missing (NULL, NaN or infinite) and
 * where the minimum is above the maximum; {@link reversedDaySql} and `readingsCheckSql` count the latter.
 * @param columns Names, which are checked and quoted. Unit as that of the thresholds.
 * @param options Thresholds, cutoff and method, as for `degreeDays`.
 * @param dialect How the engine writes names and types, where it departs from the standard.
 * @throws {InputError} `invalid-thresholds`, `invalid-number`, `invalid-method`; `invalid-option` for a name
 *   that cannot be quoted, or a `double-` method without `nextMin`.
 * @example
 * degreeDaysSql({ min: "tmin", max: "tmax" }, { lower: 10 }, { double: "DOUBLE" }).split(" THEN ")[0]
 * // → `CASE WHEN CAST("tmin" AS DOUBLE) > -1E300 AND CAST("tmin" AS DOUBLE) <= CAST("tmax" AS DOUBLE) AND CAST("tmax" AS DOUBLE) < 1E300`
 */
export function degreeDaysSql(
  columns: ExtremeColumns,
  options: DegreeDayOptions,
  dialect: SqlDialect = {},
): string {
  given(columns, ["columns"], "an object with min and max");
  const writing = writingOf(dialect);
  const response = linearResponse(options);
  const method = knownMethod(options.method ?? "single-sine");
  const needed = needsNextDay(method);
  if (needed && columns.nextMin === undefined) {
    throw new InputError(
      "invalid-option",
      `columns.nextMin is missing: half of a ${method} day runs to the next day's minimum, which stands in another row. Name a column that holds it, or take degreeDayRowsSql, which fetches it.`,
      { path: ["columns", "nextMin"], value: columns.nextMin },
    );
  }
  const { min, max, nextMin = min } = columns;
  const operands = {
    low: asDouble(quoted(min, ["columns", "min"], writing), writing),
    high: asDouble(quoted(max, ["columns", "max"], writing), writing),
    next: needed ? asDouble(quoted(nextMin, ["columns", "nextMin"], writing), writing) : null,
  };
  return dayFormula(method, operands, response);
}

/**
 * 1 for a row whose minimum is above its maximum, 0 for any other: an expression to sum, so that rows which
 * `degreeDays` would refuse are seen.
 * @throws {InputError} `invalid-option` for a name that cannot be quoted.
 * @example
 * reversedDaySql({ min: "tmin", max: "tmax" }, { double: "DOUBLE" }).startsWith('CASE WHEN CAST("tmin" AS DOUBLE) < 1E300') // → true
 */
export function reversedDaySql(
  columns: Pick<ExtremeColumns, "min" | "max">,
  dialect: SqlDialect = {},
): string {
  given(columns, ["columns"], "an object with min and max");
  const writing = writingOf(dialect);
  const low = asDouble(quoted(columns.min, ["columns", "min"], writing), writing);
  const high = asDouble(quoted(columns.max, ["columns", "max"], writing), writing);
  return `CASE WHEN ${reversedDay(low, high)} THEN 1 ELSE 0 END`;
}

/** A column as a 64-bit float; decimals would otherwise be divided to a few places only. @internal */
export function asDouble(column: string, { double }: Writing): string {
  return `CAST(${column} AS ${double})`;
}
