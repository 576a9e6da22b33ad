import type { StageId } from "../../species/life-cycle.ts";
import { DAY_MS } from "../../time/zone.ts";
import { isFeeding } from "./foliage-needs.ts";
import type { PlanAnimals } from "./plan-cohort.ts";

/** How much of a cohort is in a stage on a day: its mean over the day. */
export interface StageCount {
  readonly stage: StageId;
  /** Share of the cohort, 0 to 1; over the stages of a day they sum to 1. */
  readonly share: number;
  /** The same as a number of animals, if all live. */
  readonly animals: number;
}

/** From half an animal on a number is worth a task. */
export const HALF_AN_ANIMAL = 0.5;

/**
 * How a cohort is spread over its stages on a civil day, by the animals that stand for it. Stages that none is
 * in are left out. On the day of the find only the hours after it count.
 * @param day Number of the civil day.
 */
export function stageCounts({ order, standIns, count }: PlanAnimals, day: number): StageCount[] {
  const [begin, end] = [day * DAY_MS, (day + 1) * DAY_MS];
  const spent = order.map(() => 0);
  for (const { begins } of standIns) {
    order.forEach((_, k) => {
      const [from, to] = [begins[k] ?? Infinity, begins[k + 1] ?? Infinity];
      spent[k] = (spent[k] ?? 0) + Math.max(0, Math.min(to, end) - Math.max(from, begin));
    });
  }
  const whole = spent.reduce((sum, one) => sum + one, 0);
  if (whole <= 0) return [];
  return order.flatMap((stage, k): StageCount[] => {
    const share = (spent[k] ?? 0) / whole;
    return share > 0 ? [{ stage, share, animals: share * count }] : [];
  });
}

/** How many animals of a cohort are expected to begin a stage on a civil day. */
export function beginning({ order, standIns, count }: PlanAnimals, stage: StageId, day: number): number {
  const k = order.indexOf(stage);
  if (k < 1) return 0;
  const [begin, end] = [day * DAY_MS, (day + 1) * DAY_MS];
  const those = standIns.filter(({ begins }) => {
    const at = begins[k] ?? Infinity;
    return at >= begin && at < end;
  });
  return (those.length / standIns.length) * count;
}

/** Larvae among the animals of a day: those that feed, and those that hang. */
export function larvaeOf(counts: readonly StageCount[]): number {
  return sumOf(counts.filter(({ stage }) => isFeeding(stage) || stage === "prepupa"));
}

/** Larvae that feed. */
export function feedingOf(counts: readonly StageCount[]): number {
  return sumOf(counts.filter(({ stage }) => isFeeding(stage)));
}

function sumOf(counts: readonly StageCount[]): number {
  return counts.reduce((sum, { animals }) => sum + animals, 0);
}
