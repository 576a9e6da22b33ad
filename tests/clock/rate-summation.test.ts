import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rateSummationEffect } from "../../src/clock/rate-summation.ts";
import { rateFunction } from "../../src/response/rate-model.ts";
import { RATE_MODELS } from "../../src/response/rate-models.ts";
import { degrees } from "../support/arbitraries.ts";
import { INVENTED_RATES } from "../support/invented-rates.ts";
import { halfLastDigit, published } from "../support/published.ts";
import { meanOver } from "../support/quadrature.ts";
import { thresholdsFromR } from "../support/r-thresholds.ts";
import { refusalOf, refusalParts } from "../support/refusal.ts";

const aedes = published("rate-models").sets.find(({ id }) => id === "aedes-development");
const model = RATE_MODELS.find(({ id }) => id === aedes?.model);
if (aedes === undefined || model === undefined) throw new Error("the Aedes parameters are gone");
const aedesRate = rateFunction(model, aedes.parameters);

const extremes = fc
  .tuple(degrees(15, 28), degrees(0.5, 7))
  .map(([mean, half]) => ({ min: mean - half, max: mean + half }));

describe("rateSummationEffect", () => {
  it.each(thresholdsFromR.effects)("$min to $max °C: R's integrate, on sine and triangle", (day) => {
    expect(rateSummationEffect(aedesRate, day)).toBeCloseTo(day.sine, 9);
    expect(rateSummationEffect(aedesRate, day, "single-triangle")).toBeCloseTo(day.triangle, 9);
  });

  // Derived from second-hand parameters: a guard against change.
  it.each(aedes.derivedEffects)("$mean ± $halfRange °C: $percent %", ({ mean, halfRange, percent }) => {
    const effect = rateSummationEffect(aedesRate, { min: mean - halfRange, max: mean + halfRange });
    expect(Math.abs(100 * (effect ?? Number.NaN) - Number(percent))).toBeLessThanOrEqual(
      halfLastDigit(percent),
    );
  });

  it("is the quadrature for every model", () => {
    fc.assert(
      fc.property(extremes, fc.constantFrom(...RATE_MODELS), ({ min, max }, one) => {
        const rate = rateFunction(one, INVENTED_RATES[one.id] ?? {});
        const [mean, half] = [(min + max) / 2, (max - min) / 2];
        const at = (u: number): number => mean - half * Math.cos(Math.PI * u);
        const kinks = [INVENTED_RATES[one.id]?.["lower"] ?? 0, 10.5, 11];
        const expected = meanOver((u) => rate(at(u)), at, kinks) / rate(mean) - 1;
        expect(rateSummationEffect(rate, { min, max })).toBeCloseTo(expected, 6);
      }),
    );
  });

  it("speeds a rate that bends upwards, slows one that bends downwards, leaves a line (Jensen)", () => {
    const shape = fc.constantFrom("single-sine" as const, "single-triangle" as const);
    fc.assert(
      fc.property(extremes, shape, fc.double({ min: 0.01, max: 0.2, noNaN: true }), (day, how, bend) => {
        const upwards = rateSummationEffect((t) => Math.exp(bend * t), day, how) ?? 0;
        const downwards = rateSummationEffect((t) => Math.log(1 + bend * t), day, how) ?? 0;
        const line = rateSummationEffect((t) => bend * t, day, how) ?? 1;
        expect(upwards).toBeGreaterThan(0);
        expect(downwards).toBeLessThan(0);
        expect(Math.abs(line)).toBeLessThan(1e-12);
      }),
    );
  });

  it("grows with the range, and is greater on a sine, which dwells at its ends", () => {
    fc.assert(
      fc.property(degrees(15, 28), degrees(0.5, 7), degrees(0.5, 5), (mean, half, more) => {
        const rate = (t: number): number => Math.exp(0.1 * t);
        const of = (h: number, how?: "single-triangle") =>
          rateSummationEffect(rate, { min: mean - h, max: mean + h }, how) ?? Number.NaN;
        expect(of(half + more)).toBeGreaterThan(of(half));
        expect(of(half)).toBeGreaterThan(of(half, "single-triangle"));
      }),
    );
  });

  it("is 0 on a day without a range, and null where nothing develops at the mean", () => {
    expect(rateSummationEffect(aedesRate, { min: 22, max: 22 })).toBeCloseTo(0, 12);
    expect(rateSummationEffect(aedesRate, { min: 2, max: 18 })).toBeNull();
  });

  it("refuses what is no day, no shape and no rate", () => {
    expect(refusalOf(() => rateSummationEffect(aedesRate, { min: 20, max: 10 })).code).toBe("min-above-max");
    expect(refusalOf(() => rateSummationEffect(aedesRate, { min: Number.NaN, max: 10 })).code).toBe(
      "invalid-number",
    );
    expect(refusalOf(() => rateSummationEffect(() => -1, { min: 10, max: 20 })).path).toEqual(["rate"]);
    // @ts-expect-error: not a shape.
    expect(refusalOf(() => rateSummationEffect(aedesRate, { min: 10, max: 20 }, "square")).message).toContain(
      'the shape is "square"',
    );
  });

  it("says where a refused value stood and what would be right", () => {
    const rate = (temperature: number): number => temperature;
    const day = { min: 10, max: 20 };
    expect(refusalParts(() => rateSummationEffect(JSON.parse("7"), day)).slice(0, 3)).toEqual([
      "invalid-option",
      "rate",
      7,
    ]);
    expect(refusalParts(() => rateSummationEffect(rate, JSON.parse("null")))).toEqual([
      "invalid-option",
      "day",
      null,
      "day is null; it must be an object with min and max.",
    ]);
    for (const field of ["min", "max"]) {
      expect(refusalParts(() => rateSummationEffect(rate, { ...day, [field]: Infinity }))).toEqual([
        "invalid-number",
        field,
        Infinity,
        `${field} is Infinity; it must be a temperature.`,
      ]);
    }
    expect(refusalParts(() => rateSummationEffect(rate, { min: 21, max: 20 }))).toEqual([
      "min-above-max",
      "min",
      21,
      "min is 21, above max 20; the minimum must not be above the maximum.",
    ]);
    expect(refusalParts(() => rateSummationEffect(rate, day, JSON.parse('"square"')))).toEqual([
      "invalid-method",
      "shape",
      "square",
      'the shape is "square"; it must be one of single-sine, single-triangle.',
    ]);
  });

  it("weighs a day on a sine by its quarter wave", () => {
    // Derived: the mean of (10 + 10 sin)² over a wave is 100 + 50, half as much again as at the mean.
    expect(rateSummationEffect((t) => (t - 10) ** 2, { min: 10, max: 30 })).toBeCloseTo(0.5, 9);
    expect(rateSummationEffect((t) => (t - 10) ** 4, { min: 10, max: 30 })).toBeCloseTo(
      1 + 6 / 2 + 3 / 8 - 1,
      9,
    );
  });
});
