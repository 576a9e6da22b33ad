import * as z from "zod/mini";
import { CUTOFFS } from "../../response/linear.ts";
import { STAGE_IDS } from "../../species/life-cycle.ts";
import { ORIGINS } from "../../temperature/series.ts";

const stage = z.enum(STAGE_IDS);
const day = z
  .string()
  .check(z.regex(/^\d{4}-\d{2}-\d{2}$/, "it must be a day, such as 2026-07-04"))
  .check(z.describe("A civil day, ISO 8601."));
const instant = z
  .string()
  .check(
    z.regex(
      /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:[+-]\d{2}:\d{2})?$/,
      "it must be an ISO 8601 date and time, such as 2026-07-04T13:05:00-04:00",
    ),
  )
  .check(
    z.describe(
      "ISO 8601 date and time: with an offset where the forecast has a zone, without one where not.",
    ),
  );
const share = z.number().check(z.minimum(0), z.maximum(1));

const window = z
  .strictObject({
    early: z.nullable(instant),
    expected: z.nullable(instant),
    late: z.nullable(instant),
  })
  .check(
    z.describe("When it begins for the early, the middle and the late animal; null beyond the temperatures."),
  );

const absence = z
  .nullable(z.strictObject({ reason: z.enum(["series-ends", "gap", "too-cold"]), message: z.string() }))
  .check(z.describe("Why an instant is null; null where none is."));

const belief = z
  .strictObject({ low: z.number(), middle: z.number(), high: z.number() })
  .check(z.describe("10, 50 and 90 % points."));

const degreeDayTable = z.strictObject({
  lower: z.number().check(z.describe("Lower threshold, °C.")),
  upper: z.nullable(z.number()).check(z.describe("Upper threshold, °C.")),
  cutoff: z.enum(CUTOFFS),
  stages: z.array(stage).check(z.describe("Stages that run on these thresholds.")),
  days: z.array(day),
  degreeDays: z.array(z.number().check(z.minimum(0))).check(z.describe("Degree-days of each day, °C·day.")),
  total: z.array(z.number().check(z.minimum(0))).check(z.describe("Running total at the end of each day.")),
  origin: z.array(z.enum(ORIGINS)).check(z.describe("Where each day's temperatures come from.")),
});

/** The shape of a forecast as JSON. */
export const forecastShape = z.strictObject({
  species: z.string(),
  latinName: z.string(),
  commonName: z.string(),
  found: z.strictObject({
    stage,
    on: z.string().check(z.describe("As given.")),
    at: instant.check(z.describe("The instant that the forecast counts from.")),
    count: z.int().check(z.minimum(1)),
    age: z
      .strictObject({ from: share, to: share })
      .check(z.describe("Shares of the stage done at that instant.")),
  }),
  zone: z.nullable(z.string()).check(z.describe("IANA time zone; null for a clock on the wall.")),
  method: z.string().check(z.describe("How the temperature ran within a day.")),
  shares: z.tuple([share, share, share]).check(z.describe("Shares of animals at early, expected and late.")),
  stages: z.array(
    z.strictObject({
      stage,
      begins: window,
      degreeDays: z.number().check(z.describe("Degree-days to the begin of this stage, °C·day.")),
      absence,
    }),
  ),
  signs: z.array(z.strictObject({ sign: z.literal("darkening"), begins: window, absence })),
  tables: z.array(degreeDayTable),
  learned: z
    .nullable(z.strictObject({ pace: belief, offset: z.nullable(belief), from: z.nullable(stage) }))
    .check(z.describe("What a log taught, where one was given.")),
  notes: z.array(z.strictObject({ code: z.string(), message: z.string() })),
});
