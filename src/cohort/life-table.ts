import { InputError, shown } from "../errors.ts";
import { given, givenList } from "../given.ts";
import type { StageId } from "../species/life-cycle.ts";
import { type Interval, checkedLevel, exactInterval } from "./binomial-interval.ts";

/** What became of the animals of one stage. Those that are left went on to the next. */
export interface StageCounts {
  readonly stage: StageId;
  /** Animals that began the stage. */
  readonly entered: number;
  /** Of these, those that died in it. */
  readonly died: number;
  /** Of these, those whose end in it is not known: lost, moved elsewhere, or still in it. Default 0. */
  readonly censored?: number;
}

/** One stage of a life table. Shares run from 0 to 1. */
export interface LifeTableRow {
  readonly stage: StageId;
  readonly entered: number;
  /** Animals that came to the cohort at this stage, beyond those that the stage before left. */
  readonly joined: number;
  readonly died: number;
  readonly censored: number;
  /** Animals that the share rests on: `entered` less half of `censored`. */
  readonly atRisk: number;
  /** Share of the stage's animals that live through it; `null` where no animal was followed to its end. */
  readonly survival: number | null;
  readonly survivalInterval: Interval | null;
  /** Share that lives from the begin of the first stage to the end of this one. */
  readonly cumulative: number | null;
  /** Standard error of `cumulative` by Greenwood's formula; `null` also where all died. */
  readonly cumulativeError: number | null;
  readonly cumulativeInterval: Interval | null;
  /** Why something is `null`; `null` where nothing is. */
  readonly reason: string | null;
}

interface Running {
  readonly survival: number;
  /** Greenwood's sum of died / (at risk · (at risk - died)). */
  readonly greenwood: number;
}

/**
 * Life table of a cohort: survival stage by stage and up to the end of each stage.
 *
 * An animal whose end is not known counts as half an animal in the stage it was last seen in, as if such
 * animals had left in the middle of it (the actuarial rule). That is fair only when they left for reasons
 * that have nothing to do with dying. Bounds are Clopper and Pearson's: of the stage's own counts, and for
 * the cumulative share of as many animals as would give the same standard error. Without censoring that
 * number is the number of animals at the start, and the bounds are exact.
 * @param counts Stages in the order of life. Animals may join at a later stage; none may vanish.
 * @param options.level How sure the intervals should be. Default 0.95.
 * @returns One row for each stage.
 * @throws {InputError} `invalid-number` for a count that is not a whole number from 0, for more dead and
 *   censored animals than entered, and for a stage that fewer animals entered than the one before left;
 *   `invalid-option` for no stages, a stage given twice or a level that is none.
 * @example
 * lifeTable([{ stage: "egg", entered: 20, died: 2 }, { stage: "larva", entered: 18, died: 9 }])[1]?.cumulative // → 0.45
 * @see Cutler, S. J. & Ederer, F. (1958), Maximum utilization of the life table method in analyzing survival,
 *   J. Chronic Dis. 8:699-712; Greenwood, M. (1926), Rep. Public Health Med. Subj. 33; Dorey, F. J. & Korn,
 *   E. L. (1987), Stat. Med. 6:679-687, for bounds by an effective number (all from memory).
 */
export function lifeTable(
  counts: readonly StageCounts[],
  options: { readonly level?: number } = {},
): LifeTableRow[] {
  givenList(counts, ["counts"]);
  given(options, ["options"], "an object of options");
  const level = checkedLevel(options.level);
  checkCounts(counts);
  let running: Running | null = { survival: 1, greenwood: 0 };
  return counts.map((one, i) => {
    const { stage, entered, died, censored = 0 } = one;
    const before = counts[i - 1];
    const joined = before === undefined ? 0 : entered - leftOf(before);
    const atRisk = entered - censored / 2;
    const base = { stage, entered, joined, died, censored, atRisk };
    // Where every animal is censored, the half rule would call that a survival of 1.
    if (running === null || entered === censored) {
      running = null;
      const own =
        entered === censored ? null : { share: 1 - died / atRisk, bounds: stageBounds(died, atRisk, level) };
      return {
        ...base,
        survival: own?.share ?? null,
        survivalInterval: own?.bounds ?? null,
        cumulative: null,
        cumulativeError: null,
        cumulativeInterval: null,
        reason:
          own !== null
            ? "An earlier stage has no known survival."
            : entered === 0
              ? "No animal entered this stage."
              : "No animal of this stage was followed to its end.",
      };
    }
    const survival = 1 - died / atRisk;
    const now: Running = {
      survival: running.survival * survival,
      greenwood: running.greenwood + died / (atRisk * (atRisk - died)),
    };
    const cumulativeInterval = cumulativeBounds(running, now, atRisk, level);
    running = now;
    return {
      ...base,
      survival,
      survivalInterval: stageBounds(died, atRisk, level),
      cumulative: now.survival,
      cumulativeError: now.survival > 0 ? now.survival * Math.sqrt(now.greenwood) : null,
      cumulativeInterval,
      reason: now.survival > 0 ? null : "All animals died; Greenwood's formula gives no error then.",
    };
  });
}

function stageBounds(died: number, atRisk: number, level: number): Interval {
  return exactInterval(atRisk - died, atRisk, level);
}

// As many animals as would give the same standard error, S(1 - S) / variance. At 0 and 1, where the
// variance is 0 or unknown, the number at risk brought back to the start.
function cumulativeBounds(before: Running, now: Running, atRisk: number, level: number): Interval {
  const { survival, greenwood } = now;
  const animals =
    survival > 0 && survival < 1
      ? (1 - survival) / (survival * greenwood)
      : before.survival > 0
        ? atRisk / before.survival
        : atRisk;
  return exactInterval(survival * animals, animals, level);
}

function leftOf({ entered, died, censored = 0 }: StageCounts): number {
  return entered - died - censored;
}

function checkCounts(counts: readonly StageCounts[]): void {
  if (counts.length === 0) {
    throw new InputError("invalid-option", "there are no stages; a life table needs at least one.", {
      path: ["counts"],
      value: 0,
    });
  }
  counts.forEach((one, i) => {
    const { stage, entered, died, censored = 0 } = one;
    for (const [field, value] of Object.entries({ entered, died, censored })) {
      if (Number.isSafeInteger(value) && value >= 0) continue;
      throw refused(i, field, value, "it must be a whole number of animals from 0");
    }
    if (died + censored > entered) {
      throw refused(i, "entered", entered, `but ${died} died and ${censored} were censored in the ${stage}`);
    }
    if (counts.findIndex((other) => other.stage === stage) < i) {
      throw new InputError("invalid-option", `the stage ${stage} is given twice; give each stage once.`, {
        path: ["counts", i, "stage"],
        value: stage,
      });
    }
    const before = counts[i - 1];
    if (before !== undefined && entered < leftOf(before)) {
      throw refused(
        i,
        "entered",
        entered,
        `but ${leftOf(before)} were left at the end of the ${before.stage}; count those that are missing as died or as censored`,
      );
    }
  });
}

function refused(index: number, field: string, value: number, why: string): InputError {
  const path = ["counts", index, field];
  return new InputError("invalid-number", `${path.join(".")} is ${shown(value)}; ${why}.`, { path, value });
}
