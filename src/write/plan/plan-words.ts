import { capitalised, counted } from "../../plain-words.ts";
import type { Caution } from "../../rearing/cautions.ts";
import type { DayPlan, PlanConflict, PlannedCohort } from "../../rearing/plan/day-plan-result.ts";
import type { FoliageOutlook } from "../../rearing/plan/foliage-outlook.ts";
import { leavesText, wholeLeaves } from "../../rearing/plan/plan-words.ts";
import { foundAnimals } from "../pages/calendar-text.ts";
import { dayLabel, fullDayLabel } from "../layout/text-layout.ts";

/** A day in a sentence: `Mon 8 Jun`. */
export function shortDay(day: string): string {
  return dayLabel(day).replace("  ", " ");
}

/** What does not fit together, with its days as people write them. */
export function conflictText({ parts }: PlanConflict): string {
  return parts.map((part) => (typeof part === "string" ? part : shortDay(part.day))).join("");
}

/** `Mon 8 Jun to Sat 11 Jul 2026`. */
export function planSpan({ from, to }: Pick<DayPlan, "from" | "to">): string {
  const first = from.slice(0, 4) === to.slice(0, 4) ? shortDay(from) : fullDayLabel(from);
  return `${first} to ${fullDayLabel(to)}`;
}

/** `12 eggs, found on Mon 8 Jun 2026, monarch (Danaus plexippus), 1 cage`; after a log with when the stage began. */
export function cohortWords(cohort: PlannedCohort): string {
  const { count, cages, stage, foundOn, from, commonName, latinName } = cohort;
  const since = from === foundOn ? "" : ` since about ${shortDay(from)}`;
  const animals = `${foundAnimals({ stage, count })}${since}`;
  return `${animals}, found on ${fullDayLabel(foundOn)}, ${commonName} (${latinName}), ${counted(cages, "cage")}`;
}

/** Cautions; one that is not for all cohorts says for which it is. */
export function cautionsWithNames({ cautions, cohorts }: DayPlan): Caution[] {
  return cautions.map(({ id, title, text, cohorts: names }) => {
    const some = names.length === cohorts.length ? "" : ` (${names.join(", ")})`;
    return { id, title: `${title}${some}`, text };
  });
}

/** What a season of food comes to, in sentences. */
export function foodWords(outlook: FoliageOutlook): string[] {
  const { food, total, withMargin, peak, supplied } = outlook;
  if (total <= 0) return [`${capitalised(food)}: none, since no larva is to come.`];
  const spare = wholeLeaves(withMargin) - wholeLeaves(total);
  const sentences = [
    `${capitalised(food)}: ${total < 0.75 ? "" : "about "}${leavesText(total)} in all. Have ${wholeLeaves(withMargin)}${stemsText(outlook)}, so that ${counted(spare, "is", "are")} spare if the animals are early or late.`,
  ];
  const day = outlook.days.find((one) => one.day === peak);
  if (day !== undefined)
    sentences.push(
      `Most on ${shortDay(day.day)}: ${leavesText(day.expected)}${wholeLeaves(day.most) > wholeLeaves(day.expected) ? `, up to ${wholeLeaves(day.most)}` : ""}.`,
    );
  if (supplied !== null) {
    const leaves = wholeLeaves(supplied);
    sentences.push(
      `${counted(leaves, "leaf", "leaves")} at hand or to come: ${lasting(outlook, leaves === 1)}`,
    );
  }
  return sentences;
}

function stemsText({ stems, leavesPerStem }: FoliageOutlook): string {
  if (stems === null || leavesPerStem === null) return "";
  return ` (${counted(stems, "stem")} with ${counted(leavesPerStem, "leaf", "leaves")}${stems === 1 ? "" : " each"})`;
}

function lasting({ runsOut, runsOutEarly }: FoliageOutlook, one: boolean): string {
  const [they, last, run] = one ? ["it", "lasts", "runs"] : ["they", "last", "run"];
  if (runsOut !== null) return `${they} ${run} out on ${shortDay(runsOut)}.`;
  return runsOutEarly === null
    ? `${they} ${last}.`
    : `${they} ${last} as expected, but ${run} out on ${shortDay(runsOutEarly)} if all animals are early.`;
}
