import { givenList } from "../../given.ts";
import type { MethodComparison, MethodRow } from "../../evaluate/methods/compare-methods.ts";
import type { DegreeDays } from "../../units.ts";

/** How far one method is from the reference of a comparison. */
export interface MethodDifferenceRow {
  /** Name of the comparison, such as a season; empty where there is only one. */
  readonly group: string;
  readonly method: MethodRow["method"];
  readonly cutoff: MethodRow["cutoff"];
  /** More (+) or less (-) degree-days than the reference, °C·day. */
  readonly degreeDays: DegreeDays;
  /** The same in percent of the reference; `null` where that has none. */
  readonly percent: number | null;
  /** Later (+) or earlier (-) than by the reference, days; `null` where one of them does not get there. */
  readonly days: number | null;
}

/**
 * What each method of one or more comparisons differs by, without the measured hours, which are the reference.
 * @param comparisons Each under the name of its group.
 */
export function methodDifferenceRows(
  comparisons: readonly { readonly group: string; readonly comparison: MethodComparison }[],
): MethodDifferenceRow[] {
  givenList(comparisons, ["comparisons"], "a list of comparisons");
  return comparisons.flatMap(({ group, comparison: { reference, rows } }) =>
    rows
      .filter(({ method }) => method !== "measured")
      .map(({ method, cutoff, degreeDays, differencePercent, differenceDays }) => ({
        group,
        method,
        cutoff,
        degreeDays: degreeDays - reference.degreeDays,
        percent: differencePercent,
        days: differenceDays,
      })),
  );
}
