import { counted } from "../../plain-words.ts";
import type { CohortDay, DayPlan, PlanDay } from "../../rearing/plan/day-plan-result.ts";
import { isTold } from "../../rearing/plan/rest.ts";
import type { PlanTask, TaskCode } from "../../rearing/plan/plan-task.ts";
import { htmlText } from "./html-text.ts";
import { wholeLeaves } from "../../rearing/plan/plan-words.ts";
import { shortDay } from "./plan-words.ts";
import { isMonday } from "../layout/text-layout.ts";

/** The days of a plan as rows of a table, a row for each cohort that has something to do. */
export function planTable(plan: DayPlan): string {
  const several = plan.cohorts.length > 1;
  const head = [
    "Day",
    ...(several ? ["Cohort"] : []),
    "Watch",
    "Leave alone",
    "Cage",
    "Leaves",
    "Adults",
    "Done",
  ];
  return [
    several ? '<table class="several">' : "<table>",
    "<caption>Day by day</caption>",
    `<thead><tr>${head.map((name) => `<th scope="col">${name}</th>`).join("")}</tr></thead>`,
    "<tbody>",
    ...rowsOf(plan.days, several),
    "</tbody>",
    "</table>",
  ].join("\n");
}

function rowsOf(days: readonly PlanDay[], several: boolean): string[] {
  const rows: string[] = [];
  const wide = several ? 6 : 5;
  for (let i = 0; i < days.length; i++) {
    const day = days[i];
    if (day === undefined) continue;
    const busy = days.findIndex(({ tasks, away }, k) => k >= i && (tasks.length > 0 || away));
    const idle = (busy < 0 ? days.length : busy) - i;
    if (idle > 2) {
      const last = days[i + idle - 1]?.day ?? day.day;
      rows.push(
        `<tr><th scope="row">${shortDay(day.day)}</th><td colspan="${wide}">to ${shortDay(last)}: nothing to do</td><td></td></tr>`,
      );
      i += idle - 1;
    } else rows.push(...dayRows(day, several));
  }
  return rows;
}

function dayRows({ day, away, tasks, cohorts }: PlanDay, several: boolean): string[] {
  const busy = cohorts.filter(({ cohort }) => tasks.some((task) => task.cohort === cohort));
  const lines: (CohortDay | null)[] = busy.length > 0 ? busy : [null];
  const date = `${shortDay(day)}${away ? " <b>away</b>" : ""}`;
  return lines.map((line, i) => {
    const own = line === null ? [] : tasks.filter(({ cohort }) => cohort === line.cohort);
    const cells = [
      watchCell(own),
      line === null ? "" : restCell(line, own),
      cageCell(own),
      leavesCell(own),
      adultsCell(own),
    ];
    const first =
      i === 0 ? `<th scope="row"${lines.length > 1 ? ` rowspan="${lines.length}"` : ""}>${date}</th>` : "";
    const name = several ? `<td class="name">${htmlText(line?.cohort ?? "")}</td>` : "";
    const classes = [...(i === 0 && isMonday(day) ? ["week"] : []), ...(away ? ["away"] : [])].join(" ");
    const box = own.length > 0 ? '<span class="box"></span>' : "";
    return `<tr${classes === "" ? "" : ` class="${classes}"`}>${first}${name}${cells.map((cell) => `<td>${cell}</td>`).join("")}<td>${box}</td></tr>`;
  });
}

function watchCell(tasks: readonly PlanTask[]): string {
  return [
    ...some(tasks, "watch-hatch", ({ animals }) => doing(animals, "hatch", "hatches")),
    ...some(tasks, "watch-emergence", ({ animals }) =>
      animals === 0 ? "dark pupae" : doing(animals, "emerge", "emerges"),
    ),
  ].join("; ");
}

function restCell({ rest, quiet, stages }: CohortDay, tasks: readonly PlanTask[]): string {
  if (!tasks.some(({ code }) => code === "do-not-disturb")) return "";
  const kinds: [number, string][] = [
    [rest.molting, "molting"],
    [rest.hanging, "hanging"],
    [rest.freshPupae, "fresh"],
  ];
  const all = Math.round(stages.reduce((sum, { animals }) => sum + animals, 0));
  const who = kinds
    .filter(([animals]) => isTold(animals, { count: all }))
    .map(([animals, what]) => (animals < 0.5 ? `perhaps ${what}` : `${Math.round(animals)} ${what}`));
  return `${quiet ? "<b>quiet day:</b> " : ""}${who.join(", ")}`;
}

function cageCell(tasks: readonly PlanTask[]): string {
  const moved = ({ movedFrom }: PlanTask): string =>
    movedFrom === null ? "" : ` (due ${shortDay(movedFrom).slice(4)})`;
  return [
    ...some(tasks, "clean", (task) => `clean${moved(task)}`),
    ...some(tasks, "split-cage", (task) => `<b>split</b>${moved(task)}`),
    ...some(tasks, "move-pupae", (task) => `move pupae${moved(task)}`),
  ].join("; ");
}

function leavesCell(tasks: readonly PlanTask[]): string {
  return some(tasks, "fresh-foliage", ({ leaves }) => {
    if (leaves === null) return "fresh";
    const [expected, most] = [wholeLeaves(leaves.expected), wholeLeaves(leaves.most)];
    if (leaves.most < 0.75) return "&lt; 1";
    return most > expected ? `${expected} <small>to ${most}</small>` : `${expected}`;
  }).join("");
}

function adultsCell(tasks: readonly PlanTask[]): string {
  return [
    ...some(tasks, "wings-drying", () => "wings drying"),
    ...some(tasks, "hold", () => "hold"),
    ...some(tasks, "release", () => "release"),
    ...some(tasks, "keep-in", () => "<b>keep in</b>"),
    ...some(tasks, "freeze", () => "<b>freeze, never release</b>"),
  ].join(", ");
}

function some(tasks: readonly PlanTask[], code: TaskCode, words: (task: PlanTask) => string): string[] {
  return tasks.filter((task) => task.code === code).map(words);
}

/** `1 hatches`, `3 hatch`. */
function doing(animals: number | null, many: string, one: string): string {
  return counted(Math.max(1, Math.round(animals ?? 1)), one, many);
}
