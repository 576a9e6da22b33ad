import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { degreeDaysEach } from "../../src/clock/degree-days-each.ts";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { METHODS } from "../../src/diurnal/method.ts";
import { CUTOFFS } from "../../src/response/linear.ts";
import { cutoff, day, limits } from "../support/arbitraries.ts";
import { refusalOf, refusalParts } from "../support/refusal.ts";

function single(method: "double-sine" | "double-triangle"): "single-sine" | "single-triangle" {
  return method === "double-sine" ? "single-sine" : "single-triangle";
}

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
    const [two, three] = [new Float64Array(2), new Float64Array(3)];
    expect(refusalParts(() => degreeDaysEach(two, three, { lower: 10 }))).toEqual([
      "length-mismatch",
      "max",
      3,
      "min has 2 days, max 3 and out 2; all must be as long.",
    ]);
    expect(refusalOf(() => degreeDaysEach(two, two, { lower: 10 }, three)).message).toContain("out 3");
  });

  it("names the column that is none, and the day that is refused", () => {
    const column = Float64Array.of(5, 7);
    expect(refusalParts(() => degreeDaysEach(JSON.parse('"5"'), column, { lower: 10 }))).toEqual([
      "invalid-option",
      "min",
      "5",
      'min is "5"; it must be a list of numbers.',
    ]);
    expect(refusalOf(() => degreeDaysEach(column, JSON.parse("7"), { lower: 10 })).path).toEqual(["max"]);
    const warmer = Float64Array.of(5, 8);
    expect(refusalParts(() => degreeDaysEach(warmer, column, { lower: 10 }))).toEqual([
      "min-above-max",
      "1",
      8,
      "day 1 has a minimum of 8 above its maximum of 7.",
    ]);
    // As warm by night as by day is no fault, though the other extreme is missing elsewhere.
    const same = Float64Array.of(7, Number.NaN);
    expect(refusalParts(() => degreeDaysEach(same, Float64Array.of(7, 7), { lower: 10 }))[1]).toBe("1");
  });

  it("takes a next minimum above the maximum, as when warm air moves in, under every cutoff", () => {
    const [min, max] = [Float64Array.of(2, 14), Float64Array.of(8, 20)];
    for (const method of ["double-sine", "double-triangle"] as const) {
      for (const kind of ["none", "horizontal", "intermediate", "vertical"] as const) {
        const options = { lower: 6, upper: 9, cutoff: kind, method };
        expect(degreeDaysEach(min, max, options)[0]).toBe(
          degreeDays({ min: 2, max: 8, nextMin: 14 }, options),
        );
        expect(degreeDays({ min: 2, max: 8, nextMin: 14 }, options)).toBeCloseTo(
          (degreeDays({ min: 2, max: 8 }, { ...options, method: single(method) }) +
            degreeDays({ min: 8, max: 14 }, { ...options, method: single(method) })) /
            2,
          12,
        );
      }
    }
  });

  it.each(METHODS)("refuses a missing and an exchanged day by %s under every cutoff", (method) => {
    for (const kind of CUTOFFS) {
      const each = (min: readonly number[], max: readonly number[]) =>
        degreeDaysEach(Float64Array.from(min), Float64Array.from(max), {
          lower: 10,
          upper: 20,
          cutoff: kind,
          method,
        });
      expect(refusalOf(() => each([8, 9, 9], [24, Number.NaN, 20])).path).toEqual([1]);
      expect(refusalOf(() => each([8, 9, 9], [24, 30, 8])).path).toEqual([2]);
      expect(refusalOf(() => each([8, -1e100], [24, 1e100])).path).toEqual([1]);
      // Days about the thresholds, and at them; the last has no next night.
      const [min, max] = [
        [2, 8, 10, 12, 19, 20, 21, 9, 15],
        [9, 12, 10, 20, 25, 20, 30, 32, 16],
      ] as const;
      const out = each(min, max);
      min.forEach((low, i) => {
        const day = { min: low, max: max[i] ?? Number.NaN, nextMin: min[i + 1] ?? low };
        expect(out[i]).toBe(degreeDays(day, { lower: 10, upper: 20, cutoff: kind, method }));
      });
    }
  });
});
