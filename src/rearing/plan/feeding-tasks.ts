import { type CohortCourse, dayOf } from "./cohort-course.ts";
import { isFeeding } from "./foliage-needs.ts";
import { type PlanTask, planTask } from "./plan-task.ts";
import { aboutSome, leavesText, stagesText, wholeLeaves } from "./plan-words.ts";
import { HALF_AN_ANIMAL, feedingOf } from "./stage-counts.ts";

const HALF_A_LEAF = 0.5;

/** Fresh foliage for a day: how much, for how many larvae of which stages. */
export function feedingTasks(course: CohortCourse, day: number): PlanTask[] {
  const today = dayOf(course, day);
  if (today === undefined) return [];
  const larvae = feedingOf(today.stages);
  const { animals } = course;
  const { leaves } = today;
  // Where hardly any is expected, early or late animals may still be many.
  if (larvae < HALF_AN_ANIMAL && (leaves?.most ?? 0) < HALF_A_LEAF) return [];
  const stages = stagesText(today.stages.filter(({ stage }) => isFeeding(stage)));
  const whom = `${aboutSome(larvae, "larva", "larvae")}${stages === "" ? "" : ` (${stages})`}`;
  const message =
    leaves === null || animals.needs === null
      ? `Fresh food for ${whom}. No need per larva is known; go by what was left over.`
      : `Fresh ${animals.needs.food} for ${whom}: ${leavesText(leaves.expected)}${upTo(leaves.expected, leaves.most)}.`;
  return [planTask(animals, "fresh-foliage", "morning", { animals: larvae, leaves, message })];
}

function upTo(expected: number, most: number): string {
  return wholeLeaves(most) > Math.max(1, wholeLeaves(expected)) ? `, ${wholeLeaves(most)} at most` : "";
}
