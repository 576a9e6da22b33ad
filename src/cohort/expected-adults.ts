import { InputError, shown, isUsable } from "../errors.ts";
import { given } from "../given.ts";
import { type Interval, checkedLevel } from "./binomial-interval.ts";

/**
 * How many animals live through a stage: a share that is taken as known, or counts that it is known from.
 * A row of a life table gives `{ survived: row.atRisk - row.died, of: row.atRisk }`.
 */
export type StageSurvival = number | { readonly survived: number; readonly of: number };

/** How many adults to expect. */
export interface AdultsExpected {
  /** Mean number. */
  readonly mean: number;
  readonly standardDeviation: number;
  /** Smallest number that at least half of the chance lies at or below. */
  readonly median: number;
  /** Whole numbers that hold the true number with at least the chance asked for. */
  readonly interval: Interval;
  /** Chance of each number of adults, from 0 to all. */
  readonly probabilities: readonly number[];
}

/** Largest number of animals, because the work grows with its square. */
const MOST_ALIVE = 10_000;

/** What is believed of a share before any count: Jeffreys' Beta(1/2, 1/2). */
const PRIOR = 0.5;

/**
 * How many adults to expect of animals that are alive now, with chances for each number.
 *
 * Two things are unsure: which animals will die, and, where shares come from counts, the shares themselves.
 * With a known share the number that lives is binomial; with a share from counts it is beta-binomial, the
 * share being Beta(survived + 1/2, died + 1/2) (Jeffreys' prior). Stages follow one another: what the first
 * leaves enters the second. The chances are exact, nothing is drawn. All animals are taken to be at the
 * begin of the first stage and to die independently of each other.
 * @param alive Animals alive now; a whole number from 0 to 10 000.
 * @param survival Stages that they still have to live through, in order: shares, or counts.
 * @param options.level Chance that the interval holds at least. Default 0.95.
 * @throws {InputError} `invalid-number` for a number of animals, a share or counts that cannot be;
 *   `invalid-option` for a level that is none.
 * @example
 * expectedAdults(10, [0.5]).mean // → 5
 * expectedAdults(12, [{ survived: 22, of: 29 }]).interval // → { lower: 5, upper: 12 }
 * @see Skellam, J. G. (1948), J. R. Stat. Soc. B 10:257-261, for the beta-binomial; Brown, L. D., Cai, T. T. &
 *   DasGupta, A. (2001), Stat. Sci. 16:101-133, for the prior (both from memory).
 */
export function expectedAdults(
  alive: number,
  survival: StageSurvival | readonly StageSurvival[],
  options: { readonly level?: number } = {},
): AdultsExpected {
  given(options, ["options"], "an object of options");
  const level = checkedLevel(options.level);
  if (!Number.isInteger(alive) || alive < 0 || alive > MOST_ALIVE) {
    throw refused(["alive"], alive, `it must be a whole number of animals from 0 to ${MOST_ALIVE}`);
  }
  const stages: readonly StageSurvival[] = isList(survival) ? survival : [survival];
  let chances = Float64Array.from({ length: alive + 1 }, (_, n) => Number(n === alive));
  stages.forEach((stage, i) => {
    const odds = oddsOf(stage, i);
    const next = new Float64Array(alive + 1);
    chances.forEach((chance, n) => {
      if (chance === 0) return;
      survivorsOf(n, odds).forEach((share, k) => {
        next[k] = (next[k] ?? 0) + chance * share;
      });
    });
    chances = next;
  });
  const mean = chances.reduce((sum, chance, n) => sum + n * chance, 0);
  const variance = chances.reduce((sum, chance, n) => sum + (n - mean) ** 2 * chance, 0);
  const tail = (1 - level) / 2;
  return {
    mean,
    standardDeviation: Math.sqrt(variance),
    median: numberAt(chances, 0.5),
    interval: { lower: numberAt(chances, tail), upper: numberAt(chances, 1 - tail) },
    probabilities: [...chances],
  };
}

/** A share, or the two parameters of a beta distribution that a share follows. */
type Odds = { readonly share: number } | { readonly a: number; readonly b: number };

/** Chance of each number of survivors of n animals. */
function survivorsOf(n: number, odds: Odds): Float64Array {
  const weights = new Float64Array(n + 1);
  if ("share" in odds && (odds.share === 0 || odds.share === 1)) {
    weights[odds.share * n] = 1;
    return weights;
  }
  // Chances are found up to a factor, by their ratios from one number to the next, beginning near the
  // mean: so neither logarithms of gamma functions nor numbers too small are needed.
  const share = "share" in odds ? odds.share : odds.a / (odds.a + odds.b);
  const ratio = (k: number): number =>
    ((n - k) / (k + 1)) *
    ("share" in odds ? odds.share / (1 - odds.share) : (odds.a + k) / (odds.b + n - k - 1));
  const begin = Math.min(n, Math.floor((n + 1) * share));
  weights[begin] = 1;
  for (let k = begin; k < n; k++) weights[k + 1] = (weights[k] ?? 0) * ratio(k);
  for (let k = begin - 1; k >= 0; k--) weights[k] = (weights[k + 1] ?? 0) / ratio(k);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

function numberAt(chances: Float64Array, share: number): number {
  let sum = 0;
  // Rounding of the sum must not push a bound one animal further.
  const found = chances.findIndex((chance) => (sum += chance) >= share - 1e-12);
  return found < 0 ? chances.length - 1 : found;
}

function oddsOf(stage: StageSurvival, index: number): Odds {
  if (typeof stage === "number") {
    if (stage >= 0 && stage <= 1) return { share: stage };
    throw refused(["survival", index], stage, "a share must be between 0 and 1");
  }
  given(stage, ["survival", index], "a share, or an object with survived and of");
  const { survived, of } = stage;
  if (!(isUsable(of) && of > 0)) {
    throw refused(["survival", index, "of"], of, "it must be a number of animals above 0");
  }
  if (!(isUsable(survived) && survived >= 0 && survived <= of)) {
    throw refused(["survival", index, "survived"], survived, `it must be between 0 and ${of}`);
  }
  return { a: survived + PRIOR, b: of - survived + PRIOR };
}

function isList(survival: StageSurvival | readonly StageSurvival[]): survival is readonly StageSurvival[] {
  return Array.isArray(survival);
}

function refused(path: readonly (string | number)[], value: unknown, why: string): InputError {
  return new InputError("invalid-number", `${path.join(".")} is ${shown(value)}; ${why}.`, { path, value });
}
