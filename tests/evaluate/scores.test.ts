import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { normalCdf, normalDensity, normalQuantile } from "../../src/numeric/normal-distribution.ts";
import { bias, coverage, crps, meanAbsoluteError, skill } from "../../src/evaluate/hindsight/scores.ts";
import { degrees } from "../support/arbitraries.ts";
import { refusalOf } from "../support/refusal.ts";

const value = degrees(-30, 30);
const members = fc.array(value, { minLength: 2, maxLength: 25 });
const weighted = fc.array(fc.tuple(value, degrees(0.01, 3)), { minLength: 2, maxLength: 25 });

/** The definition, pair by pair. */
function byPairs(values: readonly number[], weights: readonly number[], y: number): number {
  const total = weights.reduce((sum, one) => sum + one, 0);
  let score = 0;
  values.forEach((x, i) => {
    const w = (weights[i] ?? 0) / total;
    score += w * Math.abs(x - y);
    values.forEach((other, k) => {
      score -= (w * (weights[k] ?? 0) * Math.abs(x - other)) / total / 2;
    });
  });
  return score;
}

describe("crps", () => {
  // Derived: by hand from the definition.
  test("an ensemble of four", () => {
    expect(crps([1, 2, 4, 7], 3)).toBeCloseTo(0.75, 12);
    expect(crps([7, 1, 4, 2], 3, { fair: true })).toBeCloseTo(1 / 3, 12);
  });

  // Derived: closed form for a standard normal, y(2Φ(y) - 1) + 2φ(y) - 1/√π (Gneiting & Raftery 2007, from
  // memory). Ten thousand quantiles come within 1e-4 of it, which is their distance in the tails.
  test.each([
    [0, 0.233695],
    [1, 0.6024414],
    [2, 1.4527918],
  ])("the quantiles of a normal distribution, %d observed", (y, expected) => {
    const closed = y * (2 * normalCdf(y) - 1) + 2 * normalDensity(y) - 1 / Math.sqrt(Math.PI);
    expect(closed).toBeCloseTo(expected, 6);
    const quantiles = Array.from({ length: 10_000 }, (_, i) => normalQuantile((i + 0.5) / 10_000));
    expect(Math.abs(crps(quantiles, y) - expected)).toBeLessThan(1e-4);
  });

  test("a fair score needs more than one member that counts", () => {
    for (const weights of [
      [1, 0, 0],
      [1e100, 1, 1],
    ]) {
      const refusal = refusalOf(() => crps([1, 2, 3], 2, { weights, fair: true }));
      expect([refusal.code, refusal.path]).toEqual(["invalid-option", ["fair"]]);
    }
  });

  test("one member scores its absolute error", () => {
    fc.assert(
      fc.property(value, value, (one, y) => {
        expect(crps([one], y)).toBeCloseTo(Math.abs(one - y), 12);
        expect(crps([one, one, one], y)).toBeCloseTo(Math.abs(one - y), 12);
      }),
    );
  });

  test("agrees with the definition pair by pair, weighted or not", () => {
    fc.assert(
      fc.property(weighted, value, (list, y) => {
        const [values, weights] = [list.map(([one]) => one), list.map(([, one]) => one)];
        const equal = values.map(() => 1);
        expect(crps(values, y, { weights })).toBeCloseTo(byPairs(values, weights, y), 10);
        expect(crps(values, y)).toBeCloseTo(byPairs(values, equal, y), 10);
      }),
    );
  });

  test("moves and scales with the values, and the fair score is never above the plain one", () => {
    fc.assert(
      fc.property(members, value, value, degrees(0.1, 5), (values, y, shift, factor) => {
        const moved = values.map((one) => factor * one + shift);
        expect(crps(moved, factor * y + shift)).toBeCloseTo(factor * crps(values, y), 9);
        expect(crps(moved, factor * y + shift, { fair: true })).toBeCloseTo(
          factor * crps(values, y, { fair: true }),
          9,
        );
        expect(crps(values, y, { fair: true })).toBeLessThanOrEqual(crps(values, y) + 1e-12);
        expect(crps(values, y)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test("a weight of two is the member twice, and a weight of 0 is none", () => {
    expect(crps([1, 5], 2, { weights: [2, 1] })).toBeCloseTo(crps([1, 1, 5], 2), 12);
    expect(crps([1, 5, 99], 2, { weights: [1, 1, 0] })).toBeCloseTo(crps([1, 5], 2), 12);
    expect(crps([1, 5, 99], 2, { weights: [1, 1, 0], fair: true })).toBeCloseTo(
      crps([1, 5], 2, { fair: true }),
      12,
    );
  });

  // What makes it fair (Ferro 2014, from memory): drawn from the distribution that the observation comes from,
  // ensembles of any size score alike on average. Here for all pairs of a uniform on 1, 2, 3 (derived).
  test("the fair score does not depend on the number of members", () => {
    const all = [1, 2, 3];
    const average = (ensembles: readonly (readonly number[])[], fair: boolean): number => {
      const scores = ensembles.flatMap((one) => all.map((y) => crps(one, y, { fair })));
      return scores.reduce((sum, score) => sum + score, 0) / scores.length;
    };
    const pairs = all.flatMap((a) => all.map((b) => [a, b]));
    const triples = pairs.flatMap((pair) => all.map((c) => [...pair, c]));
    expect(average(pairs, true)).toBeCloseTo(average(triples, true), 12);
    expect(average(pairs, false)).toBeGreaterThan(average(triples, false));
  });

  test.each([
    [[], 1, {}, "invalid-option", ["members"]],
    [[1, NaN], 1, {}, "invalid-number", ["members", 1]],
    [[1], NaN, {}, "invalid-number", ["observed"]],
    [[1, 2], 1, { weights: [1] }, "length-mismatch", ["weights"]],
    [[1, 2], 1, { weights: [1, -1] }, "invalid-number", ["weights", "1"]],
    [[1, 2], 1, { weights: [0, 0] }, "invalid-option", ["weights"]],
    [[1], 1, { fair: true }, "invalid-option", ["fair"]],
    [[1, 2], 1, { fair: true, weights: [1, 0] }, "invalid-option", ["fair"]],
  ])("refuses %j, %j with %j", (values, y, options, code, path) => {
    expect(refusalOf(() => crps(values, y, options))).toMatchObject({ code, path });
  });
});

describe("bias, meanAbsoluteError and coverage", () => {
  const pairs = fc.array(fc.tuple(value, value), { minLength: 1, maxLength: 30 });

  test("later than predicted is above 0", () => {
    expect(bias([10, 12], [11, 14])).toBe(1.5);
    expect(meanAbsoluteError([10, 12], [11, 10])).toBe(1.5);
  });

  test("the bias is never larger than the mean distance, changes sign with the roles, and shifts", () => {
    fc.assert(
      fc.property(pairs, value, (list, shift) => {
        const [p, o] = [list.map(([one]) => one), list.map(([, one]) => one)];
        expect(Math.abs(bias(p, o))).toBeLessThanOrEqual(meanAbsoluteError(p, o) + 1e-12);
        expect(bias(p, o)).toBeCloseTo(-bias(o, p), 10);
        const later = o.map((one) => one + shift);
        expect(bias(p, later)).toBeCloseTo(bias(p, o) + shift, 10);
        // The mean distance is the score of forecasts with one member.
        const scores = p.map((one, i) => crps([one], o[i] ?? Number.NaN));
        expect(meanAbsoluteError(p, o)).toBeCloseTo(scores.reduce((sum, one) => sum + one, 0) / p.length, 10);
      }),
    );
  });

  test("bounds belong to the interval", () => {
    const interval = { lower: 1, upper: 3 };
    expect(coverage([interval, interval, interval, interval], [1, 3, 2, 3.001])).toBe(0.75);
  });

  test.each([
    [() => bias([1], []), "length-mismatch", ["observed"]],
    [() => bias([], []), "invalid-option", ["predicted"]],
    [() => meanAbsoluteError([1, NaN], [1, 2]), "invalid-number", ["predicted", 1]],
    [() => coverage([{ lower: 1, upper: 2 }], [NaN]), "invalid-number", ["observed", 0]],
    [() => coverage([{ lower: 3, upper: 2 }], [1]), "invalid-option", ["intervals", 0, "lower"]],
    [() => coverage([], []), "invalid-option", ["predicted"]],
  ])("refuses %s", (call, code, path) => {
    expect(refusalOf(call)).toMatchObject({ code, path });
  });
});

describe("skill", () => {
  test("1 is perfect, 0 as good as the reference, below 0 worse", () => {
    expect([skill(0, 4), skill(4, 4), skill(1, 4), skill(6, 4)]).toEqual([1, 0, 0.75, -0.5]);
  });

  test.each([
    [1, 0, ["reference"]],
    [1, NaN, ["reference"]],
    [-1, 2, ["score"]],
  ])("refuses %d against %d", (score, reference, path) => {
    expect(refusalOf(() => skill(score, reference))).toMatchObject({ code: "invalid-number", path });
  });
});
