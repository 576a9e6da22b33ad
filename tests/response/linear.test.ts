import { describe, expect, it } from "vitest";
import { CUTOFFS, type Thresholds, linearRate, linearResponse } from "../../src/response/linear.ts";
import { refusalParts } from "../support/refusal.ts";

/** Thresholds as a caller without types may write them. */
function loose(json: string): Thresholds {
  return JSON.parse(json);
}

describe("linearResponse", () => {
  it("turns each cutoff into weights", () => {
    const both = { lower: 10, upper: 30 };
    const same = { lower: 10, upper: 30, zero: Infinity, atUpper: -1, atZero: 0, stop: 0 };
    expect(linearResponse(both)).toEqual({ ...same, cutoff: "horizontal" });
    expect(linearResponse({ ...both, cutoff: "none" })).toEqual({ ...same, atUpper: 0, cutoff: "none" });
    expect(linearResponse({ ...both, cutoff: "intermediate" })).toEqual({
      ...same,
      zero: 50,
      atUpper: -2,
      atZero: 1,
      cutoff: "intermediate",
    });
    expect(linearResponse({ ...both, cutoff: "vertical" })).toEqual({
      ...same,
      stop: 20,
      cutoff: "vertical",
    });
  });

  it("has no cutoff without an upper threshold", () => {
    const open = {
      lower: 10,
      upper: Infinity,
      zero: Infinity,
      atUpper: 0,
      atZero: 0,
      stop: 0,
      cutoff: "none",
    };
    expect(linearResponse({ lower: 10 })).toEqual(open);
    expect(linearResponse({ lower: 10, upper: null })).toEqual(open);
    expect(linearResponse({ lower: 10, cutoff: "none" })).toEqual(open);
  });

  it("says what is wrong with thresholds", () => {
    expect(refusalParts(() => linearResponse(loose("null")))).toEqual([
      "invalid-option",
      "thresholds",
      null,
      "thresholds is null; it must be an object with lower and, where there is one, upper.",
    ]);
    expect(refusalParts(() => linearResponse({ lower: Number.NaN }))).toEqual([
      "invalid-number",
      "lower",
      Number.NaN,
      "lower is NaN; it must be a temperature.",
    ]);
    expect(refusalParts(() => linearResponse({ lower: 10, upper: Infinity }))).toEqual([
      "invalid-number",
      "upper",
      Infinity,
      "upper is Infinity; it must be a temperature.",
    ]);
    for (const upper of [10, 9]) {
      expect(refusalParts(() => linearResponse({ lower: 10, upper }))).toEqual([
        "invalid-thresholds",
        "lower",
        10,
        `the lower threshold (10) must be below the upper threshold (${upper}).`,
      ]);
    }
  });

  it("refuses a cutoff that has nothing to cut, and one that is none", () => {
    for (const cutoff of CUTOFFS.filter((one) => one !== "none")) {
      expect(refusalParts(() => linearResponse({ lower: 10, cutoff }))).toEqual([
        "invalid-thresholds",
        "upper",
        null,
        `the ${cutoff} cutoff needs an upper threshold; give upper, or leave the cutoff out.`,
      ]);
    }
    for (const upper of ["", ', "upper": 30']) {
      const call = () => linearResponse(loose(`{ "lower": 10${upper}, "cutoff": "sideways" }`));
      expect(refusalParts(call)).toEqual([
        "invalid-thresholds",
        "cutoff",
        "sideways",
        'cutoff is "sideways"; it must be one of none, horizontal, intermediate, vertical.',
      ]);
    }
  });
});

describe("linearRate", () => {
  it.each([
    ["none", [0, 0, 1, 20, 25, 40, 41]],
    ["horizontal", [0, 0, 1, 20, 20, 20, 20]],
    ["intermediate", [0, 0, 1, 20, 15, 0, 0]],
    ["vertical", [0, 0, 1, 20, 0, 0, 0]],
  ] as const)("goes with a %s cutoff as its name says", (cutoff, rates) => {
    const response = linearResponse({ lower: 10, upper: 30, cutoff });
    expect([9, 10, 11, 30, 35, 50, 51].map((temperature) => linearRate(response, temperature))).toEqual(
      rates,
    );
  });

  it("rises for ever without an upper threshold", () => {
    const response = linearResponse({ lower: 10 });
    expect([10, 10.5, 1000].map((temperature) => linearRate(response, temperature))).toEqual([0, 0.5, 990]);
  });
});
