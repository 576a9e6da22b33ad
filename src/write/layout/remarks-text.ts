import { givenList } from "../../given.ts";
import type { Note } from "../../notes.ts";
import type { Caution } from "../../rearing/cautions.ts";
import { bullet } from "./text-layout.ts";

/** Cautions as a block of plain text, empty when there are none. */
export function cautionsText(cautions: readonly Caution[]): string {
  givenList(cautions, ["cautions"]);
  if (cautions.length === 0) return "";
  return ["TAKE CARE", ...cautions.map(({ title, text }) => bullet(`${title}: ${text}`, "*"))].join("\n");
}

/** Notes of a result as a block of plain text, empty when there are none. */
export function notesText(notes: readonly Note[]): string {
  givenList(notes, ["notes"]);
  if (notes.length === 0) return "";
  return ["GOOD TO KNOW", ...notes.map(({ message }) => bullet(message))].join("\n");
}
