import { describe, expect, it } from "vitest";
import { akaikeWeights, correctedAkaike } from "../../src/evaluate/rate-fit/akaike.ts";
import { compareRateModels } from "../../src/evaluate/rate-fit/compare-rate-models.ts";
import { fitRateModel } from "../../src/evaluate/rate-fit/fit-rate-model.ts";
import { briere1 } from "../../src/response/briere-1.ts";
import { RATE_MODELS } from "../../src/response/rate-models.ts";
import { thresholdsFromR, trialsOf } from "../support/r-thresholds.ts";
import { refusalOf } from "../support/refusal.ts";

const invented = thresholdsFromR.fits.find(({ id }) => id === "briere-1 on invented trials");
if (invented === undefined) throw new Error("the invented trials are gone");
const trials = trialsOf(invented);

describe("compareRateModels", () => {
  const rows = compareRateModels(trials);

  it("ranks all models and the line, the least criterion first", () => {
    expect(rows.map(({ model }) => model).sort()).toEqual(
      ["linear", ...RATE_MODELS.map(({ id }) => id)].sort(),
    );
    const criteria = rows.flatMap(({ aicc }) => (aicc === null ? [] : [aicc]));
    expect(criteria).toEqual([...criteria].sort((a, b) => a - b));
    expect(rows[0]).toMatchObject({ model: "briere-1", delta: 0, reason: null });
    expect(rows.reduce((sum, { weight }) => sum + (weight ?? 0), 0)).toBeCloseTo(1, 12);
  });

  it("has R's differences of the criterion for two models", () => {
    const aicc = (list: readonly { model: string; aicc: number | null }[], id: string) =>
      list.find(({ model }) => model === id)?.aicc ?? Number.NaN;
    const theirs = thresholdsFromR.fits.filter(({ id }) => id.endsWith("on invented trials"));
    expect(aicc(rows, "briere-2") - aicc(rows, "briere-1")).toBeCloseTo(
      aicc(theirs, "briere-2") - aicc(theirs, "briere-1"),
      7,
    );
  });

  it("has the same fit as fitRateModel", () => {
    expect(rows[0]?.fit).toEqual(fitRateModel(trials, briere1));
  });

  it("says why a model has no criterion, and ranks none with five trials of four parameters", () => {
    const few = compareRateModels(trials.filter((_, i) => i % 2 === 0));
    expect(few[0]).toMatchObject({ model: "linear", delta: 0, weight: 1 });
    expect(few.slice(1).map(({ delta, weight }) => [delta, weight])).toEqual(
      RATE_MODELS.map(() => [null, null]),
    );
    const reasons = new Map(few.map(({ model, reason }) => [model, reason]));
    expect(reasons.get("briere-1")).toContain("it needs 6 or more, and there are 5");
    expect(reasons.get("sharpe-schoolfield")).toBe(
      "There are 5 different temperatures for 6 parameters, so that it cannot be fitted.",
    );
    expect(few.find(({ model }) => model === "sharpe-schoolfield")).toMatchObject({
      parameters: null,
      fit: null,
    });
  });

  it("does not rank an exact line", () => {
    const exact = [14, 17, 20, 23, 26, 29].map((temperature) => ({
      temperature,
      days: 200 / (temperature - 10),
    }));
    const line = compareRateModels(exact, []).at(0);
    expect(line).toMatchObject({
      model: "linear",
      aicc: null,
      reason: expect.stringContaining("to rounding"),
    });
  });

  it("refuses one temperature", () => {
    const same = trialsOf({ temperature: [20, 20], days: [10, 11] });
    expect(refusalOf(() => compareRateModels(same)).code).toBe("invalid-trials");
  });
});

describe("Akaike", () => {
  it("needs more trials than parameters, the variance and one", () => {
    expect(correctedAkaike(1, 5, 4)).toBeNull();
    // 6·ln(1/6) + 8 + 2·4·5/1, by hand.
    expect(correctedAkaike(1, 6, 4)).toBeCloseTo(6 * Math.log(1 / 6) + 48, 12);
  });

  it("halves the weight with each difference of 2 ln 2", () => {
    const [a = 0, b = 0] = akaikeWeights([-10, -10 + 2 * Math.log(2)]);
    expect([a, b].map((w) => w.toFixed(12))).toEqual(["0.666666666667", "0.333333333333"]);
    expect(akaikeWeights([])).toEqual([]);
  });
});
