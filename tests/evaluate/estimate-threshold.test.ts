import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { estimateThreshold, thresholdOfLine } from "../../src/evaluate/threshold/estimate-threshold.ts";
import type { Trial } from "../../src/evaluate/threshold/trial.ts";
import { relativeError, thresholdsFromR, trialsOf } from "../support/r-thresholds.ts";
import { refusalOf } from "../support/refusal.ts";

const days = (lower: number, constant: number, temperatures: readonly number[]): Trial[] =>
  temperatures.map((temperature) => ({ temperature, days: constant / (temperature - lower) }));

/** Trials of an invented animal with scatter, 4 to 9 different temperatures. */
const scattered = fc
  .record({
    lower: fc.double({ min: 2, max: 14, noNaN: true }),
    constant: fc.double({ min: 40, max: 700, noNaN: true }),
    steps: fc.array(fc.integer({ min: 2, max: 4 }), { minLength: 4, maxLength: 9 }),
    noise: fc.array(fc.double({ min: -0.06, max: 0.06, noNaN: true }), { minLength: 9, maxLength: 9 }),
  })
  .map(({ lower, constant, steps, noise }) => {
    let temperature = lower + 2;
    return steps.map((step, i): Trial => {
      temperature += step;
      return {
        temperature,
        days: (constant / (temperature - lower)) * (1 + (noise[i] ?? 0)),
        weight: 1 + (i % 3),
      };
    });
  });

