import { readFileSync } from "node:fs";
import type { Note, NoteCode } from "../../src/notes.ts";

/** Bytes of a file in fixtures/. */
export function fixture(name: string): Uint8Array {
  return readFileSync(new URL(`../../fixtures/${name}`, import.meta.url));
}

/** Bytes of a data file of the vega-datasets package. */
export function vegaDataset(name: string): Uint8Array {
  return readFileSync(new URL(`../../node_modules/vega-datasets/data/${name}`, import.meta.url));
}

/** Codes of notes, in order. */
export function codes(notes: readonly Note[]): NoteCode[] {
  return notes.map(({ code }) => code);
}

/** Message of the note with a code; the empty text where there is none. */
export function messageOf(notes: readonly Note[], code: NoteCode): string {
  return notes.find((note) => note.code === code)?.message ?? "";
}
