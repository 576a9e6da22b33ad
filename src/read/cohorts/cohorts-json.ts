import * as z from "zod/mini";
import { STAGE_IDS } from "../../species/life-cycle.ts";
import { type CohortRecord, refuseSecondNames, speciesNamed } from "./cohort-record.ts";
import type { CohortOptions } from "../options.ts";
import { jsonValue } from "../json/json-text.ts";
import { parseMoment } from "../../time/zone.ts";
import { listPlaces, readAt } from "../place.ts";
import { inShape } from "../json/shape.ts";

const whole = z.int("it must be a whole number").check(z.minimum(1));

const ageWords = 'it must be "unknown", "new", or the share of the stage done, from 0 to 1';

const cohort = z.strictObject({
  name: z.string().check(z.regex(/\S/, "it must be a name")),
  species: z.string(),
  found: z.enum(STAGE_IDS),
  on: z.string(),
  count: z.optional(whole),
  age: z.optional(
    z.union([z.enum(["unknown", "new"]), z.number().check(z.minimum(0), z.maximum(1))], ageWords),
  ),
  cages: z.optional(whole),
});

const cohortList = z.array(cohort).check(z.minLength(1, "it must have at least one cohort"));

/**
 * Cohorts from a JSON list of `{"name", "species", "found", "on", "count", "age", "cages"}`, the last three where
 * wanted.
 * @throws {InputError} with the place in the list: `malformed-file`, `invalid-found`, `unknown-species`,
 *   `invalid-day`, `invalid-instant`.
 */
export function readCohortsJson(text: string, { own = [] }: CohortOptions = {}): readonly CohortRecord[] {
  const places = listPlaces("");
  const list = inShape(cohortList, jsonValue(text), "invalid-found", "the list of cohorts");
  // Only whether it is a day or a time matters here; which zone it is in is said elsewhere.
  list.forEach(({ on }, i) => readAt(places.cell(i, "on"), (path) => parseMoment(on, "UTC", path)));
  const cohorts = list.map((one, i): CohortRecord => ({
    name: one.name,
    lifeCycle: speciesNamed(one.species, own, places, i, "species"),
    found: { stage: one.found, on: one.on, count: one.count ?? 1, age: one.age ?? "unknown" },
    cages: one.cages ?? 1,
  }));
  refuseSecondNames(
    cohorts,
    places,
    cohorts.map((_, i) => i),
    "name",
  );
  return cohorts;
}
