import type { Note } from "../../notes.ts";
import { type CageLimit, USUAL_CAGE_LIMIT } from "./cage-limit.ts";
import { cautionsFor } from "../cautions.ts";
import type { CohortCourse } from "./cohort-course.ts";
import type { PlanCaution } from "./day-plan-result.ts";
import { feedingStagesOf } from "./foliage-needs.ts";
import { namesText } from "./plan-words.ts";

/** What a reader of a plan must know: of the plan itself, then of the forecasts, each sentence once. */
export function planNotes(courses: readonly CohortCourse[], limit: CageLimit): Note[] {
  const notes: Note[] = [
    {
      code: "survival-not-counted",
      message:
        "Numbers of animals and leaves are as if every animal lived; of animals found outdoors fewer will.",
    },
  ];
  for (const message of needsSentences(courses)) notes.push({ code: "common-practice", message });
  notes.push({
    code: "common-practice",
    message:
      `Quiet days, the day that a pupa takes to harden and the rhythm of cleaning are common practice without a source. ${limit === USUAL_CAGE_LIMIT ? `The limit of ${limit.larvae} larvae to a cage was read for monarchs; for others it is common practice.` : ""}`.trim(),
  });
  for (const message of unseenMolts(courses)) notes.push({ code: "molts-not-dated", message });
  const cohortsOf = new Map<string, { note: Note; names: string[] }>();
  for (const { animals } of courses) {
    for (const note of animals.forecast.notes) {
      const known = cohortsOf.get(note.message);
      if (known === undefined) cohortsOf.set(note.message, { note, names: [animals.name] });
      else known.names.push(animals.name);
    }
  }
  for (const { note, names } of cohortsOf.values()) {
    const whose = names.length === courses.length ? "" : `${namesText(names)}: `;
    notes.push({ code: note.code, message: `${whose}${note.message}` });
  }
  return notes;
}

/** Where the larva is one stage, nobody is told of its molts, and a molting larva must not be touched. */
function unseenMolts(courses: readonly CohortCourse[]): Set<string> {
  const whole = courses.filter(({ animals }) => animals.order.includes("larva"));
  return new Set(
    whole.map(
      ({ animals: { lifeCycle } }) =>
        `The constants of the ${lifeCycle.commonName} have the larva as one stage, so its molts are in no task. Look before you clean, and leave alone every larva that sits still: it may be about to molt.`,
    ),
  );
}

function needsSentences(courses: readonly CohortCourse[]): Set<string> {
  const sentences = new Set<string>();
  for (const { animals } of courses) {
    if (animals.needs === null) continue;
    const { food, leaves } = animals.needs;
    // Needs may hold a larva as a whole beside its instars, for other constants of the species.
    const all = feedingStagesOf(animals.lifeCycle.stages).flatMap((stage) => leaves[stage] ?? []);
    const unsourced = all.find(({ mark }) => mark === "common practice, no source");
    if (unsourced === undefined) continue;
    const total = all.reduce((sum, { value }) => sum + value, 0);
    const mostlyLast = all.length > 1 && (all.at(-1)?.value ?? 0) > total / 2;
    sentences.add(
      `A ${animals.lifeCycle.commonName} larva is taken to eat ${Number(total.toPrecision(3))} leaves of ${food} in all${mostlyLast ? ", most of it in its last stage" : ""} (common practice, no source; ${unsourced.source}). Correct it by what yours leave over.`,
    );
  }
  return sentences;
}

/** The cautions of all cohorts, each once, with the cohorts that it is for. */
export function planCautions(courses: readonly CohortCourse[]): PlanCaution[] {
  const all = new Map<string, PlanCaution>();
  for (const { animals } of courses) {
    for (const caution of cautionsFor(animals.lifeCycle)) {
      const cohorts = [...(all.get(caution.id)?.cohorts ?? []), animals.name];
      all.set(caution.id, { ...caution, cohorts });
    }
  }
  return [...all.values()];
}

/** That a plan ends before its animals do. */
export function stopNote(courses: readonly CohortCourse[], most: number): Note[] {
  const names = courses.map(({ animals }) => animals.name);
  return names.length === 0
    ? []
    : [
        {
          code: "plan-stops",
          message: `The plan stops ${most} days after its first; what ${names.length === 1 ? "cohort" : "cohorts"} ${namesText(names)} need later is not in it.`,
        },
      ];
}
