import { civilDay, dayNumber } from "../../time/civil-day.ts";
import { type CohortCourse, numberOf, windowOf } from "./cohort-course.ts";
import type { PlanConflict, PlanDay } from "./day-plan-result.ts";
import type { FoliageOutlook } from "./foliage-outlook.ts";
import type { PlanTask, TaskCode } from "./plan-task.ts";
import { about, daysWords, leavesText, namesText, planConflict } from "./plan-words.ts";

/** Tasks that need somebody, and what is said when nobody is there. */
const NEEDS_SOMEBODY: Readonly<Partial<Record<TaskCode, (tasks: readonly PlanTask[]) => string>>> = {
  "watch-emergence": (tasks) =>
    `${about(animalsIn(tasks))} of its adults may emerge; a crumpled or fallen one would not be seen`,
  "watch-hatch": (tasks) => `${about(animalsIn(tasks))} of its eggs may hatch and find no fresh food`,
  "fresh-foliage": (tasks) => {
    const leaves = tasks.reduce((sum, one) => sum + (one.leaves?.most ?? 0), 0);
    const amount = leaves > 0 ? `up to ${leavesText(leaves)}` : "fresh food";
    return `its larvae need ${amount}; put it out before, in water, or ask somebody`;
  },
  clean: () => "its cage is due to be cleaned, and no day beside it is better",
  "split-cage": () => "its cage is due to be split, and no day beside it is better",
  "move-pupae": () => "its pupae are to be moved",
  freeze: () => "its adults are to be kept closed in and frozen",
  release: () => "its adults are to be released; they would have to wait",
};

function animalsIn(tasks: readonly PlanTask[]): number {
  return tasks.reduce((sum, { animals }) => sum + (animals ?? 0), 0);
}

/** What falls on days on which nobody is there, days in a row together. */
export function awayConflicts(days: readonly PlanDay[], cohorts: readonly CohortCourse[]): PlanConflict[] {
  return cohorts.flatMap(({ animals: { name } }) =>
    Object.entries(NEEDS_SOMEBODY).flatMap(([code, words]) => {
      const missed = days
        .filter(({ away }) => away)
        .flatMap(({ day, tasks }) =>
          tasks.filter((one) => one.cohort === name && one.code === code).map((task) => ({ day, task })),
        );
      return inRows(missed).map((row): PlanConflict => {
        const [first] = row;
        const on = row.map(({ day }) => day);
        return planConflict({ code: "nobody-there", day: first?.day ?? "", days: on, cohorts: [name] }, [
          "Nobody is there on ",
          ...daysWords(on),
          ` for cohort ${name}: ${words(row.map(({ task }) => task))}.`,
        ]);
      });
    }),
  );
}

function inRows<Entry extends { readonly day: string }>(entries: readonly Entry[]): Entry[][] {
  const rows: Entry[][] = [];
  for (const entry of entries) {
    const row = rows.at(-1);
    const before = row?.at(-1);
    if (row !== undefined && before !== undefined && dayNumber(entry.day) === dayNumber(before.day) + 1)
      row.push(entry);
    else rows.push([entry]);
  }
  return rows;
}

/** Cohorts that are at their busiest on the same day: the most food, or the middle adult. */
export function peakConflicts(cohorts: readonly CohortCourse[]): PlanConflict[] {
  return [
    ...together(cohorts, hungriestDay, "need the most food"),
    ...together(cohorts, adultDay, "are expected to emerge"),
  ];
}

function together(
  cohorts: readonly CohortCourse[],
  peakOf: (course: CohortCourse) => number | null,
  what: string,
): PlanConflict[] {
  const byDay = new Map<number, string[]>();
  for (const course of cohorts) {
    const peak = peakOf(course);
    if (peak !== null) byDay.set(peak, [...(byDay.get(peak) ?? []), course.animals.name]);
  }
  return [...byDay].flatMap(([number, names]): PlanConflict[] => {
    const day = civilDay(number);
    if (names.length < 2) return [];
    const parts = [`Cohorts ${namesText(names)} ${what} on the same day, `, { day }, "."];
    return [planConflict({ code: "peaks-together", day, days: [day], cohorts: names }, parts)];
  });
}

function hungriestDay({ days, first }: CohortCourse): number | null {
  const amounts = days.map(({ leaves }) => leaves?.expected ?? 0);
  const most = amounts.reduce((a, b) => Math.max(a, b), 0);
  return most === 0 ? null : first + amounts.indexOf(most);
}

function adultDay({ animals }: CohortCourse): number | null {
  const expected = windowOf(animals, "adult")?.expected ?? null;
  return expected === null ? null : numberOf(expected);
}

/** Food that does not last. */
export function foliageConflicts(outlooks: readonly FoliageOutlook[]): PlanConflict[] {
  return outlooks.flatMap((outlook): PlanConflict[] => {
    const { food, cohorts, days, runsOut, runsOutEarly } = outlook;
    const day = runsOut ?? runsOutEarly;
    if (day === null) return [];
    const missing = outlook.total - (outlook.supplied ?? 0);
    const inAll =
      missing > 1e-6 ? ` ${leavesText(missing)} in all are missing.` : " More comes later, but not in time.";
    const parts =
      runsOut === null
        ? [`The ${food} lasts as expected, but runs out on `, { day }, " if all animals are early."]
        : [`The ${food} runs out on `, { day }, `.${inAll}`];
    const short = days.flatMap((one) => (one.day >= day && one.expected > 0 ? [one.day] : []));
    const on = short.length > 0 ? short : [day];
    return [planConflict({ code: "foliage-short", day, days: on, cohorts }, parts)];
  });
}

/** Cohorts of which the forecast does not know every date. */
export function unknownDates(cohorts: readonly CohortCourse[]): PlanConflict[] {
  return cohorts.flatMap((course): PlanConflict[] => {
    if (course.whole) return [];
    const { name, forecast } = course.animals;
    const why = forecast.stages.find(({ absence }) => absence !== null)?.absence?.message ?? "";
    const day = civilDay(course.last);
    return [
      planConflict({ code: "dates-unknown", day, days: [day], cohorts: [name] }, [
        `The plan of cohort ${name} stops on `,
        { day },
        `, because later dates are not known, and its amounts are too low.${why === "" ? "" : ` ${why}`}`,
      ]),
    ];
  });
}
