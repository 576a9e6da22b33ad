import * as z from "zod/mini";
import { CUTOFFS } from "../../response/linear.ts";
import { checkLifeCycle } from "../../species/check-life-cycle.ts";
import { HANDLINGS, type LifeCycle, MARKS } from "../../species/life-cycle.ts";
import { inShape } from "./shape.ts";

const mark = z.enum(MARKS);

const sourced = z.strictObject({ value: z.number(), mark, source: z.string() });

const stageNeeds = z.strictObject({
  stage: z.enum(["egg", "larva", "instar-1", "instar-2", "instar-3", "instar-4", "instar-5", "pupa"]),
  degreeDays: sourced,
  lower: sourced,
  upper: z.nullable(sourced),
  cutoff: z.enum(CUTOFFS),
  cv: sourced,
  tested: z.nullable(z.strictObject({ low: z.number(), high: z.number(), mark, source: z.string() })),
});

const lifeCycle = z.strictObject({
  species: z.string(),
  latinName: z.string(),
  commonName: z.string(),
  host: z.nullable(z.string()),
  region: z.nullable(z.string()),
  stages: z.array(stageNeeds),
  hang: z.nullable(sourced),
  darkening: z.nullable(sourced),
  stageCorrelation: sourced,
  handling: z.array(z.enum(HANDLINGS)),
  remarks: z.array(z.string()),
});

/**
 * A user's own species from parsed JSON. Every field of {@link LifeCycle} must be there, and no other.
 * @param json The value, as `JSON.parse` gives it.
 * @throws {InputError} `invalid-life-cycle`, with the path of what is wrong: its shape, or what
 *   {@link checkLifeCycle} finds.
 */
export function readLifeCycle(json: unknown): LifeCycle {
  return checkLifeCycle(inShape(lifeCycle, json, "invalid-life-cycle", "the life cycle"));
}

/** The shape of a life cycle as JSON, for the published schema. */
export { lifeCycle as lifeCycleShape };
