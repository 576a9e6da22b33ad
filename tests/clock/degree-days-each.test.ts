import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { degreeDaysEach } from "../../src/clock/degree-days-each.ts";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { METHODS } from "../../src/diurnal/method.ts";
import { cutoff, day, limits } from "../support/arbitraries.ts";
import { refusalOf } from "../support/refusal.ts";

describe("degreeDaysEach", () => {
  it("gives each day what degreeDays gives it, for every method and cutoff", () => {
    fc.assert(
      fc.property(
        fc.array(day, { minLength: 1, maxLength: 12 }),
        limits,
        cutoff,
        fc.constantFrom(...METHODS),
        (days, { lower, upper }, kind, method) => {
          const min = Float64Array.from(days, (one) => one.min);
          const max = Float64Array.from(days, (one) => one.max);
          const options = { lower, upper, cutoff: kind, method };
          const each = degreeDaysEach(min, max, options);
          days.forEach((one, i) => {
            expect(each[i]).toBe(degreeDays({ ...one, nextMin: min[i + 1] ?? one.min }, options));
          });
        },
      ),
    );
  });

  it("writes to the column that it is given", () => {
    const out = new Float64Array(1);
    expect(degreeDaysEach(Float64Array.of(12), Float64Array.of(30), { lower: 10 }, out)).toBe(out);
    expect(out[0]).toBe(11);
  });

  it("gives an empty column for an empty column", () => {
    expect(degreeDaysEach(new Float64Array(0), new Float64Array(0), { lower: 10 })).toHaveLength(0);
  });

  it.each([
    [[Number.NaN, 5], [9, 9], "missing-temperature", "day 0"],
    [[5, 5], [9, Number.NaN], "missing-temperature", "day 1"],
    [[24, 5], [8, 9], "min-above-max", "day 0 has a minimum of 24 above its maximum of 8"],
    [[-Infinity, 5], [8, 9], "missing-temperature", "day 0"],
  ])("refuses minima %j with maxima %j: a missing day is not a day without heat", (min, max, code, text) => {
    const refusal = refusalOf(() =>
      degreeDaysEach(Float64Array.from(min), Float64Array.from(max), { lower: 10 }),
    );
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(text);
  });

  it("refuses columns of different lengths", () => {
    expect(() => degreeDaysEach(new Float64Array(2), new Float64Array(3), { lower: 10 })).toThrow(
      "min has 2 days, max 3",
    );
  });
});
