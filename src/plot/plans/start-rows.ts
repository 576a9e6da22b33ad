import { given } from "../../given.ts";
import type { DatePlan, RoomPlan } from "../../rearing/start/start-plan.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import type { Celsius } from "../../units.ts";

/** One start that was tried, and how likely it makes what is wanted. */
export interface StartRow {
  /** Day or time on which it begins. */
  readonly on: CivilDay;
  /** Temperature of the room, °C; `null` where the days are compared. */
  readonly temperature: Celsius | null;
  /** 1 for the best; `null` where the chance is not known. */
  readonly rank: number | null;
  /** Chance of what is aimed at, 0 to 1. */
  readonly chance: number | null;
  /** Chance of one animal to do it in time, before, and after. */
  readonly each: number | null;
  readonly early: number | null;
  readonly late: number | null;
  /** Why the chances are not known, in a plain sentence; `null` where they are. */
  readonly absence: string | null;
}

/** The starts of a plan in the order of the calendar, or from the coolest room to the warmest. */
export function startRows(plan: DatePlan | RoomPlan): StartRow[] {
  given(plan, ["plan"], "a plan of starts", "ranked");
  const starts =
    plan.kind === "date"
      ? plan.ranked.map((start) => ({ ...start, temperature: null }))
      : plan.ranked.map((start) => ({ ...start, on: plan.on }));
  return starts
    .map(({ on, temperature, odds, absence }, i): StartRow => {
      const rank = odds === null ? null : i + 1;
      const { chance = null, each = null, early = null, late = null } = odds ?? {};
      return { on, temperature, rank, chance, each, early, late, absence: absence?.message ?? null };
    })
    .sort((a, b) => (a.on === b.on ? (a.temperature ?? 0) - (b.temperature ?? 0) : a.on < b.on ? -1 : 1));
}
