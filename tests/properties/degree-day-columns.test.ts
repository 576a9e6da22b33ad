// The fast loops over columns against the textbook's closed forms, written plainly. Derived from the same
// definition, by other formulas: asin here, a polynomial there.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { degreeDaysEach } from "../../src/clock/degree-days-each.ts";
import { METHODS, type Method } from "../../src/diurnal/method.ts";
import type { Cutoff } from "../../src/response/linear.ts";
import { cutoff } from "../support/arbitraries.ts";
import { type PlainDay, plainDegreeDays } from "../support/plain-degree-days.ts";
import { refusalOf } from "../support/refusal.ts";

const LOWER = 10;
const UPPER = 30;
/** Temperatures at which formulas change: thresholds, a step beside them, where an intermediate cutoff ends. */
const corners = [
  LOWER,
  UPPER,
  50,
  9.999999999999998,
  10.000000000000002,
  29.999999999999996,
  30.000000000000004,
];

const temperature = fc.oneof(
  { weight: 3, arbitrary: fc.double({ min: -40, max: 70, noNaN: true }) },
  { weight: 2, arbitrary: fc.constantFrom(...corners) },
  { weight: 1, arbitrary: fc.double({ min: -1e9, max: 1e9, noNaN: true }) },
  { weight: 1, arbitrary: fc.double({ min: -1e99, max: 1e99, noNaN: true }) },
);
// A day without a range, one with a tiny one, and any.
const range = fc.oneof(fc.constant(0), fc.double({ min: 1e-12, max: 1e-6, noNaN: true }), fc.constant(null));
const day: fc.Arbitrary<PlainDay> = fc
  .tuple(temperature, temperature, temperature, range)
  .map(([a, b, nextMin, span]) =>
    span === null
      ? { min: Math.min(a, b), max: Math.max(a, b), nextMin }
      : { min: a, max: a + span, nextMin },
  );

function columnsOf(days: readonly PlainDay[]): { readonly min: Float64Array; readonly max: Float64Array } {
  return { min: Float64Array.from(days, (one) => one.min), max: Float64Array.from(days, (one) => one.max) };
}

/** What 1e-12 is taken of: degrees of the day, since a sum of large parts can be small. */
function degreesOf({ min, max, nextMin }: PlainDay, upper: number): number {
  return Math.max(Math.abs(min), Math.abs(max), Math.abs(nextMin), upper);
}

/** Whether the day stands at the upper threshold, where a vertical cutoff jumps. */
function jumps({ min, max, nextMin }: PlainDay, kind: Cutoff, method: Method): boolean {
  if (kind !== "vertical") return false;
  const near = (t: number): boolean => Math.abs(t - UPPER) < 1e-5;
  return method === "average"
    ? near((min + max) / 2)
    : (near(max) && (max - min < 1e-5 || Math.abs(nextMin - max) < 1e-5)) || max - min < 1e-5;
}

describe("degreeDaysEach", () => {
  it("agrees with the plain formulas to 1e-12 of the day's degrees, every method and cutoff", () => {
    fc.assert(
      fc.property(
        fc.array(day, { minLength: 1, maxLength: 40 }),
        cutoff,
        fc.constantFrom(...METHODS),
        (days, kind, method) => {
          const { min, max } = columnsOf(days);
          const options = { lower: LOWER, upper: UPPER, cutoff: kind, method };
          const each = degreeDaysEach(min, max, options);
          days.forEach((one, i) => {
            const whole = { ...one, nextMin: min[i + 1] ?? one.min };
            if (jumps(whole, kind, method)) return;
            const plain = plainDegreeDays(whole, options);
            expect(Math.abs((each[i] ?? Number.NaN) - plain)).toBeLessThanOrEqual(
              1e-12 * degreesOf(whole, 50),
            );
          });
        },
      ),
      { numRuns: 600 },
    );
  });

  it("refuses a missing or exchanged reading wherever it stands, naming the day, and counts none as cold", () => {
    fc.assert(
      fc.property(
        fc.array(day, { minLength: 1, maxLength: 20 }),
        fc.nat(),
        fc.constantFrom("min", "max", "both", "exchanged"),
        cutoff,
        fc.constantFrom(...METHODS),
        (days, where, what, kind, method) => {
          const at = where % days.length;
          const { min, max } = columnsOf(days);
          if (what === "exchanged") [min[at], max[at]] = [25, 24];
          if (what === "min" || what === "both") min[at] = Number.NaN;
          if (what === "max" || what === "both") max[at] = Number.NaN;
          const refusal = refusalOf(() =>
            degreeDaysEach(min, max, { lower: LOWER, upper: UPPER, cutoff: kind, method }),
          );
          expect(refusal.code).toBe(what === "exchanged" ? "min-above-max" : "missing-temperature");
          expect(refusal.path).toEqual([at]);
        },
      ),
    );
  });

  it("may write to a column that it reads", () => {
    fc.assert(
      fc.property(
        fc.array(day, { minLength: 1 }),
        cutoff,
        fc.constantFrom(...METHODS),
        (days, kind, method) => {
          const { min, max } = columnsOf(days);
          const options = { lower: LOWER, upper: UPPER, cutoff: kind, method };
          const apart = degreeDaysEach(min, max, options);
          expect(degreeDaysEach(min.slice(), max, options)).toEqual(apart);
          const [low, high] = [min.slice(), max.slice()];
          expect(degreeDaysEach(low, max, options, low)).toEqual(apart);
          expect(degreeDaysEach(min, high, options, high)).toEqual(apart);
        },
      ),
    );
  });
});
