import { z } from "zod";
import { cited, head, printed } from "./published-parts.ts";

/** Shape of fixtures/published/flight-temperatures.json. */
export const flightTemperatures = z.strictObject({
  ...head,
  rows: z.array(
    z.strictObject({
      id: z.string(),
      what: z.string(),
      of: z.enum(["thorax", "air"]),
      celsius: printed,
      url: z.url(),
      ...cited,
    }),
  ),
});
