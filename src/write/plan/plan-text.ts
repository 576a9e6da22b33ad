import { given } from "../../given.ts";
import type { DayPlan, PlanDay } from "../../rearing/plan/day-plan-result.ts";
import type { PlanTask } from "../../rearing/plan/plan-task.ts";
import { cautionsWithNames, cohortWords, conflictText, foodWords, planSpan, shortDay } from "./plan-words.ts";
import { cautionsText, notesText } from "../layout/remarks-text.ts";
import { bullet, dayLabel, inSeveralYears, isMonday, pageOf, wrapped } from "../layout/text-layout.ts";

/**
 * A day plan as plain text: what does not fit together first, then the food, then day by day, then what the tasks
 * mean, cautions and notes. At most 80 columns, no colour.
 */
export function planText(plan: DayPlan): string {
  given(plan, ["plan"], "what dayPlan returns", "days", "cautions", "notes");
  const blocks = [
    header(plan),
    section(
      "LOOK AT THIS FIRST",
      plan.conflicts.map((conflict) => bullet(conflictText(conflict), "!")),
    ),
    section(
      "FOOD",
      plan.foliage.map((food) => bullet(foodWords(food).join(" "))),
    ),
    section("DAY BY DAY", dayLines(plan)),
    section(
      "WHAT TO DO",
      plan.instructions.map(({ title, text }) => bullet(`${title}: ${text}`)),
    ),
    cautionsText(cautionsWithNames(plan)),
    notesText(plan.notes),
  ];
  return pageOf(blocks);
}

function header(plan: DayPlan): string {
  const several = plan.cohorts.length > 1;
  return [
    wrapped(`Day plan, ${planSpan(plan)}`),
    ...plan.cohorts.map((cohort) =>
      wrapped(`${several ? `${cohort.name}: ` : ""}${cohortWords(cohort)}`, { first: "  ", rest: "    " }),
    ),
  ].join("\n");
}

function section(title: string, lines: readonly string[]): string {
  return lines.length === 0 ? "" : [title, ...lines].join("\n");
}

function dayLines({ days, cohorts }: DayPlan): string[] {
  const lines: string[] = [];
  const several = cohorts.length > 1;
  const years = inSeveralYears(days.map(({ day }) => day));
  let year = "";
  for (let i = 0; i < days.length; i++) {
    const day = days[i];
    if (day === undefined) continue;
    if (isMonday(day.day) && i > 0) lines.push("");
    if (years && day.day.slice(0, 4) !== year) lines.push(`  ${day.day.slice(0, 4)}`);
    year = day.day.slice(0, 4);
    // A winter of idle days is one line.
    const idle = idleDays(days, i);
    if (idle > 2) {
      const last = days[i + idle - 1]?.day ?? day.day;
      lines.push(`  ${dayLabel(day.day)}  to ${shortDay(last)}: nothing to do`);
      i += idle - 1;
    } else lines.push(...linesOf(day, several));
  }
  return lines;
}

function idleDays(days: readonly PlanDay[], from: number): number {
  const busy = days.findIndex(({ tasks, away }, i) => i >= from && (tasks.length > 0 || away));
  return (busy < 0 ? days.length : busy) - from;
}

const BEFORE = " ".repeat(14);
const HANGING = `${BEFORE}    `;

function linesOf({ day, away, tasks }: PlanDay, several: boolean): string[] {
  const start = `  ${dayLabel(day)}${away ? "  nobody there" : ""}`;
  if (tasks.length === 0) return [start];
  const [first = "", ...rest] = tasks.map((task) => taskWords(task, several));
  const line = (text: string, before: string): string =>
    wrapped(text, { first: `${before}[ ] `, rest: HANGING });
  return away
    ? [start, ...[first, ...rest].map((text) => line(text, BEFORE))]
    : [line(first, `${start}  `), ...rest.map((text) => line(text, BEFORE))];
}

function taskWords({ cohort, message, movedFrom }: PlanTask, several: boolean): string {
  const moved = movedFrom === null ? "" : ` (due ${shortDay(movedFrom)})`;
  return `${several ? `${cohort}: ` : ""}${message}${moved}`;
}
