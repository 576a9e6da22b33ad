import { given, givenList } from "../../given.ts";
import { civilDay } from "../../time/civil-day.ts";
import { DAY_MS } from "../../time/zone.ts";
import { type CareSchedule, careSchedule } from "./care-schedule.ts";
import { type CohortCourse, cohortCourse, dayOf, windowOf } from "./cohort-course.ts";
import type { CohortDay, DayPlan, PlanDay, PlannedCohort } from "./day-plan-result.ts";
import { feedingTasks } from "./feeding-tasks.ts";
import { foliageOutlook } from "./foliage-outlook.ts";
import { type PlanCohort, planAnimals } from "./plan-cohort.ts";
import { awayConflicts, foliageConflicts, peakConflicts, unknownDates } from "./plan-conflicts.ts";
import { planCautions, planNotes, stopNote } from "./plan-notes.ts";
import { PLAN_INSTRUCTIONS } from "./plan-instructions.ts";
import { type PlanOptions, checkedPlanOptions, suppliesByFood } from "./plan-options.ts";
import { type PlanTask, TASK_CODES } from "./plan-task.ts";
import { watchTasks } from "./watch-tasks.ts";

/** Longest plan, days: beyond a year and a bit the weather is not known anyway. */
const MOST_DAYS = 400;

/**
 * What to do on each day for one or more cohorts, from the windows of their forecasts.
 *
 * A hundred animals stand for each cohort, at evenly spaced shares of its windows; they give the numbers in each
 * stage, who rests, and what is eaten on each day. Work that disturbs is laid on days on which few rest and
 * somebody is there, where there are any. What does not fit together is not settled but told.
 * @param cohorts In any order; each has its own name and its own forecast.
 * @returns Plain data: `JSON.parse(JSON.stringify(plan))` is the same.
 * @throws {InputError} `invalid-found` for a cohort that cannot be used; `invalid-option`, `invalid-number` or
 *   `invalid-day` for an option.
 * @example
 * const found = { stage: "egg", on: "2026-07-01", count: 6 };
 * const room = forecast({ lifeCycle: danausPlexippus, found, temperatures: constantTemperature(25) });
 * const plan = dayPlan([{ name: "shelf", lifeCycle: danausPlexippus, forecast: room }]);
 * plan.foliage[0]?.total.toFixed(1) // → "42.0"
 */
export function dayPlan(cohorts: readonly PlanCohort[], options: PlanOptions = {}): DayPlan {
  givenList(cohorts, ["cohorts"]);
  given(options, ["options"], "an object of options");
  const { needs, supplies, leavesPerStem, limit, away, cleanEvery } = checkedPlanOptions(options);
  const animals = planAnimals(cohorts, needs);
  const begin = Math.min(
    ...animals.map(({ standIns }) => Math.floor((standIns[0]?.begins[0] ?? 0) / DAY_MS)),
  );
  const latest = begin + MOST_DAYS - 1;
  const courses = animals.map((one) => cohortCourse(one, latest));
  const end = Math.max(...courses.map(({ last }) => last));
  const care = new Map(courses.map((course) => [course, careSchedule(course, limit, cleanEvery, away)]));
  const days = Array.from({ length: end - begin + 1 }, (_, i) =>
    planDay(courses, care, begin + i, away.has(begin + i)),
  );
  const foods = [...new Set(animals.flatMap((one) => one.needs?.food ?? []))].sort();
  const byFood = suppliesByFood(supplies, foods);
  const foliage = foods.map((food) =>
    foliageOutlook(
      food,
      animals.filter((one) => one.needs?.food === food),
      [begin, end],
      byFood.get(food) ?? [],
      leavesPerStem,
    ),
  );
  const conflicts = [
    ...[...care.values()].flatMap((one) => one.conflicts),
    ...awayConflicts(days, courses),
    ...peakConflicts(courses),
    ...foliageConflicts(foliage),
    ...unknownDates(courses),
  ].sort((a, b) => (a.day === b.day ? 0 : a.day < b.day ? -1 : 1));
  const used = new Set(days.flatMap(({ tasks }) => tasks.map(({ code }) => code)));
  const stopped = courses.filter(({ whole, last }) => whole && last >= latest);
  return {
    from: civilDay(begin),
    to: civilDay(end),
    cohorts: courses.map(plannedCohort),
    days,
    foliage,
    instructions: TASK_CODES.filter((code) => used.has(code)).map((code) => PLAN_INSTRUCTIONS[code]),
    cageLimit: limit,
    conflicts,
    cautions: planCautions(courses),
    notes: [...stopNote(stopped, MOST_DAYS), ...planNotes(courses, limit)],
  };
}

function planDay(
  courses: readonly CohortCourse[],
  care: ReadonlyMap<CohortCourse, CareSchedule>,
  day: number,
  away: boolean,
): PlanDay {
  const present = courses.flatMap((course) => {
    const today = dayOf(course, day);
    return today === undefined ? [] : [{ course, today }];
  });
  const tasks = present.flatMap(({ course }): PlanTask[] => [
    ...watchTasks(course, day),
    ...(care.get(course)?.tasks.get(day) ?? []),
    ...feedingTasks(course, day),
  ]);
  const place = ({ code }: PlanTask): number => TASK_CODES.indexOf(code);
  return {
    day: civilDay(day),
    away,
    // Sorting keeps the order of the names among equal tasks.
    tasks: tasks.sort((a, b) => place(a) - place(b)),
    cohorts: present.map(({ today }): CohortDay => today),
  };
}

function plannedCohort({ animals, first, last }: CohortCourse): PlannedCohort {
  const { name, lifeCycle, forecast, count, cages, order, fate } = animals;
  const [stage = forecast.found.stage, ...later] = order;
  const events = later.flatMap((one) => (one === "adult" ? (["darkening", one] as const) : [one]));
  return {
    name,
    species: lifeCycle.species,
    latinName: lifeCycle.latinName,
    commonName: lifeCycle.commonName,
    count,
    cages,
    stage,
    foundOn: forecast.found.at.slice(0, 10),
    from: civilDay(first),
    to: civilDay(last),
    windows: events.flatMap((begins) => {
      const window = windowOf(animals, begins);
      return window === null ? [] : [{ begins, window }];
    }),
    adults: fate,
  };
}
