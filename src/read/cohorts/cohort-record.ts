import { InputError } from "../../errors.ts";
import type { Found } from "../../forecast/forecast.ts";
import { findSpecies } from "../../species/catalogue.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import { type Places, refusal } from "../place.ts";

/** One cohort of a file: which animals, and how they were found. */
export interface CohortRecord {
  readonly name: string;
  readonly lifeCycle: LifeCycle;
  readonly found: Found;
  /** Cages that they are kept in. */
  readonly cages: number;
}

/**
 * The species that a file names: one of the caller's own, by id, Latin or common name, or one at hand.
 * @throws {InputError} `unknown-species`, with the place and near names.
 */
export function speciesNamed(
  text: string,
  own: readonly LifeCycle[],
  places: Places,
  entry: number,
  field: string,
): LifeCycle {
  const wanted = text.trim().toLowerCase();
  const found = own.find(({ species, latinName, commonName }) =>
    [species, latinName, commonName].some((name) => name.toLowerCase() === wanted),
  );
  if (found !== undefined) return found;
  try {
    return findSpecies(text);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    // What follows the value: near names, or all of them.
    const remedy = error.message.slice(error.message.lastIndexOf("; ") + 2);
    throw refusal("unknown-species", places, entry, field, text, remedy);
  }
}

/** @throws {InputError} `invalid-found` for a name that an earlier cohort of the file has. */
export function refuseSecondNames(
  cohorts: readonly CohortRecord[],
  places: Places,
  entries: readonly number[],
  field: string,
): void {
  const first = new Map<string, number>();
  cohorts.forEach(({ name }, i) => {
    const [entry, before] = [entries[i] ?? i, first.get(name)];
    if (before !== undefined)
      throw refusal(
        "invalid-found",
        places,
        entry,
        field,
        name,
        `${places.one} ${before} has that name; give each cohort its own.`,
      );
    first.set(name, entry);
  });
}
