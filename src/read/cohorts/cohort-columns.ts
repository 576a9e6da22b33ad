import { type Column, chooser } from "../table/columns.ts";
import { headerMeaning } from "../table/header-words.ts";

/** Columns of a table of cohorts. */
export interface CohortColumns {
  readonly name: Column;
  readonly species: Column;
  readonly found: Column;
  readonly on: Column;
  readonly count: Column | null;
  readonly age: Column | null;
  readonly cages: Column | null;
}

type CohortField = keyof CohortColumns;

const COHORT_HEADERS = new Map<string, CohortField>([
  ["name", "name"],
  ["cohort", "name"],
  ["group", "name"],
  ["batch", "name"],
  ["species", "species"],
  ["found", "found"],
  ["stage", "found"],
  ["found as", "found"],
  ["stage found", "found"],
  ["on", "on"],
  ["found on", "on"],
  ["date", "on"],
  ["day", "on"],
  ["count", "count"],
  ["number", "count"],
  ["how many", "count"],
  ["age", "age"],
  ["cages", "cages"],
]);

/**
 * Columns of a table of cohorts, or `null` where the header lacks the name, the species, the stage or the day.
 * @param many Whether two columns that could be the same thing are refused, or the first of them taken.
 * @throws {InputError} `ambiguous-column`.
 */
export function cohortColumns(header: readonly string[], many: "first" | "refuse"): CohortColumns | null {
  const columns = header.map((text, index): Column => ({ index, header: headerMeaning(text) }));
  const choose = chooser<CohortField>(columns, {}, many, ({ header: { text } }) => {
    const words = text
      .toLowerCase()
      .split(/[^\p{L}\p{N}]+/u)
      .filter((word) => word !== "");
    return COHORT_HEADERS.get(words.join(" ")) ?? null;
  });
  const [name, species] = [choose("name", "name"), choose("species", "species")];
  const [found, on] = [choose("found", "found"), choose("on", "on")];
  if (!name || !species || !found || !on) return null;
  return {
    name,
    species,
    found,
    on,
    count: choose("count", "count"),
    age: choose("age", "age"),
    cages: choose("cages", "cages"),
  };
}
