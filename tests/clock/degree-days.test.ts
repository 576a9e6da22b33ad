import { describe, expect, it } from "vitest";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { METHODS } from "../../src/diurnal/method.ts";
import { refusalOf, refusalParts } from "../support/refusal.ts";

describe("degreeDays", () => {
  it("takes single sine and a horizontal cutoff unless told otherwise", () => {
    const day = { min: 60, max: 95 };
    expect(degreeDays(day, { lower: 50, upper: 88 })).toBe(
      degreeDays(day, { lower: 50, upper: 88, cutoff: "horizontal", method: "single-sine" }),
    );
    expect(degreeDays(day, { lower: 50 })).toBe(degreeDays(day, { lower: 50, cutoff: "none" }));
  });

  it("meets the special angles of a sine day: 30 to 70 over 50, 60 and 40", () => {
    // Derived: A/π, and 20·(√3/2 - π/6)/π twice.
    expect(degreeDays({ min: 30, max: 70 }, { lower: 50 })).toBeCloseTo(20 / Math.PI, 12);
    expect(degreeDays({ min: 30, max: 70 }, { lower: 60 })).toBeCloseTo(
      (20 * (Math.sqrt(3) / 2 - Math.PI / 6)) / Math.PI,
      12,
    );
    expect(degreeDays({ min: 30, max: 70 }, { lower: 50, method: "single-triangle" })).toBe(5);
  });

  it("keeps the three averages apart", () => {
    const day = { min: 4, max: 40 };
    const at = (method: "average" | "clamped-average" | "clamped-mean") =>
      degreeDays(day, { lower: 10, upper: 30, method });
    expect([at("average"), at("clamped-average"), at("clamped-mean")]).toEqual([12, 10, 12]);
    expect(
      degreeDays({ min: 30, max: 50 }, { lower: 10, upper: 30, method: "clamped-mean", cutoff: "vertical" }),
    ).toBe(20);
    expect(
      degreeDays({ min: 30, max: 50 }, { lower: 10, upper: 30, method: "average", cutoff: "vertical" }),
    ).toBe(0);
  });

  it("joins two half days in the double methods", () => {
    const thresholds = { lower: 10, upper: 30 } as const;
    for (const shape of ["sine", "triangle"] as const) {
      const half = (min: number) =>
        degreeDays({ min, max: 28 }, { ...thresholds, method: `single-${shape}` });
      expect(
        degreeDays({ min: 6, max: 28, nextMin: 14 }, { ...thresholds, method: `double-${shape}` }),
      ).toBeCloseTo((half(6) + half(14)) / 2, 12);
    }
  });

  it("takes a next minimum above the maximum, as when warm air moves in", () => {
    expect(degreeDays({ min: 2, max: 8, nextMin: 14 }, { lower: 10, method: "double-triangle" })).toBeCloseTo(
      degreeDays({ min: 8, max: 14 }, { lower: 10, method: "single-triangle" }) / 2,
      12,
    );
  });

  it.each([0, 10, 25, 30, 33])("answers a day without a range (%d °C) as its temperature", (t) => {
    for (const method of METHODS) {
      expect(degreeDays({ min: t, max: t }, { lower: 10, upper: 30, method })).toBeCloseTo(
        Math.min(Math.max(t - 10, 0), 20),
        12,
      );
    }
  });

  it("lets development run at the upper threshold itself, also under a vertical cutoff", () => {
    expect(degreeDays({ min: 30, max: 30 }, { lower: 10, upper: 30, cutoff: "vertical" })).toBe(20);
  });

  it.each([
    [{ min: 20, max: 10 }, { lower: 10 }, "min-above-max", "min is 20, above max 10"],
    [{ min: Number.NaN, max: 9 }, { lower: 10 }, "invalid-number", "min is NaN"],
    [{ min: 1, max: Infinity }, { lower: 10 }, "invalid-number", "max is Infinity"],
    [{ min: 1, max: 2, nextMin: Number.NaN }, { lower: 10 }, "invalid-number", "nextMin is NaN"],
    [
      { min: 1, max: 2 },
      { lower: 12, upper: 11.5 },
      "invalid-thresholds",
      "the lower threshold (12) must be below the upper threshold (11.5)",
    ],
    [{ min: 1, max: 2 }, { lower: 12, upper: 12 }, "invalid-thresholds", "must be below"],
    [{ min: 1, max: 2 }, { lower: Number.NaN }, "invalid-number", "lower is NaN"],
    [{ min: 1, max: 2 }, { lower: 1, upper: Infinity }, "invalid-number", "upper is Infinity"],
    [
      { min: 1, max: 2 },
      { lower: 10, cutoff: "vertical" as const },
      "invalid-thresholds",
      "needs an upper threshold",
    ],
  ])("refuses %j with %j", (day, options, code, text) => {
    const refusal = refusalOf(() => degreeDays(day, options));
    expect(refusal.message).toContain(text);
    expect(refusal.code).toBe(code);
  });

  it("says where a refused value stood and what would be right", () => {
    const above = 20;
    expect(refusalParts(() => degreeDays(JSON.parse("[]"), { lower: 10 }))).toEqual([
      "invalid-option",
      "day",
      [],
      "day is a list of 0; it must be an object with min and max.",
    ]);
    expect(refusalParts(() => degreeDays({ min: above, max: 10 }, { lower: 10 }))).toEqual([
      "min-above-max",
      "min",
      above,
      "min is 20, above max 10; the minimum must not be above the maximum.",
    ]);
    const extremes = [
      [{ min: Number.NaN, max: 9 }, "min", Number.NaN, "min is NaN; it must be a temperature."],
      [{ min: 1, max: Infinity }, "max", Infinity, "max is Infinity; it must be a temperature."],
      [
        { min: 1, max: 2, nextMin: -Infinity },
        "nextMin",
        -Infinity,
        "nextMin is -Infinity; it must be the next day's minimum.",
      ],
      [
        { min: -1e100, max: 1e100 },
        "max",
        2e100,
        "max is 2e+100; it must be a temperature within reach of the minimum.",
      ],
    ] as const;
    for (const [day, path, value, message] of extremes) {
      expect(refusalParts(() => degreeDays(day, { lower: 10 }))).toEqual([
        "invalid-number",
        path,
        value,
        message,
      ]);
    }
  });

  it("loses no heat in a day far colder or warmer than any crumb of rounding", () => {
    // Derived: a range of 1e-9 above the threshold, all of it counted; the upper threshold out of reach.
    const day = { min: 10, max: 10 + 2 ** -30 };
    for (const method of ["single-sine", "single-triangle"] as const) {
      const sum = degreeDays(day, { lower: 10, upper: 10 + 2 ** -31, cutoff: "intermediate", method });
      expect(sum).toBeGreaterThan(0);
      expect(sum).toBeLessThan(2 ** -31);
    }
  });

  it("refuses a method or a cutoff that it does not know, naming those it does", () => {
    const wrong = JSON.parse('{"lower":10,"method":"sine"}');
    expect(() => degreeDays({ min: 1, max: 2 }, wrong)).toThrow(
      /method is "sine"; it must be one of average, .*single-sine/,
    );
    const cutoff = JSON.parse('{"lower":10,"upper":30,"cutoff":"soft"}');
    expect(() => degreeDays({ min: 1, max: 2 }, cutoff)).toThrow(
      /cutoff is "soft"; it must be one of none, horizontal/,
    );
  });
});

describe("a threshold within a rounding step of an extreme", () => {
  it("loses no day: neither curve nor cutoff comes out as NaN or nothing", () => {
    // Found by a random search: the share of the amplitude came out just below -1.
    const day = { min: -3.62, max: 0.68 };
    const almost = degreeDays(day, { lower: -1.5, upper: 0.6799999999999999 });
    expect(almost).toBeCloseTo(degreeDays(day, { lower: -1.5 }), 12);
    for (const t of [-3.62, -3.6199999999999997, 0.6799999999999998, 0.68]) {
      expect(degreeDays(day, { lower: t })).toBeGreaterThanOrEqual(0);
      expect(
        degreeDays(day, { lower: -10, upper: t === -3.62 ? -3.61 : t, cutoff: "vertical" }),
      ).toBeGreaterThanOrEqual(0);
    }
  });
});
