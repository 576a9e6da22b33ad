import { InputError, finite, shown } from "../errors.ts";
import { given, givenList } from "../given.ts";
import { checkedLevel } from "./binomial-interval.ts";
import { normalQuantile } from "../numeric/normal-distribution.ts";

/** How long one animal was followed, and how that ended. */
export interface FollowedAnimal {
  /** Days or degree-days from the begin to the end, 0 or more; the same unit for all animals. */
  readonly time: number;
  /** `lost`: last seen alive then. `emerged`: reached the end of what is studied, alive. */
  readonly event: "died" | "lost" | "emerged";
}

/** Survival from one time to the next at which something happened. */
export interface SurvivalStep {
  /** In the unit of the animals. */
  readonly time: number;
  /** Animals still followed just before it. */
  readonly atRisk: number;
  readonly died: number;
  /** Animals that were lost, or had emerged, at this time. */
  readonly censored: number;
  /** Share that lives beyond this time, 0 to 1. */
  readonly survival: number;
  /** Standard error of `survival` by Greenwood's formula; `null` once all have died. */
  readonly standardError: number | null;
  /** Bounds of `survival`; `null` while none has died and once all have, where the formulas give none. */
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * How the bounds are made. `plain`: estimate ± z standard errors, cut off at 0 and 1. `log-log`: the same on
 * the scale log(-log S), which stays inside 0 to 1 and is closer for few animals.
 */
export type SurvivalInterval = "log-log" | "plain";

/**
 * Survival over time of animals that were followed one by one, by Kaplan and Meier's product: animals that
 * were lost, or that emerged, count for as long as they were watched. An animal lost at a time at which
 * others died was still there to die.
 *
 * Times are equal only when they are the same number: round degree-days before, if ties matter.
 * @param animals One record for each animal, in any order.
 * @param options.interval Default `log-log`.
 * @param options.level How sure the bounds should be. Default 0.95.
 * @returns One step for each different time, in order.
 * @throws {InputError} `invalid-option` for no animals, an unknown event or interval, or a level that is
 *   none; `invalid-number` for a time below 0 or none.
 * @example
 * kaplanMeier([{ time: 3, event: "died" }, { time: 5, event: "lost" }])[0]?.survival // → 0.5
 * @see Kaplan, E. L. & Meier, P. (1958), J. Am. Stat. Assoc. 53:457-481; Kalbfleisch & Prentice, The
 *   statistical analysis of failure time data, for log-log bounds (both from memory). Checked against R's
 *   `survival` package.
 */
export function kaplanMeier(
  animals: readonly FollowedAnimal[],
  options: { readonly interval?: SurvivalInterval; readonly level?: number } = {},
): SurvivalStep[] {
  givenList(animals, ["animals"]);
  given(options, ["options"], "an object of options");
  const { interval = "log-log" } = options;
  const z = normalQuantile((1 + checkedLevel(options.level)) / 2);
  checkInterval(interval);
  checkAnimals(animals);
  const times = [...new Set(animals.map(({ time }) => time))].sort((a, b) => a - b);
  const ends = new Map(times.map((time) => [time, { died: 0, censored: 0 }]));
  for (const { time, event } of animals) {
    const at = ends.get(time);
    if (at !== undefined) at[event === "died" ? "died" : "censored"]++;
  }
  let [atRisk, survival, greenwood] = [animals.length, 1, 0];
  return times.map((time) => {
    const { died, censored } = ends.get(time) ?? { died: 0, censored: 0 };
    const followed = atRisk;
    survival *= 1 - died / followed;
    if (died > 0) greenwood += died / (followed * (followed - died));
    atRisk -= died + censored;
    const bounds = boundsOf(survival, greenwood, z, interval);
    const standardError = survival > 0 ? survival * Math.sqrt(greenwood) : null;
    return { time, atRisk: followed, died, censored, survival, standardError, ...bounds };
  });
}

function boundsOf(
  survival: number,
  greenwood: number,
  z: number,
  interval: SurvivalInterval,
): { lower: number | null; upper: number | null } {
  if (survival <= 0 || survival >= 1) return { lower: null, upper: null };
  const spread = z * Math.sqrt(greenwood);
  if (interval === "plain") {
    return { lower: Math.max(0, survival * (1 - spread)), upper: Math.min(1, survival * (1 + spread)) };
  }
  const power = Math.exp(spread / Math.log(survival));
  return { lower: survival ** (1 / power), upper: survival ** power };
}

function checkInterval(interval: SurvivalInterval): void {
  // Callers without types may hand over anything.
  const given: string = interval;
  if (given === "log-log" || given === "plain") return;
  throw new InputError("invalid-option", `interval is ${shown(given)}; it must be log-log or plain.`, {
    path: ["interval"],
    value: given,
  });
}

function checkAnimals(animals: readonly FollowedAnimal[]): void {
  if (animals.length === 0) {
    throw new InputError("invalid-option", "there are no animals; at least one must have been followed.", {
      path: ["animals"],
      value: 0,
    });
  }
  animals.forEach(({ time, event }, i) => {
    const path = ["animals", i, "time"];
    if (finite(time, path, "a number of days or degree-days from 0") < 0) {
      throw new InputError("invalid-number", `${path.join(".")} is ${time}; it must be 0 or more.`, {
        path,
        value: time,
      });
    }
    const given: string = event;
    if (["died", "lost", "emerged"].includes(given)) return;
    throw new InputError(
      "invalid-option",
      `animals.${i}.event is ${shown(given)}; it must be died, lost or emerged.`,
      { path: ["animals", i, "event"], value: given },
    );
  });
}
