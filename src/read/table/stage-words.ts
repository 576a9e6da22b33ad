import { nearestNames } from "../../errors.ts";
import { STAGE_IDS, type StageId } from "../../species/life-cycle.ts";
import { ROWS, refusal } from "../place.ts";

const ORDINALS = [
  ["1st", "first", "i"],
  ["2nd", "second", "ii"],
  ["3rd", "third", "iii"],
  ["4th", "fourth", "iv"],
  ["5th", "fifth", "v"],
] as const;

const INSTARS = ["instar-1", "instar-2", "instar-3", "instar-4", "instar-5"] as const;

/**
 * Words for a stage, or for the event that begins it, that a log may use; all in lower case, with single
 * blanks in place of hyphens and underscores. `hatched` is not among them: what hatches is the first
 * instar, or a larva where a species has no instars, and an option decides. `Eclosed` is taken as the
 * adult's, which is how butterfly rearers use it (common practice, no source).
 */
export const STAGE_WORDS: ReadonlyMap<string, StageId> = new Map<string, StageId>([
  ...STAGE_IDS.map((id): [string, StageId] => [id.replace("-", " "), id]),
  ...words("egg", "eggs", "egg laid", "eggs laid", "laid"),
  ...words("larva", "larvae", "caterpillar", "caterpillars"),
  ...INSTARS.flatMap((id, i) =>
    words(
      id,
      `l${i + 1}`,
      `instar${i + 1}`,
      ...(ORDINALS[i] ?? []).flatMap((word) => [`${word} instar`, `instar ${word}`]),
    ),
  ),
  ...words("prepupa", "pre pupa", "prepupae", "prepupal", "hanging", "hangs", "hung", "hang"),
  ...words("pupa", "pupae", "pupated", "pupates", "pupation", "chrysalis", "chrysalid"),
  ...words(
    "adult",
    "adults",
    "emerged",
    "emerges",
    "emergence",
    "eclosed",
    "eclosion",
    "imago",
    "butterfly",
    "moth",
  ),
]);

const HATCHING = new Set(["hatched", "hatches", "hatching", "hatch"]);

function words(stage: StageId, ...spellings: string[]): [string, StageId][] {
  return spellings.map((word) => [word, stage]);
}

/**
 * The stage that a word names, or `null`. Case, and whether blanks, hyphens or underscores stand between its
 * parts, do not matter.
 * @param firstLarvalStage What hatches.
 */
export function stageNamed(text: string, firstLarvalStage: "instar-1" | "larva"): StageId | null {
  const word = plainWord(text);
  return HATCHING.has(word) ? firstLarvalStage : (STAGE_WORDS.get(word) ?? null);
}

/**
 * What is said to a word that names no stage: near words, or all stages.
 * @param more Other words that are understood in its place.
 */
export function stageOffer(text: string, more: readonly string[] = []): string {
  const word = plainWord(text);
  const known = [...STAGE_WORDS.keys(), ...HATCHING, ...more];
  const near = word === "" ? [] : nearestNames(word.slice(0, 60), known);
  return near.length > 0
    ? `did you mean ${near.join(" or ")}?`
    : `it must be one of ${[...STAGE_IDS, ...more.slice(0, 1)].join(", ")}.`;
}

/** A word in lower case, with single blanks in place of hyphens and underscores. */
export function plainWord(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, " ");
}

/**
 * The stage that a word in a log names.
 * @param firstLarvalStage What hatches.
 * @throws {InputError} `unknown-stage`, with near words.
 */
export function stageOfWord(
  text: string,
  firstLarvalStage: "instar-1" | "larva",
  row: number,
  column: string,
): StageId {
  const stage = stageNamed(text, firstLarvalStage);
  if (stage !== null) return stage;
  throw refusal("unknown-stage", ROWS, row, column, text, stageOffer(text));
}
