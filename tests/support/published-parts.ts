import { z } from "zod";
import { STAGE_IDS } from "../../src/species/life-cycle.ts";

// Parts that the shapes of several files of published figures share.

export const mark = z.enum([
  "read",
  "second-hand",
  "open data",
  "derived",
  "from memory",
  "common practice, no source",
]);
export const printed = z.string().regex(/^-?\d+(\.\d+)?(E[+-]\d+)?$/, "a number as printed");
export const stage = z.enum(STAGE_IDS);
export const source = z.string().min(5);
export const cited = { source, mark };
export const remark = z.string().optional();
export const summary = z.strictObject({
  mean: z.number(),
  sd: z.number().nullable(),
  n: z.number().nullable(),
});
export const head = { title: z.string().min(5), note: z.string().optional() };
