import { z } from "zod";
import { cited, head, printed } from "./published-parts.ts";

/** Shape of fixtures/published/rate-models.json. */
export const rateModelSets = z.strictObject({
  ...head,
  sets: z.array(
    z.strictObject({
      id: z.string(),
      what: z.string(),
      model: z.string(),
      parameters: z.record(z.string(), z.number()),
      derivedRates: z.array(z.tuple([z.number(), printed])),
      derivedOptimum: z.strictObject({ temperature: printed, rate: printed }).nullable(),
      derivedEffects: z.array(z.strictObject({ mean: z.number(), halfRange: z.number(), percent: printed })),
      ...cited,
    }),
  ),
});
