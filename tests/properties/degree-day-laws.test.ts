// Laws of degree-days, over random days and thresholds. Identities derived from the definition.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { METHODS, type Method } from "../../src/diurnal/method.ts";
import { CUTOFFS, linearRate, linearResponse } from "../../src/response/linear.ts";
import { celsiusToFahrenheit } from "../../src/units.ts";
import { cutoff, day, degrees, limits } from "../support/arbitraries.ts";
import { meanOver } from "../support/quadrature.ts";

const method = fc.constantFrom(...METHODS);
const CLOSE = 1e-9;

describe("degree-days", () => {
  it("agree with an independent quadrature to 1e-9, every curve and cutoff", () => {
    const curves: Readonly<Record<string, (min: number, max: number) => (u: number) => number>> = {
      "single-sine": (min, max) => (u) => (min + max) / 2 - ((max - min) / 2) * Math.cos(2 * Math.PI * u),
      "single-triangle": (min, max) => (u) => min + (max - min) * (1 - Math.abs(2 * u - 1)),
    };
    let worst = 0;
    fc.assert(
      fc.property(
        day,
        limits,
        cutoff,
        fc.constantFrom("single-sine", "single-triangle"),
        ({ min, max }, { lower, upper }, kind, name) => {
          const temperature = curves[name]?.(min, max) ?? (() => 0);
          const response = linearResponse({ lower, upper, cutoff: kind });
          const exact = meanOver((u) => linearRate(response, temperature(u)), temperature, [
            lower,
            upper,
            2 * upper - lower,
          ]);
          const closed = degreeDays({ min, max }, { lower, upper, cutoff: kind, method: name });
          worst = Math.max(worst, Math.abs(closed - exact));
          expect(Math.abs(closed - exact)).toBeLessThan(CLOSE);
        },
      ),
      { numRuns: 400 },
    );
    expect(worst).toBeLessThan(CLOSE);
  });

  it("are 1.8 times as many in °F as in °C", () => {
    fc.assert(
      fc.property(day, limits, cutoff, method, ({ min, max, nextMin }, { lower, upper }, kind, how) => {
        const celsius = degreeDays({ min, max, nextMin }, { lower, upper, cutoff: kind, method: how });
        const f = celsiusToFahrenheit;
        // A mean or an extreme that meets the upper threshold to the last digit jumps under a vertical cutoff.
        fc.pre(kind !== "vertical" || Math.abs((min + max) / 2 - upper) > 1e-9);
        const fahrenheit = degreeDays(
          { min: f(min), max: f(max), nextMin: f(nextMin) },
          { lower: f(lower), upper: f(upper), cutoff: kind, method: how },
        );
        expect(fahrenheit).toBeCloseTo(1.8 * celsius, 6);
      }),
    );
  });

  it("never fall when the day gets warmer, where the rate never falls", () => {
    fc.assert(
      fc.property(
        day,
        limits,
        fc.constantFrom("none" as const, "horizontal" as const),
        method,
        degrees(0, 10),
        ({ min, max, nextMin }, { lower, upper }, kind, how, by) => {
          const options = { lower, upper, cutoff: kind, method: how };
          const warmer = { min: min + by, max: max + by, nextMin: nextMin + by };
          expect(degreeDays(warmer, options)).toBeGreaterThanOrEqual(
            degreeDays({ min, max, nextMin }, options) - CLOSE,
          );
        },
      ),
    );
  });

  it("never rise with the lower threshold, without a cutoff", () => {
    fc.assert(
      fc.property(day, degrees(-5, 25), degrees(0, 10), method, (one, lower, by, how) => {
        expect(degreeDays(one, { lower: lower + by, method: how })).toBeLessThanOrEqual(
          degreeDays(one, { lower, method: how }) + CLOSE,
        );
      }),
    );
  });

  it("are ordered by cutoff and stay within the thresholds", () => {
    fc.assert(
      fc.property(day, limits, method, (one, { lower, upper }, how) => {
        const [none = 0, horizontal = 0, intermediate = 0, vertical = 0] = CUTOFFS.map((kind) =>
          degreeDays(one, { lower, upper, cutoff: kind, method: how }),
        );
        expect(horizontal).toBeLessThanOrEqual(none + CLOSE);
        expect(intermediate).toBeLessThanOrEqual(horizontal + CLOSE);
        expect(vertical).toBeLessThanOrEqual(horizontal + CLOSE);
        expect(horizontal).toBeLessThanOrEqual(upper - lower + CLOSE);
        expect(Math.min(none, horizontal, intermediate, vertical)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("run average ≤ triangle ≤ sine ≤ clamped average on a day that straddles the lower threshold", () => {
    fc.assert(
      fc.property(degrees(0, 25), degrees(0.1, 15), degrees(0.1, 15), (lower, down, up) => {
        const at = (how: Method) =>
          degreeDays({ min: lower - down, max: lower + up }, { lower, method: how });
        expect(at("average")).toBeLessThanOrEqual(at("single-triangle") + CLOSE);
        expect(at("single-triangle")).toBeLessThanOrEqual(at("single-sine") + CLOSE);
        expect(at("single-sine")).toBeLessThanOrEqual(at("clamped-average") + CLOSE);
      }),
    );
  });

  it("do not differ between single and double methods when the next minimum is the same", () => {
    fc.assert(
      fc.property(
        day,
        limits,
        cutoff,
        fc.constantFrom("sine", "triangle"),
        ({ min, max }, { lower, upper }, kind, shape) => {
          const at = (how: Method) =>
            degreeDays({ min, max, nextMin: min }, { lower, upper, cutoff: kind, method: how });
          expect(at(`double-${shape}` as Method)).toBeCloseTo(at(`single-${shape}` as Method), 12);
        },
      ),
    );
  });
});
