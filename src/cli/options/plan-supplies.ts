import { InputError, shown } from "../../errors.ts";
import { type FoliageNeeds, foliageFromTotal, foliageNeedsFor } from "../../rearing/plan/foliage-needs.ts";
import type { FoliageSupply } from "../../rearing/plan/foliage-outlook.ts";
import type { PlanCohort } from "../../rearing/plan/plan-cohort.ts";
import { dayNumber } from "../../time/civil-day.ts";
import type { Given } from "./arguments.ts";

/** What the options say larvae eat; empty where the numbers of the species are to be used. */
export function givenNeeds(given: Given, cohorts: readonly PlanCohort[]): readonly FoliageNeeds[] {
  const total = given.number("leaves-per-larva");
  if (total === undefined) return [];
  return cohorts.map(({ lifeCycle }) => {
    const usual = foliageNeedsFor(lifeCycle);
    return foliageFromTotal(lifeCycle, total, { ...(usual !== null && { food: usual.food }) });
  });
}

/**
 * The leaves that the options name.
 * @throws {InputError} `invalid-option` for an amount that is none, or leaves without a known need of one food.
 */
export function givenSupplies(
  given: Given,
  cohorts: readonly PlanCohort[],
  needs: readonly FoliageNeeds[],
): readonly FoliageSupply[] {
  const supplies: FoliageSupply[] = [];
  const stock = given.number("stock");
  if (stock !== undefined) supplies.push({ leaves: amount("stock", stock, String(stock)) });
  for (const text of given.list("delivery")) supplies.push(delivery(text));
  if (supplies.length === 0) return [];
  const foods = new Set(cohorts.flatMap(({ lifeCycle }) => foliageNeedsFor(lifeCycle, needs)?.food ?? []));
  if (foods.size === 1) return supplies;
  const option = stock === undefined ? "delivery" : "stock";
  const why =
    foods.size === 0
      ? "what these larvae eat is not known; give --leaves-per-larva"
      : `the cohorts eat ${[...foods].sort().join(" and ")}; plan them one by one`;
  throw refused(option, undefined, `--${option} cannot be counted: ${why}.`);
}

/** `2026-06-20=40`: so many leaves on that day. */
function delivery(text: string): FoliageSupply {
  const [day = "", leaves, ...more] = text.split("=");
  if (leaves === undefined || more.length > 0)
    throw refused(
      "delivery",
      text,
      `--delivery is ${shown(text)}; it must be DAY=LEAVES, such as 2026-06-20=40.`,
    );
  dayNumber(day, ["--delivery"]);
  return { on: day, leaves: amount("delivery", leaves.trim() === "" ? Number.NaN : Number(leaves), text) };
}

function amount(option: string, leaves: number, text: string): number {
  if (leaves >= 0 && leaves < Infinity) return leaves;
  throw refused(option, text, `--${option} is ${text}; it must name a number of leaves, 0 or more.`);
}

function refused(option: string, value: unknown, message: string): InputError {
  return new InputError("invalid-option", message, { path: [option], value });
}
