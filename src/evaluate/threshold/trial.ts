import { InputError, isUsable, shown } from "../../errors.ts";
import { greatest, least } from "../../numeric/extremes.ts";
import { givenList } from "../../given.ts";

/** How long development took at one constant temperature: one animal, or the mean of several. */
export interface Trial {
  /** Constant temperature, in any one unit; °C for nonlinear rate models. */
  readonly temperature: number;
  /** Days from begin to end of the development, above 0. */
  readonly days: number;
  /** How much the trial counts, such as its number of animals; above 0. Default 1. */
  readonly weight?: number;
}

/** Checked trials as columns. @internal */
export interface TrialColumns {
  readonly temperatures: readonly number[];
  readonly days: readonly number[];
  /** Development per day, 1 / days. */
  readonly rates: readonly number[];
  readonly weights: readonly number[];
}

/**
 * Checks trials and turns them into columns. @internal
 * @throws {InputError} `invalid-number` for a temperature, days or a weight that is none; `invalid-trials`
 *   for fewer different temperatures than needed.
 */
export function trialColumns(trials: readonly Trial[], different: number, need: string): TrialColumns {
  givenList(trials, ["trials"]);
  trials.forEach((trial, i) => {
    const { temperature, days, weight = 1 } = trial;
    check(isUsable(temperature), i, "temperature", temperature, "a finite number");
    check(isUsable(days) && isUsable(1 / days) && days > 0, i, "days", days, "a finite number above 0");
    check(isUsable(weight) && weight > 0, i, "weight", weight, "a finite number above 0");
  });
  const temperatures = trials.map(({ temperature }) => temperature);
  const found = new Set(temperatures).size;
  if (found < different) {
    throw new InputError(
      "invalid-trials",
      `the trials are at ${found === 1 ? "one temperature" : `${found} different temperatures`}; ${need}.`,
      { path: ["trials"], value: trials },
    );
  }
  return {
    temperatures,
    days: trials.map(({ days }) => days),
    rates: trials.map(({ days }) => 1 / days),
    weights: trials.map(({ weight = 1 }) => weight),
  };
}

/**
 * Refuses a line through trials that does not rise with temperature. @internal
 * @throws {InputError} `invalid-trials`.
 */
export function checkRising(
  { slope, meanY }: { readonly slope: number; readonly meanY: number },
  { temperatures }: TrialColumns,
): void {
  const range = greatest(temperatures) - least(temperatures);
  // Equal durations leave a slope of rounding.
  if (slope * range > 1e-12 * meanY) return;
  throw new InputError(
    "invalid-trials",
    `development gets no faster from ${least(temperatures)} to ${greatest(temperatures)}; a threshold needs trials on the straight part, where warmth speeds development.`,
    { path: ["trials"], value: slope },
  );
}

function check(holds: boolean, row: number, key: string, value: unknown, expected: string): void {
  if (holds) return;
  const path = ["trials", row, key];
  throw new InputError("invalid-number", `${path.join(".")} is ${shown(value)}; it must be ${expected}.`, {
    path,
    value,
  });
}
