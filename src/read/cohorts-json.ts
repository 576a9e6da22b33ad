import { z } from "zod";
import { STAGE_IDS } from "../species/life-cycle.ts";
import { type CohortRecord, refuseSecondNames, speciesNamed } from "./cohort-record.ts";
import type { CohortOptions } from "./cohorts-csv.ts";
import { jsonValue } from "./json-text.ts";
import { listPlaces } from "./place.ts";
import { inShape } from "./shape.ts";

const whole = z.int("it must be a whole number").min(1);

const ageWords = 'it must be "unknown", "new", or the share of the stage done, from 0 to 1';

const cohort = z.strictObject({
  name: z.string().regex(/\S/, "it must be a name"),
  species: z.string(),
  found: z.enum(STAGE_IDS),
  on: z.string(),
  count: whole.optional(),
  age: z.union([z.enum(["unknown", "new"]), z.number().min(0).max(1)], ageWords).optional(),
  cages: whole.optional(),
});

const cohortList = z.array(cohort).min(1, "it must have at least one cohort");

/**
 * Cohorts from a JSON list of `{"name", "species", "found", "on", "count", "age", "cages"}`, the last three where
 * wanted.
 * @throws {InputError} with the place in the list: `malformed-file`, `invalid-found`, `unknown-species`.
 */
export function readCohortsJson(text: string, { own = [] }: CohortOptions = {}): readonly CohortRecord[] {
  const places = listPlaces("");
  const list = inShape(cohortList, jsonValue(text), "invalid-found", "the list of cohorts");
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
