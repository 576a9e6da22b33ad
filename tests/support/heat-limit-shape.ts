import { z } from "zod";
import { cited, head } from "./published-parts.ts";

const row = { id: z.string(), latinName: z.string(), what: z.string(), url: z.url(), ...cited };

/** heat-limits.json. */
export const heatLimits = z.strictObject({
  ...head,
  heat: z.array(z.strictObject({ ...row, effect: z.enum(["harmful", "lethal"]), celsius: z.number() })),
  laying: z.array(z.strictObject({ ...row, days: z.tuple([z.number(), z.number()]) })),
  autumn: z.array(z.strictObject({ ...row, when: z.string() })),
  cues: z.strictObject({
    latinName: z.string(),
    cues: z.array(z.string()),
    decisiveAlone: z.boolean(),
    ...cited,
  }),
});
