import type { StageId } from "../../species/life-cycle.ts";
import type { CohortCourse } from "./cohort-course.ts";
import { dayOf, mayBegin, windowOf } from "./cohort-course.ts";
import type { PlanAnimals } from "./plan-cohort.ts";
import { about, aboutSome } from "./plan-words.ts";
import { type PlanTask, planTask } from "./plan-task.ts";
import { isTold } from "./rest.ts";
import { beginning } from "./stage-counts.ts";

/** What is to be watched, left alone, held and let go on a day. */
export function watchTasks(course: CohortCourse, day: number): PlanTask[] {
  return [...restTasks(course, day), ...hatchTasks(course.animals, day), ...adultTasks(course.animals, day)];
}

function restTasks(course: CohortCourse, day: number): PlanTask[] {
  const rest = dayOf(course, day)?.rest;
  if (rest === undefined) return [];
  const all: [number, string, string][] = [
    [rest.molting, `${about(rest.molting)} molting`, "molting"],
    [rest.hanging, `${about(rest.hanging)} hanging`, "hanging"],
    [rest.freshPupae, aboutSome(rest.freshPupae, "fresh pupa", "fresh pupae"), "a fresh pupa"],
  ];
  const resting = all.filter(([animals]) => isTold(animals, course.animals));
  if (resting.length === 0) return [];
  const who =
    course.animals.count === 1
      ? `it may be ${resting.map(([, , alone]) => alone).join(" or ")}`
      : `${resting.map(([, words]) => words).join(", ")} at one time`;
  return [
    planTask(course.animals, "do-not-disturb", "all day", {
      animals: resting.reduce((sum, [animals]) => sum + animals, 0),
      message: `Do not disturb: ${who}.`,
    }),
  ];
}

function hatchTasks(animals: PlanAnimals, day: number): PlanTask[] {
  const [stage, next] = animals.order;
  if (stage !== "egg" || next === undefined || !mayBegin(animals, next, day)) return [];
  const number = beginning(animals, next, day);
  return [
    planTask(animals, "watch-hatch", "morning", {
      animals: number,
      message: `Watch for hatching: ${numberOf(number, next, animals)}.`,
    }),
  ];
}

function adultTasks(animals: PlanAnimals, day: number): PlanTask[] {
  const tasks: PlanTask[] = [];
  const number = beginning(animals, "adult", day);
  if (mayBegin(animals, "adult", day)) {
    tasks.push(
      planTask(animals, "watch-emergence", "morning", {
        animals: number,
        message: `Watch for emergence: ${numberOf(number, "adult", animals)}.`,
      }),
      planTask(animals, "wings-drying", "morning", {
        animals: number,
        message: "Wings drying: leave new adults alone until their wings are hard.",
      }),
    );
    if (animals.fate === "release")
      tasks.push(
        planTask(animals, "hold", "evening", {
          animals: number,
          message: "Hold: adults of today stay in the cage for the night.",
        }),
      );
  } else if (mayBegin(animals, "darkening", day)) {
    tasks.push(
      planTask(animals, "watch-emergence", "morning", {
        animals: 0,
        message: "Watch for dark pupae: they emerge about a day later.",
      }),
    );
  }
  return [...tasks, ...endTasks(animals, day)];
}

/** What becomes of adults: freezing on the day itself, release on the day after. */
function endTasks(animals: PlanAnimals, day: number): PlanTask[] {
  const today = mayBegin(animals, "adult", day);
  const number = beginning(animals, "adult", day);
  switch (animals.fate) {
    case "freeze":
      return today
        ? [
            planTask(animals, "freeze", "evening", {
              animals: number,
              message: "Freeze, never release: keep every adult closed in.",
            }),
          ]
        : [];
    case "keep-in":
      return today
        ? [
            planTask(animals, "keep-in", "evening", {
              animals: number,
              message: "Keep in: do not release.",
            }),
          ]
        : [];
    case "release":
      return mayBegin(animals, "adult", day - 1)
        ? [
            planTask(animals, "release", "midday", {
              animals: beginning(animals, "adult", day - 1),
              message: "Release healthy adults where the law allows it, in suitable hours.",
            }),
          ]
        : [];
  }
}

/** `about 4 of 12`, on the expected day said so. */
function numberOf(number: number, id: StageId, animals: PlanAnimals): string {
  const known = windowOf(animals, id)?.expected ?? null;
  const some = `${about(number)} of ${animals.count}`;
  return known === null ? `${some} or more, no date is known` : some;
}