describe("estimateThreshold", () => {
  it.each(thresholdsFromR.lines)("$id: R's line, errors and studentised residuals to nine digits", (set) => {
    const { lower, lowerError, thermalConstant, thermalConstantError, line, diagnostics } = estimateThreshold(
      trialsOf(set),
    );
    const pairs: [number | null | undefined, number][] = [
      [lower, set.lower],
      [lowerError, set.lowerError],
      [thermalConstant, set.thermalConstant],
      [thermalConstantError, set.thermalConstantError],
      [line.slopeError, set.slopeError],
      ...set.studentised.map((value, i): [number | null | undefined, number] => [
        diagnostics.studentised[i],
        value,
      ]),
    ];
    for (const [found, expected] of pairs)
      expect(relativeError(found ?? Number.NaN, expected)).toBeLessThan(1e-9);
    if (set.majorAxisSlope === null) return;
    const axis = estimateThreshold(trialsOf(set), { method: "reduced-major-axis" });
    expect(relativeError(axis.lower, set.majorAxisSlope)).toBeLessThan(1e-9);
    expect([axis.lowerError, axis.thermalConstantError]).toEqual([null, null]);
  });

  it("gives back threshold and constant of an exact animal, by both methods", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 15, noNaN: true }),
        fc.double({ min: 20, max: 900, noNaN: true }),
        (lower, constant) => {
          const trials = days(lower, constant, [18, 21, 24, 27, 30]);
          for (const method of ["x-intercept", "reduced-major-axis"] as const) {
            const found = estimateThreshold(trials, { method });
            expect(relativeError(found.lower, lower)).toBeLessThan(1e-9);
            expect(relativeError(found.thermalConstant, constant)).toBeLessThan(1e-9);
            expect(found.diagnostics.leftOut).toEqual([]);
          }
        },
      ),
    );
  });

  it("says the same in °F, but for the reduced major axis", () => {
    fc.assert(
      fc.property(scattered, (trials) => {
        const fahrenheit = trials.map((trial) => ({ ...trial, temperature: trial.temperature * 1.8 + 32 }));
        const [c, f] = [estimateThreshold(trials), estimateThreshold(fahrenheit)];
        expect(f.lower).toBeCloseTo(c.lower * 1.8 + 32, 8);
        expect(f.thermalConstant).toBeCloseTo(c.thermalConstant * 1.8, 7);
        expect(f.lowerError ?? 0).toBeCloseTo((c.lowerError ?? 0) * 1.8, 8);
        expect(f.diagnostics.leftOut.length).toBe(c.diagnostics.leftOut.length);
      }),
    );
    const trials = trialsOf({ temperature: [18, 21.5, 25, 28], days: [28.2, 21.6, 16.1, 15] });
    const axis = (list: readonly Trial[]) => estimateThreshold(list, { method: "reduced-major-axis" }).lower;
    const inFahrenheit = axis(
      trials.map((trial) => ({ ...trial, temperature: trial.temperature * 1.8 + 32 })),
    );
    // r is 0.97 in °C and nearer 1 in °F, where the line is steeper: the two differ by a tenth of a degree.
    expect(Math.abs((inFahrenheit - 32) / 1.8 - axis(trials))).toBeGreaterThan(0.05);
  });

  it("scales with days, ignores order, and takes a weight of 2 for the same trial twice", () => {
    fc.assert(
      fc.property(scattered, fc.double({ min: 0.1, max: 20, noNaN: true }), (trials, factor) => {
        const found = estimateThreshold(trials);
        const slower = estimateThreshold(trials.map((trial) => ({ ...trial, days: trial.days * factor })));
        expect(slower.lower).toBeCloseTo(found.lower, 8);
        expect(relativeError(slower.thermalConstant, found.thermalConstant * factor)).toBeLessThan(1e-9);
        expect(estimateThreshold([...trials].reverse()).lower).toBeCloseTo(found.lower, 9);
        const repeated = trials.flatMap(({ weight = 1, ...trial }) =>
          Array.from({ length: weight }, () => trial),
        );
        expect(estimateThreshold(repeated).lower).toBeCloseTo(found.lower, 9);
      }),
    );
  });

  it("has no standard errors with two trials, and says so", () => {
    const found = estimateThreshold(days(10, 200, [15, 20]));
    expect(found).toMatchObject({
      lower: 10,
      thermalConstant: 200,
      lowerError: null,
      thermalConstantError: null,
    });
    expect(found.diagnostics.studentised).toEqual([null, null]);
    expect(found.diagnostics.hottest.looksOutside).toBeNull();
    expect(found.notes.map(({ code, message }) => [code, message])).toEqual([
      ["few-trials", expect.stringContaining("Any two lie on a line")],
    ]);
  });

  it("has standard errors from three trials, at two temperatures too, with a note that no bend can show", () => {
    const three = estimateThreshold(trialsOf({ temperature: [15, 15, 20], days: [40, 42, 20] }));
    expect(three.lowerError).toBeGreaterThan(0);
    expect(three.notes[0]?.message).toContain("2 different temperatures");
    expect(estimateThreshold(days(10, 200, [15, 20, 25])).notes.map(({ code }) => code)).toEqual([
      "few-trials",
    ]);
  });

  it("finds a hot end below the line and a cold end above it, and suggests the range between", () => {
    // Invented: 200 degree-days over 10 °C, days rounded, too slow at 34 °C and too fast at 11 °C.
    const trials = trialsOf({
      temperature: [11, 14, 17, 20, 23, 26, 29, 34],
      days: [80, 49.8, 28.7, 19.9, 15.4, 12.5, 10.5, 12.1],
    });
    const { diagnostics, notes } = estimateThreshold(trials);
    expect(diagnostics.hottest).toMatchObject({ temperature: 34, looksOutside: true });
    expect(diagnostics.hottest.deviation).toBeLessThan(0);
    expect(diagnostics.leftOut).toEqual([11, 34]);
    expect(diagnostics.suggested).toEqual({ min: 14, max: 29 });
    expect(notes[0]).toEqual({
      code: "outside-linear-range",
      message:
        "Development at 11, 34 bends away from the line through the other temperatures. Estimate again from the trials between 14 and 29.",
    });
    const again = estimateThreshold(trials.filter(({ temperature }) => temperature > 12 && temperature < 30));
    expect(again.lower).toBeCloseTo(10, 0);
    expect(again.diagnostics.leftOut).toEqual([]);
  });

  it("does not take an end on the other side of the line for a bend", () => {
    const trials = days(10, 200, [15, 18, 21, 24, 27]).map((trial, i) => ({
      ...trial,
      days: trial.days * ([1, 1.01, 0.99, 1, 0.8][i] ?? 1),
    }));
    const { hottest, leftOut } = estimateThreshold(trials).diagnostics;
    expect(hottest.deviation).toBeGreaterThan(0);
    expect(hottest.looksOutside).toBe(false);
    expect(leftOut).toEqual([]);
  });

  it("says when an end moves the threshold but four trials cannot tell", () => {
    const { notes, diagnostics } = estimateThreshold(
      trialsOf({ temperature: [50, 60, 70, 80], days: [40, 20, 13, 9] }),
    );
    expect(diagnostics.leftOut).toEqual([]);
    expect(notes.map(({ code }) => code)).toEqual(["outside-linear-range", "outside-linear-range"]);
    expect(notes[1]?.message).toContain("Without the hottest temperature, 80");
  });

  it("warns of a reduced major axis whose threshold is near 0", () => {
    const trials = trialsOf({ temperature: [12, 16, 20, 24, 28], days: [41, 32.5, 24.2, 21.5, 17.3] });
    const { notes } = estimateThreshold(trials, { method: "reduced-major-axis" });
    expect(notes.map(({ code }) => code)).toContain("weak-line");
  });

  const good = days(10, 200, [15, 20, 25]);
  const cases: [string, readonly Trial[], string, string][] = [
    ["no trials", [], "invalid-trials", "0 different temperatures"],
    [
      "one temperature",
      trialsOf({ temperature: [20, 20, 20], days: [19, 20, 21] }),
      "invalid-trials",
      "at one temperature",
    ],
    [
      "days of 0",
      [...good, { temperature: 30, days: 0 }],
      "invalid-number",
      "trials.3.days is 0; it must be a finite number above 0.",
    ],
    [
      "days of NaN",
      [...good, { temperature: 30, days: Number.NaN }],
      "invalid-number",
      "trials.3.days is NaN",
    ],
    ["endless days", [...good, { temperature: 30, days: Infinity }], "invalid-number", "trials.3.days"],
    [
      "no temperature",
      [{ temperature: Number.NaN, days: 20 }, ...good],
      "invalid-number",
      "trials.0.temperature",
    ],
    [
      "a weight of 0",
      [{ temperature: 20, days: 20, weight: 0 }, ...good],
      "invalid-number",
      "trials.0.weight",
    ],
    [
      "slower with warmth",
      trialsOf({ temperature: [28, 31, 34], days: [10, 12, 15] }),
      "invalid-trials",
      "no faster from 28 to 34",
    ],
    [
      "the same days everywhere",
      trialsOf({ temperature: [18, 20, 23], days: [12, 12, 12] }),
      "invalid-trials",
      "no faster from 18 to 23",
    ],
  ];
  it.each(cases)("refuses %s", (_, trials, code, message) => {
    const error = refusalOf(() => estimateThreshold(trials));
    expect(error.code).toBe(code);
    expect(error.message).toContain(message);
  });

  it("refuses an unknown method and a line that does not rise", () => {
    // @ts-expect-error: not a method.
    expect(refusalOf(() => estimateThreshold(good, { method: "eye" })).message).toContain(
      'method is "eye"; it must be one of x-intercept, reduced-major-axis.',
    );
    expect(refusalOf(() => thresholdOfLine({ intercept: 1, slope: 0 })).message).toContain(
      "the slope above 0",
    );
  });
});
