import { readFileSync } from "node:fs";
import { z } from "zod";
import { developmentRow } from "./development-shape.ts";
import { flightTemperatures } from "./flight-shape.ts";
import { heatLimits } from "./heat-limit-shape.ts";
import { monarchRearing } from "./monarch-shape.ts";
import { cited, head, mark, printed, remark, source, stage } from "./published-parts.ts";
import { rateModelSets } from "./rate-model-shape.ts";

// Shapes of fixtures/published/*.json. A row that does not fit is an error here, not a puzzle in a test.

const dailyCase = z.strictObject({
  id: z.string(),
  rule: z.string(),
  method: z.enum(["average", "clamped-average", "clamped-mean", "heating"]),
  lower: z.number(),
  upper: z.number().nullable(),
  unit: z.enum(["C", "F"]),
  max: z.number().nullable(),
  min: z.number().nullable(),
  /** For pages that give a mean only. */
  mean: z.number().nullable(),
  printed,
  beforeZero: printed.optional(),
  remark,
  url: z.url(),
  ...cited,
});

const estimate = z.strictObject({
  from: z.enum(["data", "coefficients"]),
  id: z.string(),
  what: z.string(),
  unit: z.enum(["C", "F"]),
  data: z.array(z.tuple([z.number(), z.number()])).nullable(),
  intercept: printed.nullable(),
  slope: printed.nullable(),
  lower: printed,
  degreeDays: printed,
  tolerance: z.strictObject({ lower: z.number(), degreeDays: z.number() }),
  remark,
  url: z.url().nullable(),
  ...cited,
});

const printedSum = z.strictObject({
  id: z.string(),
  what: z.string().optional(),
  terms: z.array(printed),
  printed,
  unit: z.enum(["C", "F"]).optional(),
  source: source.optional(),
  mark,
});

/** Shape of each file under fixtures/published, by name. */
export const shapes = {
  accumulation: z.strictObject({
    ...head,
    cases: z.array(
      z.strictObject({
        id: z.string(),
        daily: z.array(printed).nullable(),
        total: printed,
        remark,
        url: z.url(),
        ...cited,
      }),
    ),
  }),
  "daily-degree-days": z.strictObject({ ...head, cases: z.array(dailyCase) }),
  "day-length": z.strictObject({
    ...head,
    daylight: z.array(
      z.strictObject({
        id: z.string(),
        formula: z.string(),
        latitude: z.number(),
        dayOfYear: z.number(),
        printed,
        unrounded: printed,
        url: z.url(),
        ...cited,
      }),
    ),
    sunrise: z.strictObject({
      id: z.string(),
      date: z.iso.date(),
      time: z.string(),
      toleranceMinutes: z.number(),
      url: z.url(),
      ...cited,
      rows: z.array(z.strictObject({ latitude: z.number(), sunrise: z.string().regex(/^\d+:\d\d$/) })),
    }),
  }),
  "development-times": z.strictObject({ ...head, rows: z.array(developmentRow) }),
  "flight-temperatures": flightTemperatures,
  "heat-limits": heatLimits,
  "monarch-rearing": monarchRearing,
  "nist-norris": z.strictObject({
    ...head,
    ...cited,
    dataMark: mark,
    certified: z.record(z.string(), printed),
    columns: z.tuple([z.literal("x"), z.literal("y")]),
    rows: z.array(z.tuple([z.number(), z.number()])),
  }),
  "rate-models": rateModelSets,
  thresholds: z.strictObject({
    ...head,
    rows: z.array(estimate),
    durations: z.array(
      z.strictObject({
        id: z.string(),
        what: z.string(),
        lower: z.number(),
        degreeDays: z.number(),
        temperature: z.number(),
        printed,
        tolerance: z.number(),
        ...cited,
      }),
    ),
    constants: z.array(
      z.strictObject({
        id: z.string(),
        what: z.string(),
        lower: z.number(),
        temperature: z.number(),
        days: z.number(),
        printed,
        tolerance: z.number(),
        ...cited,
      }),
    ),
    sums: z.array(printedSum),
  }),
  "unit-conversions": z.strictObject({
    ...head,
    tolerance: z.number(),
    pairs: z.array(z.strictObject({ id: z.string(), celsius: printed, fahrenheit: printed, mark })),
    sums: z.array(printedSum),
  }),
  "zalucki-1982": z.strictObject({
    ...head,
    ...cited,
    runningTotals: z.array(z.strictObject({ stage, printed })),
    field: z.array(z.strictObject({ stage, mean: z.number(), sd: z.number(), cv: z.number() })),
    cvTolerance: z.number(),
  }),
};

const disagreements = z.strictObject({
  ...head,
  entries: z.array(
    z.strictObject({
      id: z.string(),
      published: z.string(),
      ours: z.string().nullable(),
      category: z.enum(["PRINT-ERROR", "METHOD-DIFFERS", "ROUNDING", "UNRESOLVED"]),
      reason: z.string(),
      check: z
        .strictObject({
          days: z.number(),
          temperature: z.number(),
          lower: z.number(),
          printed: z.number(),
          beyond: z.number(),
        })
        .nullable(),
      ...cited,
    }),
  ),
});

const json = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../fixtures/${path}`, import.meta.url), "utf8"));

/** A file of fixtures/published, checked against its shape. */
export function published<Name extends keyof typeof shapes>(name: Name): z.infer<(typeof shapes)[Name]>;
export function published(name: keyof typeof shapes): unknown {
  return shapes[name].parse(json(`published/${name}.json`));
}

/** fixtures/disagreements.json, checked. */
export function publishedDisagreements(): z.infer<typeof disagreements> {
  return disagreements.parse(json("disagreements.json"));
}

/** Half of the last digit of a number as printed: `"13.0"` gives 0.05, `"13"` gives 0.5. */
export function halfLastDigit(text: string): number {
  const [mantissa = "", exponent = "0"] = text.split("E");
  const decimals = mantissa.split(".")[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}
