import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitRateModel } from "../../src/evaluate/rate-fit/fit-rate-model.ts";
import { briere1 } from "../../src/response/briere-1.ts";
import { RATE_MODELS } from "../../src/response/rate-models.ts";
import { INVENTED_RATES } from "../support/invented-rates.ts";
import { relativeError, thresholdsFromR, trialsOf } from "../support/r-thresholds.ts";
import { refusalOf } from "../support/refusal.ts";

const TEMPERATURES = [12, 14, 17, 20, 23, 26, 29, 31, 33, 35];
const rateModel = (id: string) => {
  const model = RATE_MODELS.find((one) => one.id === id);
  if (model === undefined) throw new Error(`there is no model ${id}`);
  return model;
};

describe("fitRateModel", () => {
  it.each(thresholdsFromR.fits)("$id: R's nls, parameters and standard errors", (set) => {
    const fit = fitRateModel(trialsOf(set), rateModel(set.model));
    expect(fit.converged).toBe(true);
    // Both searches stop when a step would move less than about 1e-8 of a standard error.
    for (const [name, value] of Object.entries(set.parameters))
      expect(relativeError(fit.parameters[name] ?? Number.NaN, value), name).toBeLessThan(1e-8);
    for (const [name, value] of Object.entries(set.standardErrors))
      expect(relativeError(fit.standardErrors?.[name] ?? Number.NaN, value), name).toBeLessThan(1e-8);
    expect(relativeError(fit.rss, set.rss)).toBeLessThan(1e-9);
    if (set.aicc === null) {
      expect(fit.aicc).toBeNull();
      return;
    }
    // R keeps the constant of the normal density, and the weights in it; ours leaves both out.
    const n = set.days.length;
    const constant = n * (Math.log(2 * Math.PI) + 1) - set.weight.reduce((sum, w) => sum + Math.log(w), 0);
    expect((fit.aicc ?? Number.NaN) + constant).toBeCloseTo(set.aicc, 8);
  });

  it.each(RATE_MODELS.map((model) => [model.id, model] as const))(
    "%s: gives back the invented parameters of exact rates",
    (id, model) => {
      const truth = INVENTED_RATES[id] ?? {};
      const trials = TEMPERATURES.map((temperature) => ({
        temperature,
        days: 1 / model.rate(temperature, truth),
      }));
      const fit = fitRateModel(trials, model);
      expect(fit.converged).toBe(true);
      for (const [name, value] of Object.entries(truth))
        expect(relativeError(fit.parameters[name] ?? Number.NaN, value), name).toBeLessThan(1e-9);
      expect(fit.aicc).toBeNull();
      expect(fit.notes.map(({ code }) => code)).toEqual(["no-information-criterion"]);
      expect(fit.notes[0]?.message).toContain("to rounding");
    },
  );

  it("gives back any exact Brière curve, scales with time, and ignores the order of trials", () => {
    const curve = fc.record({
      a: fc.double({ min: 2e-5, max: 4e-4, noNaN: true }),
      lower: fc.double({ min: 1, max: 11, noNaN: true }),
      upper: fc.double({ min: 35.5, max: 44, noNaN: true }),
    });
    fc.assert(
      fc.property(curve, (truth) => {
        const trials = TEMPERATURES.map((temperature) => ({
          temperature,
          days: 1 / briere1.rate(temperature, truth),
        }));
        const fit = fitRateModel(trials, briere1);
        expect(relativeError(fit.parameters.upper, truth.upper)).toBeLessThan(1e-8);
        expect(relativeError(fit.parameters.lower, truth.lower)).toBeLessThan(1e-8);
        const noisy = trials.map((trial, i) => ({
          ...trial,
          days: trial.days * (1 + 0.02 * Math.sin(7 * i)),
        }));
        const first = fitRateModel(noisy, briere1);
        const slow = fitRateModel(
          [...noisy].reverse().map((trial) => ({ ...trial, days: 24 * trial.days })),
          briere1,
        );
        expect(relativeError(slow.parameters.upper, first.parameters.upper)).toBeLessThan(1e-7);
        expect(relativeError(slow.parameters.a * 24, first.parameters.a)).toBeLessThan(1e-6);
        expect(relativeError(slow.rss * 24 ** 2, first.rss)).toBeLessThan(1e-9);
      }),
      { numRuns: 25 },
    );
  });

  it("gives the same fit every time, and from the caller's start", () => {
    const set = thresholdsFromR.fits[1];
    if (set === undefined) throw new Error("no set");
    const fit = fitRateModel(trialsOf(set), briere1);
    expect(fitRateModel(trialsOf(set), briere1)).toEqual(fit);
    const own = fitRateModel(trialsOf(set), briere1, { starts: [{ a: 1e-4, lower: 9, upper: 41 }] });
    expect(own.parameters.upper).toBeCloseTo(fit.parameters.upper, 6);
    expect(own.iterations).toBeLessThan(fit.iterations);
    expect(fit.residuals.reduce((sum, r) => sum + r * r, 0)).toBeCloseTo(fit.rss, 12);
  });

  it("says when no trial shows the fall", () => {
    const line = [14, 17, 20, 23, 26, 29].map((temperature) => ({
      temperature,
      days: 200 / (temperature - 10),
    }));
    expect(fitRateModel(line, briere1).notes[0]?.code).toBe("outside-tested-temperatures");
    const steep = [14, 17, 20, 23, 26, 29].map((temperature) => ({
      temperature,
      days: 400 * Math.exp(-0.15 * temperature),
    }));
    const fit = fitRateModel(steep, briere1);
    expect(fit.converged).toBe(true);
    expect(fit.standardErrors).toBeNull();
    expect(fit.notes[0]?.code).toBe("parameter-at-limit");
    expect(fit.notes[0]?.message).toContain("upper ended at the limit");
  });

  it("says when trials are as many as parameters, and too few for the criterion", () => {
    const trials = trialsOf({ temperature: [15, 25, 33], days: [60, 14, 11] });
    const fit = fitRateModel(trials, briere1);
    expect(fit).toMatchObject({ converged: true, standardErrors: null, aicc: null });
    expect(fit.notes.map(({ code }) => code)).toEqual(["few-trials", "no-information-criterion"]);
    const five = fitRateModel(
      trialsOf({ temperature: [15, 20, 25, 30, 33], days: [60, 24, 15, 11, 11.5] }),
      briere1,
    );
    expect(five.standardErrors).not.toBeNull();
    expect(five.notes.map(({ message }) => message)).toEqual([
      "There are too few trials for the corrected Akaike criterion: with 3 parameters and the variance it needs 6 or more, and there are 5.",
    ]);
  });

  it("says when it was stopped before it settled", () => {
    const set = thresholdsFromR.fits[1];
    if (set === undefined) throw new Error("no set");
    const fit = fitRateModel(trialsOf(set), briere1, {
      starts: [{ a: 1e-3, lower: 2, upper: 60 }],
      maxIterations: 2,
    });
    expect(fit.converged).toBe(false);
    expect(fit.notes[0]?.code).toBe("did-not-converge");
  });

  it("refuses what it cannot fit", () => {
    const two = trialsOf({ temperature: [15, 25, 25], days: [60, 14, 15] });
    expect(refusalOf(() => fitRateModel(two, briere1)).message).toBe(
      "the trials are at 2 different temperatures; briere-1 has 3 parameters and needs at least as many temperatures.",
    );
    const three = trialsOf({ temperature: [15, 25, 33], days: [60, 14, 11] });
    expect(refusalOf(() => fitRateModel(three, briere1, { starts: [] })).code).toBe("invalid-option");
    expect(
      refusalOf(() => fitRateModel(three, briere1, { starts: [{ a: 1, lower: 9, upper: 8 }] })).code,
    ).toBe("invalid-parameters");
    expect(refusalOf(() => fitRateModel(three, briere1, { maxIterations: Number.NaN })).code).toBe(
      "invalid-number",
    );
    expect(refusalOf(() => fitRateModel([...three, { temperature: 20, days: -1 }], briere1)).path).toEqual([
      "trials",
      3,
      "days",
    ]);
  });
});
