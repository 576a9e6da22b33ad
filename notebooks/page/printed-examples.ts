import { z } from "zod";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { METHODS } from "../../src/diurnal/method.ts";

const examples = z.object({
  cases: z.array(
    z.object({
      rule: z.string(),
      method: z.string(),
      lower: z.number(),
      upper: z.number().nullable(),
      unit: z.enum(["C", "F"]),
      min: z.number().nullable(),
      max: z.number().nullable(),
      printed: z.string(),
      source: z.string(),
      mark: z.string(),
    }),
  ),
});

/** A day worked in print, in the unit it was printed in. */
export interface PrintedExample {
  readonly source: string;
  readonly rule: string;
  readonly day: { readonly min: number; readonly max: number };
  readonly lower: number;
  readonly upper: number | null;
  readonly unit: "C" | "F";
  /** The result with its digits as printed. */
  readonly printed: string;
  /** The same by the library, unrounded. */
  readonly computed: number;
  /** What a sine wave through the same extremes gives. */
  readonly sine: number;
  /** How it is worked, step by step. */
  readonly steps: string;
}

/**
 * The days of fixtures/published/daily-degree-days.json whose extremes are printed and whose rule is one of the
 * library's methods, each worked again.
 */
export function printedExamples(text: string): PrintedExample[] {
  return examples
    .parse(JSON.parse(text))
    .cases.flatMap(({ min, max, method, mark, lower, upper, ...printed }) => {
      const known = METHODS.find((one) => one === method);
      if (min === null || max === null || known === undefined || mark !== "read") return [];
      const day = { min, max };
      const thresholds = upper === null ? { lower } : { lower, upper };
      return [
        {
          ...printed,
          day,
          lower,
          upper,
          computed: degreeDays(day, { ...thresholds, method: known }),
          sine: degreeDays(day, thresholds),
          steps: stepsOf(day, known, { lower, upper: upper ?? Infinity }),
        },
      ];
    });
}

/** Whether the printed digits are those of the computed number: half the last one is the tolerance. */
export function meets({ printed, computed }: PrintedExample): boolean {
  const decimals = printed.split(".")[1]?.length ?? 0;
  return Math.abs(computed - Number(printed)) <= 0.5 * 10 ** -decimals + 1e-9;
}

/** The computed number, and a word where it is not the printed one. */
export function hereOf(example: PrintedExample): string {
  return `${Math.round(example.computed * 100) / 100}${meets(example) ? "" : " (not the same)"}`;
}

function stepsOf(
  { min, max }: PrintedExample["day"],
  method: (typeof METHODS)[number],
  { lower, upper }: { readonly lower: number; readonly upper: number },
): string {
  const within = (value: number): number => Math.min(Math.max(value, lower), upper);
  const moved = (value: number): string =>
    within(value) === value
      ? `${value} stays ${value}`
      : `${value} counts as ${within(value)}, the ${value > upper ? "upper" : "lower"} threshold`;
  const worked = (low: number, high: number): string => {
    const left = (high + low) / 2 - lower;
    return `(${high} + ${low}) / 2 − ${lower} = ${left}${left < 0 ? ", and less than nothing is 0" : ""}`;
  };
  if (method === "clamped-average")
    return `${moved(max)}; ${moved(min)}; ${worked(within(min), within(max))}`.replaceAll(" -", " −");
  if (method === "clamped-mean") {
    const mean = (max + min) / 2;
    return `(${max} + ${min}) / 2 = ${mean}; ${moved(mean)}; ${within(mean)} − ${lower} = ${within(mean) - lower}`;
  }
  return worked(min, max).replaceAll(" -", " −");
}
