import type { Note, NoteCode } from "../../notes.ts";
import type { Mark } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import { type NoteContext, note } from "./note-context.ts";

const MARK_NOTES: readonly (readonly [Mark, NoteCode, string])[] = [
  ["from memory", "constant-from-memory", "From memory, not yet looked up in print"],
  ["derived", "derived-constant", "Derived here from published figures"],
  ["common practice, no source", "common-practice", "Common practice, no source"],
];

/** Which constants are not from a text that was read. */
export function constantNotes({ lifeCycle, path }: NoteContext): Note[] {
  const stages = lifeCycle.stages.slice(path.period);
  const notes: Note[] = [];
  for (const [mark, code, text] of MARK_NOTES) {
    const lower: string[] = [];
    const upper: string[] = [];
    const degreeDays: string[] = [];
    const cv: string[] = [];
    for (const needs of stages) {
      if (needs.lower.mark === mark) addOnce(lower, `${needs.lower.value} °C`);
      if (needs.upper?.mark === mark) addOnce(upper, `${needs.upper.value} °C`);
      if (needs.degreeDays.mark === mark) degreeDays.push(stageName(needs.stage));
      if (needs.cv.mark === mark) cv.push(stageName(needs.stage));
    }
    const named: string[] = [];
    if (lower.length > 0) named.push(`lower threshold ${listed(lower)}`);
    if (upper.length > 0) named.push(`upper threshold ${listed(upper)}`);
    if (degreeDays.length > 0) named.push(`degree-days of ${listed(degreeDays)}`);
    if (cv.length > 0) named.push(`how much animals differ in ${listed(cv)}`);
    if (lifeCycle.stageCorrelation.mark === mark)
      named.push("how far an animal is equally slow in all stages");
    if (lifeCycle.hang?.mark === mark) named.push("length of the hang");
    if (lifeCycle.darkening?.mark === mark) named.push("length of the darkening");
    if (named.length > 0) notes.push(note(code, `${text}: ${named.join("; ")}.`));
  }
  return notes;
}

function addOnce(words: string[], word: string): void {
  if (!words.includes(word)) words.push(word);
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
