import { InputError, shown, isUsable } from "../errors.ts";
import { given } from "../given.ts";
import { betaQuantile } from "../numeric/beta-distribution.ts";
import { normalQuantile } from "../numeric/normal-distribution.ts";

/** Two bounds around an estimate, in its unit. */
export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

/** How sure an interval should be, unless told otherwise. */
const USUAL_LEVEL = 0.95;

/** The intervals for a share by name. */
export const SHARE_INTERVALS = ["clopper-pearson", "wilson", "jeffreys"] as const;

/**
 * How an interval for a share is made.
 * - `clopper-pearson`: holds the true share at least as often as it says, and is wide for it.
 * - `wilson`: holds it about as often as it says, sometimes less.
 * - `jeffreys`: what is believed after the counts when little was believed before, Beta(1/2, 1/2).
 */
export type ShareInterval = (typeof SHARE_INTERVALS)[number];

/**
 * Interval for a share that is known from counts, such as 22 adults of 29 larvae. The animals are taken to
 * live or die independently of each other, which a disease in a cage breaks: the truth is then less sure.
 * @param successes How many of the `trials`; a whole number from 0.
 * @param trials How many in all; a whole number from 1.
 * @param options.method Default `clopper-pearson`, which never promises too much.
 * @param options.level Default 0.95.
 * @returns Bounds as shares, 0 to 1.
 * @throws {InputError} `invalid-number` for counts that cannot be; `invalid-option` for a level outside 0 to
 *   1 or an unknown method.
 * @example
 * binomialInterval(0, 10).lower // → 0
 * @see Clopper, C. J. & Pearson, E. S. (1934), Biometrika 26:404-413; Wilson, E. B. (1927), J. Am. Stat.
 *   Assoc. 22:209-212; Brown, L. D., Cai, T. T. & DasGupta, A. (2001), Stat. Sci. 16:101-133 (all from
 *   memory). Checked against R's `binom.test`, `prop.test` and `qbeta`.
 */
export function binomialInterval(
  successes: number,
  trials: number,
  options: { readonly method?: ShareInterval; readonly level?: number } = {},
): Interval {
  given(options, ["options"], "an object of options");
  const { method = "clopper-pearson" } = options;
  const level = checkedLevel(options.level);
  if (!Number.isSafeInteger(trials) || trials < 1) {
    throw new InputError("invalid-number", `trials is ${shown(trials)}; it must be a whole number from 1.`, {
      path: ["trials"],
      value: trials,
    });
  }
  if (!Number.isSafeInteger(successes) || successes < 0 || successes > trials) {
    throw new InputError(
      "invalid-number",
      `successes is ${shown(successes)}; it must be a whole number from 0 to ${trials}, the number of trials.`,
      { path: ["successes"], value: successes },
    );
  }
  switch (method) {
    case "clopper-pearson":
      return exactInterval(successes, trials, level);
    case "wilson":
      return wilsonInterval(successes, trials, level);
    case "jeffreys":
      return jeffreysInterval(successes, trials, level);
    default:
      throw unknownMethod(method);
  }
}

/**
 * Clopper and Pearson's bounds, also for counts that are not whole, as censoring makes them.
 * @internal
 */
export function exactInterval(successes: number, trials: number, level: number): Interval {
  const tail = (1 - level) / 2;
  const failures = Math.max(0, trials - successes);
  return {
    lower: successes <= 0 ? 0 : betaQuantile(tail, successes, failures + 1),
    upper: failures <= 0 ? 1 : betaQuantile(1 - tail, successes + 1, failures),
  };
}

function wilsonInterval(successes: number, trials: number, level: number): Interval {
  const z = normalQuantile((1 + level) / 2);
  const share = successes / trials;
  const middle = (share + (z * z) / (2 * trials)) / (1 + (z * z) / trials);
  const half =
    (z / (1 + (z * z) / trials)) * Math.sqrt((share * (1 - share) + (z * z) / (4 * trials)) / trials);
  // At the ends the bound is exact, and rounding must not move it.
  return {
    lower: successes === 0 ? 0 : middle - half,
    upper: successes === trials ? 1 : middle + half,
  };
}

// At 0 and at all the bound on that side is set to the end, as Brown, Cai & DasGupta advise.
function jeffreysInterval(successes: number, trials: number, level: number): Interval {
  const tail = (1 - level) / 2;
  const [a, b] = [successes + 0.5, trials - successes + 0.5];
  return {
    lower: successes === 0 ? 0 : betaQuantile(tail, a, b),
    upper: successes === trials ? 1 : betaQuantile(1 - tail, a, b),
  };
}

/**
 * A level that can be asked for.
 * @throws {InputError} `invalid-option` unless it lies between 0 and 1.
 * @internal
 */
export function checkedLevel(level: number = USUAL_LEVEL): number {
  if (isUsable(level) && level > 0 && level < 1) return level;
  throw new InputError(
    "invalid-option",
    `level is ${shown(level)}; it must be between 0 and 1, such as 0.95.`,
    { path: ["level"], value: level },
  );
}

function unknownMethod(method: never): InputError {
  return new InputError(
    "invalid-option",
    `method is ${shown(method)}; it must be one of ${SHARE_INTERVALS.join(", ")}.`,
    { path: ["method"], value: method },
  );
}
