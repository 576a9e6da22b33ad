import { given, givenList } from "../../given.ts";
import type { Note } from "../../notes.ts";
import type { CohortRecord } from "./cohort-record.ts";
import { readCohortsCsv } from "./cohorts-csv.ts";
import { readCohortsJson } from "./cohorts-json.ts";
import { type CohortOptions, checkedCohortOptions } from "../options.ts";
import { plainText } from "../text.ts";

/**
 * Several cohorts from one file, a delimited table or a JSON list: which animals, and how they were found.
 * @param text Text, or the bytes of the file.
 * @throws {InputError} What {@link readCohortsCsv} and {@link readCohortsJson} throw, those of decoding, and
 *   `invalid-option`.
 * @example
 * readCohorts("name,species,found,on,count\nporch,monarch,egg,2026-06-08,12").cohorts[0]?.found.count // → 12
 */
export function readCohorts(
  text: string | Uint8Array,
  options: CohortOptions = {},
): { cohorts: readonly CohortRecord[]; notes: readonly Note[] } {
  given(options, ["options"], "an object of options");
  if (options.own !== undefined) givenList(options.own, ["own"], "a list of life cycles");
  checkedCohortOptions(options);
  const { text: plain, notes } = plainText(text);
  if (/^\s*[[{]/.test(plain)) return { cohorts: readCohortsJson(plain, options), notes };
  const { cohorts, notes: found } = readCohortsCsv(plain, options);
  return { cohorts, notes: [...notes, ...found] };
}
