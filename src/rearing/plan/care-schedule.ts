import { civilDay } from "../../time/civil-day.ts";
import { type CageLimit, cagesFor } from "./cage-limit.ts";
import { type CohortCourse, dayOf, numberOf, windowOf } from "./cohort-course.ts";
import type { PlanConflict, SentencePart } from "./day-plan-result.ts";
import { FRESH_PUPA_HOURS, isTold } from "./rest.ts";
import { HALF_AN_ANIMAL, larvaeOf } from "./stage-counts.ts";
import { type PlanTask, planTask } from "./plan-task.ts";
import { aboutSome, planConflict } from "./plan-words.ts";

/** Work on cages that can be moved by a day, and what could not. */
export interface CareSchedule {
  /** Tasks by the number of their day. */
  readonly tasks: ReadonlyMap<number, readonly PlanTask[]>;
  readonly conflicts: readonly PlanConflict[];
}

/** Numbers of the days on which nobody is there. */
export type AwayDays = ReadonlySet<number>;

/** Cleaning, splitting a crowded cage and moving pupae, on days that disturb nobody where there are any. */
export function careSchedule(
  course: CohortCourse,
  limit: CageLimit,
  cleanEvery: number,
  away: AwayDays,
): CareSchedule {
  const parts = [
    cleaning(course, cleanEvery, away),
    splitting(course, limit, away),
    movingPupae(course, away),
  ].flat();
  const tasks = new Map<number, PlanTask[]>();
  for (const { day, task: one } of parts) tasks.set(day, [...(tasks.get(day) ?? []), one]);
  return { tasks, conflicts: parts.flatMap(({ conflict }) => (conflict === null ? [] : [conflict])) };
}

interface Placed {
  readonly day: number;
  readonly task: PlanTask;
  readonly conflict: PlanConflict | null;
}

/** A day is good for work when few rest and somebody is there. */
function isGood(course: CohortCourse, day: number, away: AwayDays): boolean {
  const today = dayOf(course, day);
  return today !== undefined && !today.quiet && !away.has(day);
}

// The day itself if it is good, else the next, else the one before, else the day itself in spite of all.
function cleaningDay(course: CohortCourse, due: number, earliest: number, away: AwayDays): number {
  const choices = [due, due + 1, due - 1].filter((day) => day >= earliest);
  return choices.find((day) => isGood(course, day, away)) ?? Math.max(due, earliest);
}

function cleaning(course: CohortCourse, every: number, away: AwayDays): Placed[] {
  const { animals, first, last } = course;
  const found: Placed[] = [];
  const soiled = (day: number): boolean => larvaeOf(dayOf(course, day)?.stages ?? []) >= HALF_AN_ANIMAL;
  let due = first;
  while (due <= last && !soiled(due)) due += 1;
  // Eggs soil nothing, so their cage counts as cleaned on the day of the first hatchlings.
  const hatching = animals.order[0] === "egg";
  let done = hatching ? due : first - 1;
  if (hatching) due += every;
  for (; due <= last && soiled(due); due += every) {
    // What is done every day cannot be moved.
    const day = every === 1 ? due : cleaningDay(course, due, done + 1, away);
    done = day;
    const quiet = dayOf(course, day)?.quiet === true;
    found.push({
      day,
      task: planTask(animals, "clean", "morning", {
        animals: null,
        movedFrom: day === due ? null : civilDay(due),
        message: cleaningText(course, day),
      }),
      conflict: quiet && every > 1 ? disturbed(course, day, "Cleaning") : null,
    });
  }
  return found;
}

function cleaningText(course: CohortCourse, day: number): string {
  const today = dayOf(course, day);
  if (course.animals.count === 1 && isTold(today?.rest.share ?? 0, course.animals))
    return "Clean around it: if it rests, do not touch it.";
  return today?.quiet === true ? "Clean around them: many rest, touch none." : "Clean the cage.";
}

function splitting(course: CohortCourse, limit: CageLimit, away: AwayDays): Placed[] {
  const { animals, first, last, days } = course;
  const numbers = days.map(({ stages }) => larvaeOf(stages));
  const crowded = numbers.findIndex((larvae) => cagesFor(larvae, limit) > animals.cages);
  if (crowded < 0) return [];
  const due = first + crowded;
  const most = numbers.reduce((a, b) => Math.max(a, b), 0);
  const cages = cagesFor(most, limit);
  // Better a day too early than a day too late.
  const choices = [due, due - 1, due + 1].filter((day) => day >= first && day <= last);
  const day = choices.find((one) => isGood(course, one, away)) ?? due;
  const why = `${aboutSome(most, "larva", "larvae")} in ${animals.cages === 1 ? "1 cage" : `${animals.cages} cages`}, and the limit is ${limit.larvae} to a cage. ${limit.reason}`;
  const quiet = dayOf(course, day)?.quiet === true;
  return [
    {
      day,
      task: planTask(animals, "split-cage", "morning", {
        animals: most,
        movedFrom: day === due ? null : civilDay(due),
        message: `Split the cage: ${cages} cages are needed.${quiet ? " Wait with those that rest." : ""}`,
      }),
      conflict: conflict(course, "cage-crowded", due, `Cohort ${animals.name} crowds its cages: ${why}`),
    },
  ];
}

function movingPupae(course: CohortCourse, away: AwayDays): Placed[] {
  const { animals, first, last } = course;
  const [pupa, adult] = [windowOf(animals, "pupa"), windowOf(animals, "adult")];
  if (pupa?.expected == null) return [];
  const rest = Math.ceil(FRESH_PUPA_HOURS / 24) + 1;
  const allHard = numberOf(pupa.late ?? pupa.expected) + rest;
  const darkens = windowOf(animals, "darkening")?.early ?? adult?.early ?? null;
  const before = darkens === null ? last : numberOf(darkens) - 1;
  const found = [allHard, allHard + 1, allHard + 2].find((day) => day <= before && isGood(course, day, away));
  const day = Math.min(last, Math.max(first, found ?? Math.min(allHard, numberOf(pupa.expected) + rest)));
  const message = "Move pupae that hang badly, if they are hard and not dark.";
  return [
    {
      day,
      task: planTask(animals, "move-pupae", "midday", { animals: animals.count, message }),
      conflict:
        found === undefined
          ? conflict(
              course,
              "no-day-to-move-pupae",
              day,
              `Cohort ${animals.name} has no day on which all pupae are hard, none is dark and somebody is there; move single ones, or leave them where they hang.`,
            )
          : null,
    },
  ];
}

function disturbed(course: CohortCourse, day: number, what: string): PlanConflict {
  const share = Math.round((dayOf(course, day)?.rest.share ?? 0) * 100);
  return conflict(
    course,
    "disturbed-rest",
    day,
    `${what} of cohort ${course.animals.name} is due on `,
    { day: civilDay(day) },
    `, when ${course.animals.count === 1 ? `it may rest (with a chance of up to ${share} %)` : `up to ${share} % of its larvae and pupae rest`}, and no day beside it is better.`,
  );
}

function conflict(
  { animals }: CohortCourse,
  code: PlanConflict["code"],
  day: number,
  ...parts: readonly SentencePart[]
): PlanConflict {
  return planConflict({ code, day: civilDay(day), days: [civilDay(day)], cohorts: [animals.name] }, parts);
}
