import { describe, expect, it } from "vitest";
import { degreeDays } from "../../src/clock/degree-days.ts";
import {
  CURVE_METHODS,
  METHODS,
  SUN_METHODS,
  isSunMethod,
  knownCurveMethod,
  knownMethod,
} from "../../src/diurnal/method.ts";
import { refusalOf } from "../support/refusal.ts";

describe("names of methods", () => {
  it("are all curves, and some have closed forms", () => {
    expect(CURVE_METHODS).toEqual([...METHODS, ...SUN_METHODS]);
    for (const method of METHODS) expect([knownMethod(method), isSunMethod(method)]).toEqual([method, false]);
    for (const method of SUN_METHODS)
      expect([knownCurveMethod(method), isSunMethod(method)]).toEqual([method, true]);
  });

  it("say of a method that follows the sun why a day alone has no degree-days by it", () => {
    const refusal = refusalOf(() =>
      degreeDays({ min: 8, max: 24 }, { lower: 10, method: "sunrise-sine" as "average" }),
    );
    expect(refusal.code).toBe("invalid-method");
    expect(refusal.message).toContain("has no closed form for a day; it must be one of average,");
  });

  it("refuse others with the whole list", () => {
    expect(refusalOf(() => knownCurveMethod("sine")).message).toContain("sunrise-sine, sunrise-exponential.");
    expect(refusalOf(() => knownMethod("sine")).message).not.toContain("sunrise");
  });
});
