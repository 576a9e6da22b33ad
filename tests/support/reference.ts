import { readFileSync } from "node:fs";
import { z } from "zod";

// Shape of fixtures/reference/r-survival.json, which tests/support/r/survival.R writes.

const numbers = z.array(z.number());
const holed = z.array(z.number().nullable());
const counted = z.union([z.number(), z.strictObject({ survived: z.number(), of: z.number() })]);

const rSurvival = z.strictObject({
  r: z.string().startsWith("R version"),
  survival: z.string(),
  mass: z.string(),
  curves: z.array(
    z.strictObject({
      id: z.string(),
      what: z.string(),
      time: numbers,
      died: numbers,
      steps: z.strictObject({
        time: numbers,
        atRisk: numbers,
        died: numbers,
        survival: numbers,
        standardError: holed,
        plainLower: holed,
        plainUpper: holed,
        loglogLower: holed,
        loglogUpper: holed,
      }),
    }),
  ),
  shares: z.array(
    z.strictObject({
      successes: z.number(),
      trials: z.number(),
      level: z.number(),
      clopperPearson: numbers,
      wilson: numbers,
      jeffreys: numbers,
    }),
  ),
  betas: z.array(
    z.strictObject({
      x: z.number(),
      a: z.number(),
      b: z.number(),
      cdf: z.number(),
      quantile05: z.number(),
      quantile975: z.number(),
    }),
  ),
  gammas: z.strictObject({ x: numbers, logGamma: numbers }),
  adults: z.array(
    z.strictObject({
      alive: z.number(),
      stages: z.array(counted),
      mean: z.number(),
      sd: z.number(),
      lower: z.number(),
      median: z.number(),
      upper: z.number(),
      probabilities: numbers,
    }),
  ),
  lines: z.array(
    z.strictObject({
      id: z.string(),
      what: z.string(),
      x: numbers,
      y: numbers,
      throughOrigin: z.literal([0, 1]),
      coefficients: numbers,
      standardErrors: numbers,
      scale: z.number(),
    }),
  ),
});

/** What R gave, checked against its shape. */
export const fromR: z.infer<typeof rSurvival> = rSurvival.parse(
  JSON.parse(readFileSync(new URL("../../fixtures/reference/r-survival.json", import.meta.url), "utf8")),
);
