import { readFileSync } from "node:fs";
import { z } from "zod";

// Shape of fixtures/reference/r-thresholds.json, which tests/support/r/thresholds.R writes.

const numbers = z.array(z.number());
const trials = { temperature: numbers, days: numbers, weight: numbers };

const rThresholds = z.strictObject({
  title: z.string(),
  note: z.string(),
  source: z.literal("tests/support/r/thresholds.R"),
  version: z.string().startsWith("R version"),
  lines: z.array(
    z.strictObject({
      id: z.string(),
      ...trials,
      intercept: z.number(),
      slope: z.number(),
      interceptError: z.number(),
      slopeError: z.number(),
      r2: z.number(),
      residualMeanSquare: z.number(),
      lower: z.number(),
      lowerError: z.number(),
      thermalConstant: z.number(),
      thermalConstantError: z.number(),
      studentised: numbers,
      majorAxisSlope: z.number().nullable(),
      means: z.strictObject({
        temperature: numbers,
        level: z.number(),
        rate: numbers,
        low: numbers,
        high: numbers,
      }),
    }),
  ),
  tails: z.array(z.strictObject({ degrees: z.number(), t: numbers, tail: numbers })),
  fits: z.array(
    z.strictObject({
      id: z.string(),
      model: z.string(),
      ...trials,
      parameters: z.record(z.string(), z.number()),
      standardErrors: z.record(z.string(), z.number()),
      rss: z.number(),
      aic: z.number(),
      aicc: z.number().nullable(),
    }),
  ),
  effects: z.array(
    z.strictObject({ min: z.number(), max: z.number(), sine: z.number(), triangle: z.number() }),
  ),
});

/** What R gave, checked against its shape. */
export const thresholdsFromR: z.infer<typeof rThresholds> = rThresholds.parse(
  JSON.parse(readFileSync(new URL("../../fixtures/reference/r-thresholds.json", import.meta.url), "utf8")),
);

/** Trials from columns. */
export function trialsOf(columns: {
  readonly temperature: readonly number[];
  readonly days: readonly number[];
  readonly weight?: readonly number[];
}): { temperature: number; days: number; weight: number }[] {
  return columns.temperature.map((temperature, i) => ({
    temperature,
    days: columns.days[i] ?? Number.NaN,
    weight: columns.weight?.[i] ?? 1,
  }));
}

/** Expects two numbers to agree to a relative tolerance. */
export function relativeError(found: number, expected: number): number {
  return expected === 0 ? Math.abs(found) : Math.abs(found / expected - 1);
}
