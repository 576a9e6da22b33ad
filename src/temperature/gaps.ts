import { InputError, shown } from "../errors.ts";
import { given, givenList } from "../given.ts";
import { type CivilDay, addDays, dayNumber } from "../time/civil-day.ts";
import { dailyTemperatures } from "./daily.ts";
import { type Normals, normalsFor } from "./normals.ts";
import type { DailyTemperatures, Origin } from "./series.ts";

/** A run of days without a complete pair of extremes. */
export interface Gap {
  readonly from: CivilDay;
  readonly to: CivilDay;
  readonly days: number;
}

/** How missing days may be filled: a choice that the caller makes by name, never a default. */
export type GapPolicy =
  | { readonly fill: "interpolate"; /** Longest run of days to fill. */ readonly upToDays: number }
  | { readonly fill: "normals"; /** Normals of past years at the same place. */ readonly normals: Normals };

/** The runs of missing days of a series, in order; empty when there are none. */
export function gapsOf(series: DailyTemperatures): Gap[] {
  given(series, ["series"], "daily temperatures, as dailyTemperatures makes them", "start", "min", "max");
  const gaps: Gap[] = [];
  let first = -1;
  for (let i = 0; i <= series.min.length; i++) {
    const missing = i < series.min.length && isMissing(series, i);
    if (missing && first < 0) first = i;
    if (!missing && first >= 0) {
      gaps.push({ from: addDays(series.start, first), to: addDays(series.start, i - 1), days: i - first });
      first = -1;
    }
  }
  return gaps;
}

/** The refusal of a gap that lies in a span of days that was asked for. @internal */
export function gapInSpan({ from, to, days }: Gap): InputError {
  return new InputError(
    "missing-temperature",
    (name) =>
      `there is no temperature for ${from}${days > 1 ? ` to ${to}` : ""}; fill the gap ${name("by a named policy")} or take another span.`,
    { path: [from], value: Number.NaN },
  );
}

/** The refusal of a record whose first gap this is, where the whole record is needed. @internal */
export function gapInRecord({ from }: Gap): InputError {
  return new InputError(
    "missing-temperature",
    (name) => `there is no temperature for ${from}; fill the gaps ${name("by a named policy")} first.`,
    { path: [from], value: Number.NaN },
  );
}

/**
 * A series with its missing days filled by a named policy and marked `filled`. Readings are untouched, also those
 * of a day that has one of the two: what is filled in beside one is never beyond it. A gap that the policy does not
 * reach stays a gap.
 * @param policy `interpolate`: minimum and maximum run along straight lines between the days before and
 *   after, for gaps of at most `upToDays`. `normals`: the day's normal minimum and maximum.
 * @throws {InputError} `invalid-option` when `upToDays` is not a whole number from 1, for another policy, or without normals.
 */
export function fillGaps(series: DailyTemperatures, policy: GapPolicy): DailyTemperatures {
  given(series, ["series"], "daily temperatures, as dailyTemperatures makes them", "start", "min", "max");
  given(policy, ["policy"], "a policy with fill");
  if (policy.fill === "interpolate" && !(Number.isInteger(policy.upToDays) && policy.upToDays >= 1)) {
    throw new InputError(
      "invalid-option",
      (name) => `${name("upToDays")} is ${policy.upToDays}; it must be a whole number of days from 1.`,
      {
        path: ["upToDays"],
        value: policy.upToDays,
      },
    );
  }
  // Callers without types may misspell the policy, and a gap of any length would then be filled.
  if (!["interpolate", "normals"].includes(policy.fill)) {
    throw new InputError(
      "invalid-option",
      `fill is ${shown(policy.fill)}; it must be "interpolate" or "normals".`,
      { path: ["fill"], value: policy.fill },
    );
  }
  if (policy.fill === "normals")
    given(policy.normals, ["policy", "normals"], "normals, as normalsOf returns them", "min", "max");
  const min = Float64Array.from(series.min);
  const max = Float64Array.from(series.max);
  givenList(series.origin, ["series", "origin"]);
  const origin: Origin[] = [...series.origin];
  const firstDay = dayNumber(series.start);
  for (const gap of gapsOf(series)) {
    const first = dayNumber(gap.from) - firstDay;
    const bounded = first > 0 && first + gap.days < min.length;
    if (policy.fill === "interpolate" && !(bounded && gap.days <= policy.upToDays)) continue;
    for (let k = 0; k < gap.days; k++) {
      const i = first + k;
      const normal = policy.fill === "normals" ? normalsFor(policy.normals, addDays(series.start, i)) : null;
      const share = (k + 1) / (gap.days + 1);
      for (const [column, own] of [
        [min, normal?.min],
        [max, normal?.max],
      ] as const) {
        if (!Number.isNaN(column[i])) continue;
        const before = column[first - 1] ?? Number.NaN;
        column[i] = own ?? before + ((column[first + gap.days] ?? Number.NaN) - before) * share;
      }
      // A day with one reading: where the filled value would cross it, the reading stands for both.
      if (!Number.isNaN(series.min[i])) max[i] = Math.max(Number(min[i]), Number(max[i]));
      else if (!Number.isNaN(series.max[i])) min[i] = Math.min(Number(min[i]), Number(max[i]));
      origin[i] = "filled";
    }
  }
  return dailyTemperatures(series.start, min, max, origin);
}

/** Whether a slot lacks its minimum or its maximum. */
export function isMissing(series: DailyTemperatures, index: number): boolean {
  return !(Number(series.min[index]) <= Number(series.max[index]));
}
