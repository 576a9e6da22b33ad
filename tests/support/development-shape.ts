import { z } from "zod";
import { cited, stage } from "./published-parts.ts";

const development = { id: z.string(), what: z.string(), reason: z.string(), ...cited };
const expected = { value: z.number(), tolerance: z.number() };
const ofSpecies = { species: z.string(), stages: z.array(stage) };
/** A row of development-times.json. */
export const developmentRow = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("days"),
    temperature: z.number(),
    ...ofSpecies,
    ...expected,
    ...development,
  }),
  z.strictObject({
    kind: z.literal("days-ratio"),
    temperatures: z.tuple([z.number(), z.number()]),
    ...ofSpecies,
    ...expected,
    ...development,
  }),
  z.strictObject({
    kind: z.literal("alternating"),
    temperatures: z.tuple([z.number(), z.number()]),
    ...ofSpecies,
    ...expected,
    ...development,
  }),
  z.strictObject({
    kind: z.literal("days-range"),
    temperature: z.number(),
    range: z.tuple([z.number(), z.number()]),
    ...ofSpecies,
    ...development,
  }),
  z.strictObject({ kind: z.literal("degree-days"), ...ofSpecies, ...expected, ...development }),
  z.strictObject({
    kind: z.literal("formula"),
    lower: z.number(),
    degreeDays: z.number(),
    temperature: z.number(),
    ...expected,
    ...development,
  }),
  z.strictObject({
    kind: z.literal("days-at-rate"),
    degreeDays: z.number(),
    perDay: z.number(),
    ...expected,
    ...development,
  }),
  z.strictObject({
    kind: z.literal("whole-life"),
    species: z.string(),
    lower: z.number(),
    degreeDays: z.number(),
    temperature: z.number(),
    tolerance: z.number(),
    ...development,
  }),
  z.strictObject({
    kind: z.literal("record"),
    value: z.number(),
    range: z.tuple([z.number(), z.number()]).nullable(),
    ...development,
  }),
]);
