import { z } from "zod";
import { CUTOFFS } from "../response/linear.ts";
import { STAGE_IDS } from "../species/life-cycle.ts";
import { ORIGINS } from "../temperature/series.ts";

const stage = z.enum(STAGE_IDS);
const day = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, "it must be a day, such as 2026-07-04")
  .describe("A civil day, ISO 8601.");
const instant = z
  .string()
  .regex(
    /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:[+-]\d{2}:\d{2})?$/,
    "it must be an ISO 8601 date and time, such as 2026-07-04T13:05:00-04:00",
  )
  .describe("ISO 8601 date and time: with an offset where the forecast has a zone, without one where not.");
const share = z.number().min(0).max(1);

const window = z
  .strictObject({
    early: instant.nullable(),
    expected: instant.nullable(),
    late: instant.nullable(),
  })
  .describe("When it begins for the early, the middle and the late animal; null beyond the temperatures.");

const absence = z
  .strictObject({ reason: z.enum(["series-ends", "gap", "too-cold"]), message: z.string() })
  .nullable()
  .describe("Why an instant is null; null where none is.");

const belief = z
  .strictObject({ low: z.number(), middle: z.number(), high: z.number() })
  .describe("10, 50 and 90 % points.");

const degreeDayTable = z.strictObject({
  lower: z.number().describe("Lower threshold, °C."),
  upper: z.number().nullable().describe("Upper threshold, °C."),
  cutoff: z.enum(CUTOFFS),
  stages: z.array(stage).describe("Stages that run on these thresholds."),
  days: z.array(day),
  degreeDays: z.array(z.number().min(0)).describe("Degree-days of each day, °C·day."),
  total: z.array(z.number().min(0)).describe("Running total at the end of each day."),
  origin: z.array(z.enum(ORIGINS)).describe("Where each day's temperatures come from."),
});

/** The shape of a forecast as JSON. */
export const forecastShape = z.strictObject({
  species: z.string(),
  latinName: z.string(),
  commonName: z.string(),
  found: z.strictObject({
    stage,
    on: z.string().describe("As given."),
    at: instant.describe("The instant that the forecast counts from."),
    count: z.int().min(1),
    age: z.strictObject({ from: share, to: share }).describe("Shares of the stage done at that instant."),
  }),
  zone: z.string().nullable().describe("IANA time zone; null for a clock on the wall."),
  method: z.string().describe("How the temperature ran within a day."),
  shares: z.tuple([share, share, share]).describe("Shares of animals at early, expected and late."),
  stages: z.array(
    z.strictObject({
      stage,
      begins: window,
      degreeDays: z.number().describe("Degree-days to the begin of this stage, °C·day."),
      absence,
    }),
  ),
  signs: z.array(z.strictObject({ sign: z.literal("darkening"), begins: window, absence })),
  tables: z.array(degreeDayTable),
  learned: z
    .strictObject({ pace: belief, offset: belief.nullable(), from: stage.nullable() })
    .nullable()
    .describe("What a log taught, where one was given."),
  notes: z.array(z.strictObject({ code: z.string(), message: z.string() })),
});
