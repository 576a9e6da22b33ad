import { givenList } from "../../given.ts";
import { InputError, finite, shown } from "../../errors.ts";
import { type CivilDay, dayNumber } from "../../time/civil-day.ts";
import { type CageLimit, cageLimit } from "./cage-limit.ts";
import type { FoliageNeeds } from "./foliage-needs.ts";
import type { FoliageSupply } from "./foliage-outlook.ts";

/** How a plan is to be made. Everything is optional. */
export interface PlanOptions {
  /** Own numbers of what larvae eat. Default: those of the species, where there are any. */
  readonly needs?: readonly FoliageNeeds[];
  /** Leaves at hand and to come. Default: none are counted. */
  readonly supplies?: readonly FoliageSupply[];
  /** Leaves on a stem, to have stems counted too. */
  readonly leavesPerStem?: number;
  /** Larvae that a cage may hold. Default: {@link USUAL_CAGE_LIMIT}. */
  readonly perCage?: number;
  /** Civil days on which nobody is there. */
  readonly away?: readonly CivilDay[];
  /** A cage is cleaned every so many days. Default 2 (common practice, no source). */
  readonly cleanEvery?: number;
}

/** Options with the defaults in place. */
export interface CheckedPlanOptions {
  readonly needs: readonly FoliageNeeds[];
  readonly supplies: readonly FoliageSupply[];
  readonly leavesPerStem: number | null;
  readonly limit: CageLimit;
  readonly away: ReadonlySet<number>;
  readonly cleanEvery: number;
}

/** @throws {InputError} `invalid-option`, `invalid-number`, `invalid-day`. */
export function checkedPlanOptions(options: PlanOptions): CheckedPlanOptions {
  const { needs = [], supplies = [], leavesPerStem, perCage, away = [], cleanEvery = 2 } = options;
  givenList(needs, ["needs"]);
  givenList(supplies, ["supplies"]);
  givenList(away, ["away"]);
  supplies.forEach(({ leaves, on }, i) => {
    const path = ["supplies", i, "leaves"];
    if (finite(leaves, path, "a number of leaves, 0 or more") < 0)
      throw refused(path, leaves, "a number of leaves, 0 or more");
    if (on !== undefined) dayNumber(on, ["supplies", i, "on"]);
  });
  if (leavesPerStem !== undefined && !(leavesPerStem > 0 && leavesPerStem < Infinity))
    throw refused(["leavesPerStem"], leavesPerStem, "a number of leaves above 0");
  if (!Number.isInteger(cleanEvery) || cleanEvery < 1)
    throw refused(["cleanEvery"], cleanEvery, "a whole number of days from 1");
  return {
    needs,
    supplies,
    leavesPerStem: leavesPerStem ?? null,
    limit: cageLimit(perCage),
    away: new Set(away.map((day, i) => dayNumber(day, ["away", i]))),
    cleanEvery,
  };
}

/**
 * The supplies of one food. A supply that names none is for the only food that there is.
 * @throws {InputError} `invalid-option` for a food that nobody eats, or none named among several.
 */
export function suppliesByFood(
  supplies: readonly FoliageSupply[],
  foods: readonly string[],
): ReadonlyMap<string, readonly FoliageSupply[]> {
  const byFood = new Map(foods.map((food): [string, FoliageSupply[]] => [food, []]));
  supplies.forEach((supply, i) => {
    const food = supply.food ?? (foods.length === 1 ? foods[0] : undefined);
    const list = food === undefined ? undefined : byFood.get(food);
    if (list === undefined) {
      const eaten =
        foods.length === 0
          ? "no cohort has a known need of leaves, so give needs first or leave it out"
          : `it must be one of ${foods.map((one) => shown(one)).join(", ")}`;
      throw new InputError("invalid-option", `supplies.${i}.food is ${shown(supply.food)}; ${eaten}.`, {
        path: ["supplies", i, "food"],
        value: supply.food,
      });
    }
    list.push(supply);
  });
  return byFood;
}

function refused(path: readonly (string | number)[], value: unknown, mustBe: string): InputError {
  return new InputError("invalid-option", `${path.join(".")} is ${shown(value)}; it must be ${mustBe}.`, {
    path,
    value,
  });
}
