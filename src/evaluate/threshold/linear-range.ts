import { greatest, least } from "../../numeric/extremes.ts";
import { type StraightLine, straightLine } from "../../numeric/straight-line.ts";
import { studentTail } from "../../numeric/student-t.ts";
import type { TrialColumns } from "./trial.ts";

/** The trials at the coldest or the hottest temperature, beside the line through all others. */
export interface RangeEnd {
  readonly end: "coldest" | "hottest";
  readonly temperature: number;
  /** Mean rate there less that of the line through the others, per day. */
  readonly deviation: number | null;
  /** The deviation in its own standard errors; for a single trial the externally studentised residual. */
  readonly studentised: number | null;
  /**
   * Chance of such a deviation, or a greater one to the same side, if the end lay in the linear range. The side is
   * the one to which development bends: above the line in the cold, below it in the heat.
   */
  readonly chance: number | null;
  /** Lower threshold by the regression of 1/days without this end. */
  readonly lowerWithout: number | null;
  /** Whether leaving it out moves the lower threshold by more than its standard error. */
  readonly movesLower: boolean | null;
  /** Whether `chance` is below 5 %. `null`, like all of these, where fewer than three temperatures would remain. */
  readonly looksOutside: boolean | null;
}

/** Whether trials lie on the straight part of development. */
export interface LinearRange {
  /**
   * Each trial's residual over its standard error, both from the line through the other trials, in the order of
   * the trials; `null` where two or fewer others remain.
   */
  readonly studentised: readonly (number | null)[];
  readonly coldest: RangeEnd;
  readonly hottest: RangeEnd;
  /** Temperatures left when ends that look outside are taken away one after the other. */
  readonly suggested: { readonly min: number; readonly max: number };
  /** Different temperatures outside the suggested range, rising. */
  readonly leftOut: readonly number[];
}

/** Chance below which an end is said to lie outside; common practice, no source. */
const UNLIKELY = 0.05;

/**
 * Looks for the ends of the linear range on the regression of 1/days on temperature. @internal
 */
export function linearRange(columns: TrialColumns, lower: number, lowerError: number | null): LinearRange {
  const all = columns.temperatures.map((_, i) => i);
  const temperatures = [...new Set(columns.temperatures)].sort((a, b) => a - b);
  const endsOf = (kept: readonly number[]): RangeEnd[] =>
    (["coldest", "hottest"] as const).map((end) =>
      rangeEnd(
        columns,
        all.filter((i) => kept.includes(columns.temperatures[i] ?? Number.NaN)),
        end,
        { lower, lowerError },
      ),
    );

  let kept: readonly number[] = temperatures;
  for (;;) {
    const outside = endsOf(kept).filter(({ looksOutside }) => looksOutside === true);
    const worst = outside.sort((a, b) => (a.chance ?? 1) - (b.chance ?? 1))[0];
    if (worst === undefined) break;
    kept = kept.filter((temperature) => temperature !== worst.temperature);
  }
  return {
    studentised: all.map((i) => deviationOf(columns, all, [i])?.studentised ?? null),
    coldest: rangeEnd(columns, all, "coldest", { lower, lowerError }),
    hottest: rangeEnd(columns, all, "hottest", { lower, lowerError }),
    suggested: { min: least(kept), max: greatest(kept) },
    leftOut: temperatures.filter((temperature) => !kept.includes(temperature)),
  };
}

function rangeEnd(
  columns: TrialColumns,
  kept: readonly number[],
  end: RangeEnd["end"],
  { lower, lowerError }: { readonly lower: number; readonly lowerError: number | null },
): RangeEnd {
  const at = (i: number): number => columns.temperatures[i] ?? Number.NaN;
  const temperature = kept.map(at).reduce((a, b) => (end === "coldest" ? Math.min(a, b) : Math.max(a, b)));
  const outer = kept.filter((i) => at(i) === temperature);
  const inner = kept.filter((i) => at(i) !== temperature);
  const found = new Set(inner.map(at)).size < 3 ? null : deviationOf(columns, kept, outer);
  if (found === null) {
    const none = { deviation: null, studentised: null, chance: null, lowerWithout: null };
    return { end, temperature, ...none, movesLower: null, looksOutside: null };
  }
  const { deviation, studentised, degrees, line } = found;
  const chance = studentTail(end === "coldest" ? studentised : -studentised, degrees);
  const lowerWithout = line.slope > 0 ? -line.intercept / line.slope : null;
  const movesLower =
    lowerWithout === null || lowerError === null ? null : Math.abs(lowerWithout - lower) > lowerError;
  return {
    end,
    temperature,
    deviation,
    studentised,
    chance,
    lowerWithout,
    movesLower,
    looksOutside: chance < UNLIKELY,
  };
}

/** Mean rate of some trials at one temperature against the line through the rest of those kept. */
function deviationOf(
  { temperatures, rates, weights }: TrialColumns,
  kept: readonly number[],
  outer: readonly number[],
): { deviation: number; studentised: number; degrees: number; line: StraightLine } | null {
  const inner = kept.filter((i) => !outer.includes(i));
  const of = (list: readonly number[], rows: readonly number[]): number[] =>
    rows.map((i) => list[i] ?? Number.NaN);
  if (inner.length < 3 || new Set(of(temperatures, inner)).size < 2) return null;
  const line = straightLine(of(temperatures, inner), of(rates, inner), of(weights, inner));
  const temperature = temperatures[outer[0] ?? 0] ?? Number.NaN;
  const weight = of(weights, outer).reduce((sum, w) => sum + w, 0);
  const observed = outer.reduce((sum, i) => sum + (weights[i] ?? 0) * (rates[i] ?? 0), 0) / weight;
  const deviation = observed - (line.meanY + line.slope * (temperature - line.meanX));
  // Trials that lie on a line to the last digit would make a deviation of rounding look enormous.
  const variance = Math.max(line.residualMeanSquare ?? 0, (1e-12 * line.meanY) ** 2 * line.weight);
  const share = 1 / weight + 1 / line.weight + (temperature - line.meanX) ** 2 / line.spreadX;
  return {
    deviation,
    studentised: deviation / Math.sqrt(variance * share),
    degrees: inner.length - 2,
    line,
  };
}
