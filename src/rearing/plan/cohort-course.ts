import type { Window } from "../../forecast/question/result.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { dayNumber } from "../../time/civil-day.ts";
import { DAY_MS } from "../../time/zone.ts";
import type { CohortDay } from "./day-plan-result.ts";
import { leavesOn } from "./foliage-outlook.ts";
import type { PlanAnimals } from "./plan-cohort.ts";
import { QUIET_SHARE, restOn } from "./rest.ts";
import { HALF_AN_ANIMAL, beginning, stageCounts } from "./stage-counts.ts";

/** A stage that begins, or the sign before the adult. */
export type Begins = StageId | "darkening";

/** A cohort day by day, from its find to the day after its last adults. */
export interface CohortCourse {
  readonly animals: PlanAnimals;
  /** Numbers of the first and the last day. */
  readonly first: number;
  readonly last: number;
  /** Whether the forecast knows every date. */
  readonly whole: boolean;
  /** One for each day from the first to the last. */
  readonly days: readonly CohortDay[];
}

/**
 * The course of a cohort.
 * @param latest Number of the last day that a plan may have.
 */
export function cohortCourse(animals: PlanAnimals, latest: number): CohortCourse {
  const begins = animals.standIns[0]?.begins[0] ?? 0;
  const first = Math.floor(begins / DAY_MS);
  const { last, whole } = endOf(animals, first);
  const end = Math.max(first, Math.min(last, latest));
  const days = Array.from({ length: end - first + 1 }, (_, i) => cohortDay(animals, first + i));
  return { animals, first, last: end, whole, days };
}

/** How a cohort stands on a day of its course. */
export function dayOf({ days, first }: CohortCourse, day: number): CohortDay | undefined {
  return days[day - first];
}

/** The window of a stage or sign; `null` where it is not to come. */
export function windowOf({ forecast }: PlanAnimals, id: Begins): Window | null {
  const stage = forecast.stages.find((one) => one.stage === id);
  return stage?.begins ?? forecast.signs.find(({ sign }) => sign === id)?.begins ?? null;
}

/** Whether something may begin on a day: from its early to its late day, or half an animal or more is expected. */
export function mayBegin(animals: PlanAnimals, id: Begins, day: number): boolean {
  const window = windowOf(animals, id);
  if (window === null) return false;
  const [from, to] = [window.early ?? window.expected, window.late];
  // Without a late date it may still happen on any later day.
  const within = from !== null && day >= numberOf(from) && (to === null || day <= numberOf(to));
  return within || (id !== "darkening" && beginning(animals, id, day) >= HALF_AN_ANIMAL);
}

/** Number of the civil day of an instant, as the clock on the wall shows it. */
export function numberOf(instant: string): number {
  return dayNumber(instant.slice(0, 10));
}

function cohortDay(animals: PlanAnimals, day: number): CohortDay {
  const rest = restOn(animals, day);
  return {
    cohort: animals.name,
    stages: stageCounts(animals, day),
    rest,
    quiet: rest.share >= QUIET_SHARE,
    leaves: leavesOn(animals, day),
  };
}

// The day after the last adults, or the last day that the forecast knows.
function endOf(animals: PlanAnimals, first: number): { last: number; whole: boolean } {
  const instants = animals.forecast.stages.flatMap(({ begins }) => [
    begins.early,
    begins.expected,
    begins.late,
  ]);
  const known = instants.flatMap((one) => (one === null ? [] : [numberOf(one)]));
  const lastKnown = Math.max(first, ...known);
  if (instants.includes(null)) return { last: lastKnown, whole: false };
  let last = lastKnown;
  while (beginning(animals, "adult", last + 1) >= HALF_AN_ANIMAL) last += 1;
  return { last: last + 1, whole: true };
}
