import { describe, expect, it } from "vitest";
import { compareRateModels } from "../../src/evaluate/rate-fit/compare-rate-models.ts";
import { THRESHOLD_METHODS, estimateThreshold } from "../../src/evaluate/threshold/estimate-threshold.ts";
import type { Trial } from "../../src/evaluate/threshold/trial.ts";
import { briere1 } from "../../src/response/briere-1.ts";
import { rateFunction } from "../../src/response/rate-model.ts";
import { rateModelText } from "../../src/write/pages/rate-model-text.ts";
import { thresholdText } from "../../src/write/pages/threshold-text.ts";
import { refusalOf } from "../support/refusal.ts";
import { expectPlainPage } from "./plain-text.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const textOf = (trials: readonly Trial[], unit: "C" | "F" = "C"): string =>
  thresholdText(
    trials,
    THRESHOLD_METHODS.map((method) => estimateThreshold(trials, { method })),
    unit,
  );

/** Trials on the line T = 10 °C, K = 200 °C·day. */
const onLine = [14, 18, 22, 26].map((temperature) => ({ temperature, days: 200 / (temperature - 10) }));

describe("thresholdText", () => {
  it("says the line that the trials lie on", () => {
    const text = textOf(onLine);
    expectPlainPage(text);
    expect(text).toMatch(/straight line through 1\/days +10\.0 +0\.0 +200\.0 +0\.0/);
    expect(text).toMatch(/reduced major axis +10\.0 +- +200\.0 +-/);
    expect(flat(text)).toContain("4 trials from 14 to 26 °C");
    expect(flat(text)).not.toContain("In °F");
  });

  it("tells sums of °F from temperatures in °F", () => {
    expect(flat(textOf(onLine, "F"))).toContain("lower threshold 50.0 °F +/- 0.0, 360.0 °F degree-days");
  });

  it("has no minus before a zero", () => {
    const [first] = THRESHOLD_METHODS.map((method) => estimateThreshold(onLine, { method }));
    if (first === undefined) throw new Error("there are methods");
    expect(thresholdText(onLine, [{ ...first, lower: -0.04 }])).not.toMatch(/-0\.0\b/);
  });

  it("refuses a list without trials", () => {
    expect(refusalOf(() => thresholdText([], [])).path).toEqual(["trials"]);
  });

  it("fits 80 columns with large numbers", () => {
    expectPlainPage(
      textOf([3, 9, 15, 24, 33].map((temperature) => ({ temperature, days: 9e6 - temperature }))),
    );
  });
});

describe("rateModelText", () => {
  it("names the optimum of the best, and that it is no place to rear at", () => {
    const rate = rateFunction(briere1, { a: 1e-4, lower: 10, upper: 35 });
    // A ripple of 1 %, so that there are residuals.
    const trials = [13, 16, 19, 22, 25, 28, 31, 33].map((temperature, i) => ({
      temperature,
      days: (1 / rate(temperature)) * (i % 2 === 0 ? 1.01 : 0.99),
    }));
    const text = rateModelText(compareRateModels(trials));
    expectPlainPage(text);
    // The optimum of the curve is 29.2 °C: the example of optimumOf.
    expect(flat(text)).toMatch(/By briere-1 development is fastest at 29\.\d °C/);
    expect(flat(text)).toContain("not the best one to rear at");
    expect(text).toMatch(
      /^briere-1 +\+\/-\n {2}a +.*\n {2}lower +\d+\.\d+ +0\.\d+ +°C\n {2}upper +\d+\.\d+ +0\.\d+ +°C$/m,
    );
  });

  it("names no optimum of parameters that a search left in a place where they mean nothing", () => {
    const row = {
      model: "briere-1",
      parameters: { a: 1e-4, lower: 30, upper: 20 },
      parameterCount: 3,
      rss: 1e-6,
      aicc: 12,
      delta: 0,
      weight: 1,
      reason: null,
      fit: null,
    };
    expect(rateModelText([row])).toMatch(/^ {2}briere-1 .* -$/m);
  });

  it("does not make an optimum of a straight line", () => {
    const trials = onLine
      .concat([12, 16, 20, 24].map((temperature) => ({ temperature, days: 200 / (temperature - 10) })))
      .map(({ temperature, days }, i) => ({ temperature, days: days * (i % 2 === 0 ? 1.02 : 0.98) }));
    const text = rateModelText(compareRateModels(trials, []));
    expectPlainPage(text);
    expect(flat(text)).toContain("The straight line does best: nothing in these trials shows a bend");
  });

  it("gives the reason of each where none can be ranked", () => {
    const text = rateModelText(compareRateModels(onLine));
    expectPlainPage(text);
    expect(flat(text)).toContain("None can be ranked by these trials");
    expect(text.match(/^ {2}- /gm)).toHaveLength(7);
  });
});
