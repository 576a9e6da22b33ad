import type { Note, NoteCode } from "../notes.ts";
import type { Mark, Sourced, StageNeeds } from "../species/life-cycle.ts";
import { stageName } from "../species/stage-names.ts";
import { type NoteContext, note } from "./note-context.ts";

const MARK_NOTES: readonly (readonly [Mark, NoteCode, string])[] = [
  ["from memory", "constant-from-memory", "From memory, not yet looked up in print"],
  ["derived", "derived-constant", "Derived here from published figures"],
  ["common practice, no source", "common-practice", "Common practice, no source"],
];

/** Which constants are not from a text that was read. */
export function constantNotes({ lifeCycle, path }: NoteContext): Note[] {
  const stages = lifeCycle.stages.slice(path.period);
  return MARK_NOTES.flatMap(([mark, code, text]) => {
    const of = (what: string, constant: (needs: StageNeeds) => Sourced | null): string[] => {
      const marked = stages
        .filter((needs) => constant(needs)?.mark === mark)
        .map(({ stage }) => stageName(stage));
      return marked.length === 0 ? [] : [`${what} ${listed(marked)}`];
    };
    const values = (what: string, constant: (needs: StageNeeds) => Sourced | null): string[] => {
      const marked = stages.map(constant).filter((one) => one?.mark === mark);
      const distinct = [...new Set(marked.map((one) => `${one?.value} °C`))];
      return distinct.length === 0 ? [] : [`${what} ${listed(distinct)}`];
    };
    const named = [
      ...values("lower threshold", ({ lower }) => lower),
      ...values("upper threshold", ({ upper }) => upper),
      ...of("degree-days of", ({ degreeDays }) => degreeDays),
      ...of("how much animals differ in", ({ cv }) => cv),
      ...(lifeCycle.stageCorrelation.mark === mark
        ? ["how far an animal is equally slow in all stages"]
        : []),
      ...(lifeCycle.hang?.mark === mark ? ["length of the hang"] : []),
      ...(lifeCycle.darkening?.mark === mark ? ["length of the darkening"] : []),
    ];
    return named.length === 0 ? [] : [note(code, `${text}: ${named.join("; ")}.`)];
  });
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
