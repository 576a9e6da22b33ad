import type { LogFate } from "../../cohort/log.ts";
import type { InputError } from "../../errors.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { ROWS, refusal } from "../place.ts";
import { stageOfWord } from "../table/stage-words.ts";

/** Words for what became of animals, in lower case, that a log may use; each is one word of its cell. */
export const FATE_WORDS: ReadonlyMap<string, LogFate> = new Map<string, LogFate>([
  ...words("seen", "seen", "alive", "begun", "began"),
  ...words("died", "died", "dead", "dies", "death", "killed"),
  ...words("lost", "lost", "escaped", "moved", "missing", "removed", "released"),
]);

// Words between a fate and a stage: `died in the 3rd instar`, `moved as pupa`.
const LINKS = new Set(["as", "in", "at", "the", "a", "an", "during", "while", "found", "was", "were"]);

function words(fate: LogFate, ...spellings: string[]): [string, LogFate][] {
  return spellings.map((word) => [word, fate]);
}

/**
 * The stage and the fate that a row of a log tells, from its stage and from its fate where it has a cell for
 * that. `seen` is left out, as the log does.
 * @param cells Texts as they stand in the row; an empty fate says `seen`.
 * @param headers Headers of the two columns, for errors.
 * @param rows Rows that the two cells stand in, for errors.
 * @param firstLarvalStage What hatches. Default `instar-1`.
 * @throws {InputError} `unknown-stage` for a stage that is none, or a death without one; `invalid-log` for an
 *   unknown fate, or two that contradict each other.
 */
export function endOf(
  cells: { readonly stage: string; readonly fate: string },
  headers: { readonly stage: string; readonly fate: string },
  rows: { readonly stage: number; readonly fate: number },
  firstLarvalStage: "instar-1" | "larva" = "instar-1",
): { stage: StageId; fate?: LogFate } {
  const parts = partsOf(cells.stage);
  const inStage = fateIn(parts);
  const fateParts = partsOf(cells.fate);
  // A word that is not understood may turn the others round, as in `not dead`.
  const inFate = fateParts.every(isFateOrLink) ? fateIn(fateParts) : null;
  const refusedFate = (mustBe: string): InputError =>
    refusal("invalid-log", ROWS, rows.fate, headers.fate, cells.fate, mustBe);
  if (cells.fate.trim() !== "" && inFate === null) {
    throw refusedFate(
      "it must be one of seen, died or lost (escaped, moved), or empty for seen, without other words.",
    );
  }
  if (inStage !== null && inFate !== null && inStage !== inFate)
    throw refusedFate(`the stage says ${inStage}; keep one.`);
  const named = inStage === null ? cells.stage : parts.filter((part) => !isFateOrLink(part)).join(" ");
  if (named === "" && inStage !== null) {
    throw refusal(
      "unknown-stage",
      ROWS,
      rows.stage,
      headers.stage,
      cells.stage,
      `name the stage that the animals were in, such as ${inStage} as pupa.`,
    );
  }
  const stage = stageOfWord(named, firstLarvalStage, rows.stage, headers.stage);
  const fate = inFate ?? inStage ?? "seen";
  return fate === "seen" ? { stage } : { stage, fate };
}

function partsOf(text: string): string[] {
  return text.split(/[\s,:;()]+/).filter((part) => part !== "");
}

/** The fate that words tell, or `null` where they tell none or two. What was `seen dead` is dead. */
function fateIn(parts: readonly string[]): LogFate | null {
  const told = new Set(parts.flatMap((part) => FATE_WORDS.get(part.toLowerCase()) ?? []));
  if (told.size > 1) told.delete("seen");
  const [fate] = told;
  return fate === undefined || told.size > 1 ? null : fate;
}

function isFateOrLink(part: string): boolean {
  const word = part.toLowerCase();
  return FATE_WORDS.has(word) || LINKS.has(word);
}
