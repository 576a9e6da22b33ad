import { given } from "../../given.ts";
import type { Comparison } from "../../evaluate/hindsight/compare.ts";
import { csvText, toThousandths } from "../layout/csv-table.ts";

/**
 * What was expected beside what was seen as CSV, one row for each entry of the log. Errors are logged less expected:
 * above 0 the animals were later.
 */
export function comparisonCsv(comparison: Comparison): string {
  given(comparison, ["comparison"], "what compare returns", "rows");
  return csvText(
    [
      "species",
      "stage",
      "seen on",
      "count",
      "early",
      "expected",
      "late",
      "error days",
      "error degree-days",
      "inside window",
      "reason",
    ],
    comparison.rows.map((row) => [
      comparison.species,
      row.stage,
      row.loggedOn,
      row.count,
      row.predicted.early,
      row.predicted.expected,
      row.predicted.late,
      toThousandths(row.errorDays),
      toThousandths(row.errorDegreeDays),
      row.insideWindow === null ? null : row.insideWindow ? "yes" : "no",
      row.reason,
    ]),
  );
}
