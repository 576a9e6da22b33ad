import { InputError, finite, shown } from "../errors.ts";
import { given } from "../given.ts";

/** How development answers temperatures above the upper threshold. */
export type Cutoff = "none" | "horizontal" | "intermediate" | "vertical";

/** The cutoffs by name. */
export const CUTOFFS: readonly Cutoff[] = ["none", "horizontal", "intermediate", "vertical"];

/** Lower and upper developmental threshold and what happens above the upper one; any one unit. */
export interface Thresholds {
  /** No development at or below it. */
  readonly lower: number;
  /** Development no longer rises with temperature above it. Default: none. */
  readonly upper?: number | null;
  /**
   * Above the upper threshold the rate stays (`horizontal`, the default), falls as it rose until it is
   * nothing (`intermediate`), stops at once (`vertical`), or rises on (`none`, the default where there
   * is no upper threshold).
   */
  readonly cutoff?: Cutoff;
}

/**
 * A linear response, ready to be applied: the rate at temperature T is
 * (T - lower)⁺ + atUpper·(T - upper)⁺ + atZero·(T - zero)⁺ - stop·[T > upper].
 * Each cutoff is one choice of these weights, so any curve that knows its excess and its time above a
 * temperature can answer all of them.
 */
export interface LinearResponse {
  readonly lower: number;
  /** Infinity where there is none. */
  readonly upper: number;
  /** Where an intermediate cutoff has brought the rate back to nothing: 2·upper - lower. Infinite for others. */
  readonly zero: number;
  readonly atUpper: number;
  readonly atZero: number;
  /** Rate that a vertical cutoff takes away above the upper threshold. */
  readonly stop: number;
  readonly cutoff: Cutoff;
}

// Made once: `degreeDays` checks its thresholds on every day.
const AT_THRESHOLDS = ["thresholds"];
const AT_LOWER = ["lower"];
const AT_UPPER = ["upper"];

/**
 * Checks thresholds and makes them a response.
 * @throws {InputError} `invalid-number`, `invalid-thresholds` (lower not below upper; a cutoff without an
 *   upper threshold; an unknown cutoff).
 */
export function linearResponse(thresholds: Thresholds): LinearResponse {
  given(thresholds, AT_THRESHOLDS, "an object with lower and, where there is one, upper");
  const { lower, upper = null } = thresholds;
  const cutoff = thresholds.cutoff ?? (upper === null ? "none" : "horizontal");
  finite(lower, AT_LOWER, "a temperature");
  if (upper === null) {
    if (cutoff !== "none") throw refusedCutoff(cutoff);
    return { lower, upper: Infinity, zero: Infinity, atUpper: 0, atZero: 0, stop: 0, cutoff };
  }
  finite(upper, AT_UPPER, "a temperature");
  if (lower >= upper) throw refusedOrder(lower, upper);
  switch (cutoff) {
    case "none":
      return { lower, upper, zero: Infinity, atUpper: 0, atZero: 0, stop: 0, cutoff };
    case "horizontal":
      return { lower, upper, zero: Infinity, atUpper: -1, atZero: 0, stop: 0, cutoff };
    case "intermediate":
      return { lower, upper, zero: 2 * upper - lower, atUpper: -2, atZero: 1, stop: 0, cutoff };
    case "vertical":
      return { lower, upper, zero: Infinity, atUpper: -1, atZero: 0, stop: upper - lower, cutoff };
    default:
      throw refusedCutoff(cutoff);
  }
}

function refusedCutoff(cutoff: string): InputError {
  if (CUTOFFS.some((known) => known === cutoff)) {
    return new InputError(
      "invalid-thresholds",
      `the ${cutoff} cutoff needs an upper threshold; give upper, or leave the cutoff out.`,
      { path: ["upper"], value: null },
    );
  }
  return new InputError(
    "invalid-thresholds",
    `cutoff is ${shown(cutoff)}; it must be one of ${CUTOFFS.join(", ")}.`,
    { path: ["cutoff"], value: cutoff },
  );
}

function refusedOrder(lower: number, upper: number): InputError {
  return new InputError(
    "invalid-thresholds",
    `the lower threshold (${lower}) must be below the upper threshold (${upper}).`,
    { path: ["lower"], value: lower },
  );
}

/** Rate of development at a temperature: effective degrees above the lower threshold, never below 0. */
export function linearRate(response: LinearResponse, temperature: number): number {
  const { lower, upper, atUpper, stop } = response;
  if (temperature <= lower) return 0;
  if (temperature <= upper) return temperature - lower;
  const rate = upper - lower - stop + (1 + atUpper) * (temperature - upper);
  return rate < 0 ? 0 : rate;
}
