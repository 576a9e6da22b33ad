import { displayUnit, short, temperatureText } from "../../src/plot/display-unit.ts";
import { longDate, startText } from "../../src/plot/index.ts";
import type { StartRow } from "../../src/plot/index.ts";
import type { MilestoneId } from "../../src/forecast/chance.ts";
import type { PlanDay } from "../../src/rearing/plan/day-plan-result.ts";
import type { HeatLimit } from "../../src/rearing/start/heat-limit.ts";
import type { ReleaseHour } from "../../src/rearing/release/release-hour.ts";
import type { EmergencePlan } from "../../src/rearing/release/release-plan.ts";
import type { Aim, DatePlan, RoomPlan } from "../../src/rearing/start/start-plan.ts";
import type { LifeCycle } from "../../src/species/life-cycle.ts";
import { stageName } from "../../src/species/stage-names.ts";
import type { TemperatureUnit } from "../../src/units.ts";
import { percent } from "./wording.ts";

/** What a class can come to see of a species that starts as eggs, the emergence first. */
export function sightsOf({ stages, hang }: LifeCycle): MilestoneId[] {
  const hatch = stages[1]?.stage;
  return ["adult", ...(hatch === undefined ? [] : [hatch]), ...(hang === null ? [] : ["prepupa" as const])];
}

/** A milestone as something to be seen. */
export function sightName(milestone: MilestoneId): string {
  if (milestone === "adult") return "the emergence";
  return milestone === "prepupa" ? "the hanging" : "the hatch";
}

/** What is aimed at, for a list. */
export function aimName(aim: Aim): string {
  return { one: "at least one in time", half: "at least half in time", each: "each one in time" }[aim];
}

/** The best start and its chance, in two or three sentences. */
export function bestOf(plan: DatePlan | RoomPlan, unit: TemperatureUnit): string {
  const { milestone, start, aim, absence } = plan;
  const day = `${longDate(plan.day)} ${plan.day.slice(0, 4)}`;
  const wanted = `${sightName(milestone)} on ${day}`;
  if (plan.best === null) return `No start can be advised for ${wanted}. ${absence?.message ?? ""}`.trim();
  const { odds } = plan.best;
  const where =
    plan.kind === "date"
      ? `start on ${longDate(plan.best.on)}`
      : `keep the room at ${startText({ on: plan.on, temperature: plan.best.temperature }, unit)} from ${longDate(plan.on)} on`;
  const what = {
    one: `at least one of ${start.count}`,
    half: `at least half of ${start.count}`,
    each: "each animal",
  };
  const degree = unit === "C" ? "1 °C" : "1.8 °F";
  const slips =
    plan.kind === "date"
      ? ""
      : ` A room ${degree} cooler than meant leaves ${percent(plan.best.ifCooler)}, ${degree} warmer ${percent(plan.best.ifWarmer)}.`;
  return (
    `For ${wanted}, ${where}: the chance is ${percent(odds.chance)} that ${what[aim]} does it on that day. Any one animal is in time ` +
    `with ${percent(odds.each)}, too early with ${percent(odds.early)} and too late with ${percent(odds.late)}.${slips}`
  );
}

/** What the number of animals gives the class, for the question at the end. */
export function questionOf({ kind, start, aim, best, milestone }: DatePlan | RoomPlan): string {
  const place = kind === "date" ? "on the porch" : "in the room";
  const many = start.count === 1 ? "one egg" : `${start.count} eggs`;
  if (best === null) return `With ${many} ${place} there is no chance to speak of.`;
  return (
    `With ${many} ${place} the best start gives ${sightName(milestone)} a chance of ${percent(best.odds.chance)} ` +
    `(${aimName(aim)}), and one animal alone ${percent(best.odds.each)}.`
  );
}

/** What the chosen start means beside the best one. */
export function chosenOf(chosen: StartRow, unit: TemperatureUnit): string {
  const name = startText(chosen, unit);
  if (chosen.chance === null) return `Chosen: ${name}. ${chosen.absence ?? ""}`.trim();
  const place = chosen.rank === 1 ? "the best of all" : `number ${chosen.rank ?? 0} of all by chance`;
  return `Chosen: ${name}, ${place}, with a chance of ${percent(chosen.chance)}.`;
}

/** Above which temperature a room is refused, and who says so. */
export function limitOf({ hottest, harm, source }: HeatLimit, unit: TemperatureUnit): string {
  return `A room above ${temperatureText(hottest, displayUnit(unit))} is refused: heat that lasts ${harm} (${source}).`;
}

/** A chance, or a dash where it is not known. */
export function chanceText(chance: number | null): string {
  return chance === null ? "–" : percent(chance);
}

/** The animals of a day, stage by stage. */
export function animalsOf({ cohorts }: PlanDay): string {
  const parts = cohorts.flatMap(({ stages }) =>
    stages.flatMap(({ stage, animals }) => (animals < 0.05 ? [] : [`${stageName(stage)} ${short(animals)}`])),
  );
  return parts.length === 0 ? "–" : parts.join(", ");
}

/** What to do on a day. */
export function tasksOf({ away, tasks }: PlanDay): string {
  const parts = [...new Set(tasks.map(({ part }) => part))].map((part) => {
    const messages = tasks.filter((task) => task.part === part).map(({ message }) => message);
    return `${part.charAt(0).toUpperCase()}${part.slice(1)}: ${messages.join(" ")}`;
  });
  const rest = parts.length === 0 ? "Nothing." : parts.join(" ");
  return away ? `Away. ${rest}` : rest;
}

/** The days that a plan is read around: three before to two after. */
export function daysAround(days: readonly PlanDay[], around: string): PlanDay[] {
  const at = days.findIndex(({ day }) => day >= around);
  const middle = at < 0 ? days.length - 1 : at;
  return days.slice(Math.max(0, middle - 3), middle + 3);
}

/** The hours after an emergence that have light, as they are to be looked at: its first day, or the day after. */
export function lightHours({ firstDay, nextDay }: EmergencePlan): ReleaseHour[] {
  const look = firstDay?.best == null ? (nextDay ?? firstDay) : firstDay;
  return (look?.hours ?? []).filter(({ reasons }) => reasons.every(({ code }) => code !== "dark"));
}

/** When to let an adult go, in a sentence, or why that is not known. */
export function releaseOf({ which, emergesAt, best, absence, advice }: EmergencePlan): string {
  const animal =
    emergesAt === null ? `The ${which} animal` : `The ${which} animal emerges on ${clockText(emergesAt)}`;
  const advised = advice.map(({ message }) => ` ${message}`).join("");
  return best === null
    ? `${animal}. No hour can be named: ${absence?.message ?? ""}${advised}`
    : `${animal}; the best hour to let it go begins on ${clockText(best.from)}.${advised}`;
}

/** The hour as its row is named, such as `4 July 14:00`. */
export function clockText(at: string): string {
  return `${longDate(at)} ${at.slice(11, 16)}`;
}

/** An hour's verdict with its rank. */
export function verdictOf({ verdict, rank }: ReleaseHour): string {
  if (rank !== null) return `fit, number ${rank}`;
  return verdict === "refused" ? "refused" : "not judged";
}

/** The reasons that decided an hour: all of a fit one, else what stood against it or was not known. */
export function reasonsOf({ verdict, reasons }: ReleaseHour): string {
  const wanted = { fit: true, refused: false, "not-judged": null }[verdict];
  return reasons.flatMap(({ good, message }) => (good === wanted ? [message] : [])).join(" ");
}
