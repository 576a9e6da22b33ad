import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { huberLine, median } from "../../src/numeric/huber-line.ts";
import { degrees } from "../support/arbitraries.ts";
import { fromR } from "../support/reference.ts";

const points = fc.array(fc.tuple(degrees(-10, 40), degrees(-10, 40)), { minLength: 6, maxLength: 40 });
const spreadOut = points.filter((list) => new Set(list.map(([x]) => x)).size > 3);

describe("huberLine", () => {
  // MASS::rlm with psi.huber, k = 1.345 and MAD scale, run until it stood still, on data of R. Both are
  // iterations, which end within about 1e-7 of each other.
  test.each(fromR.lines)(
    "$what as R ($id)",
    ({ x, y, throughOrigin, coefficients, standardErrors, scale }) => {
      const line = huberLine(x, y, { throughOrigin: throughOrigin === 1 });
      const ours = throughOrigin === 1 ? [line.slope] : [line.intercept, line.slope];
      const errors = [line.interceptVariance, line.slopeVariance].slice(throughOrigin).map(Math.sqrt);
      expect(line.converged).toBe(true);
      expect(Math.abs(line.scale / scale - 1)).toBeLessThan(1e-7);
      coefficients.forEach((expected, i) => {
        expect(Math.abs((ours[i] ?? Number.NaN) / expected - 1)).toBeLessThan(1e-7);
        expect(Math.abs((errors[i] ?? Number.NaN) / (standardErrors[i] ?? Number.NaN) - 1)).toBeLessThan(
          1e-7,
        );
      });
    },
  );

  test("points on a line give the line, without error", () => {
    const line = huberLine([1, 2, 3, 4, 5], [3, 5, 7, 9, 11]);
    expect([line.intercept, line.slope]).toEqual([expect.closeTo(1, 12), expect.closeTo(2, 12)]);
    expect([line.slopeVariance, line.scale]).toEqual([expect.closeTo(0, 12), expect.closeTo(0, 12)]);
  });

  test("one odd point hardly pulls it", () => {
    const x = Array.from({ length: 20 }, (_, i) => i);
    const y = x.map((value) => 2 * value + (value % 3) - 1);
    const odd = y.map((value, i) => (i === 19 ? value + 100 : value));
    expect(Math.abs(huberLine(x, odd).slope - huberLine(x, y).slope)).toBeLessThan(0.05);
    expect(huberLine(x, odd).weights[19]).toBeLessThan(0.05);
  });

  test("moves and scales with its points", () => {
    fc.assert(
      fc.property(spreadOut, degrees(-20, 20), degrees(0.5, 4), (list, shift, factor) => {
        const [x, y] = [list.map(([one]) => one), list.map(([, one]) => one)];
        const line = huberLine(x, y);
        // Where two lines fit alike, as with a few points on a lattice, rounding may choose between them.
        fc.pre(line.converged && line.scale > 0.1);
        const moved = huberLine(
          x.map((value) => value + shift),
          y.map((value) => factor * value + shift),
        );
        fc.pre(moved.converged);
        expect(moved.slope).toBeCloseTo(factor * line.slope, 5);
        expect(moved.scale).toBeCloseTo(factor * line.scale, 5);
        expect(Math.sqrt(moved.slopeVariance)).toBeCloseTo(factor * Math.sqrt(line.slopeVariance), 4);
      }),
    );
  });

  test("weighted residuals cancel, as at a solution they must", () => {
    fc.assert(
      fc.property(spreadOut, (list) => {
        const [x, y] = [list.map(([one]) => one), list.map(([, one]) => one)];
        const { residuals, weights, converged, scale } = huberLine(x, y);
        fc.pre(converged && scale > 0.1);
        const sum = residuals.reduce((total, one, i) => total + one * (weights[i] ?? 0), 0);
        const products = residuals.reduce(
          (total, one, i) => total + one * (weights[i] ?? 0) * (x[i] ?? 0),
          0,
        );
        expect(sum).toBeCloseTo(0, 6);
        expect(products).toBeCloseTo(0, 5);
      }),
    );
  });

  test("the middle of an odd and an even number of values", () => {
    expect([median([5, 1, 3]), median([4, 1, 3, 2])]).toEqual([3, 2.5]);
  });
});
