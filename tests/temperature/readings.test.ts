import { describe, expect, it } from "vitest";
import { LONGEST_GAP_HOURS, temperatureReadings } from "../../src/temperature/readings.ts";
import { refusalOf } from "../support/refusal.ts";

const HOUR = 3_600_000;

describe("temperatureReadings", () => {
  it("counts in UTC, joins up to six hours and calls readings observed unless told otherwise", () => {
    const series = temperatureReadings([0, HOUR], [10, 12]);
    expect(series).toMatchObject({ kind: "readings", clock: "utc", longestGapHours: 6, origin: "observed" });
    expect(LONGEST_GAP_HOURS).toBe(6);
  });

  it("keeps what it is told", () => {
    const options = { clock: "local", longestGapHours: 1.5, origin: "forecast" } as const;
    expect(temperatureReadings([0, HOUR], [10, 12], options)).toMatchObject(options);
  });

  it("takes times before 1970 and temperatures of 0", () => {
    expect([...temperatureReadings([-HOUR, 0], [0, -0.5]).at]).toEqual([-HOUR, 0]);
  });

  it.each([
    [[], [], "too-few-readings", "there are no readings"],
    [[0], [10], "too-few-readings", "there is one reading"],
    [[0, 1], [10], "length-mismatch", "2 times and 1 temperatures"],
    [[0, 0], [10, 11], "conflicting-readings", "at.1 is not after the reading before it"],
    [[5, 4], [10, 11], "conflicting-readings", "times must increase"],
    [[0, Number.NaN], [10, 11], "invalid-number", "at.1 is NaN"],
    [[0, Infinity], [10, 11], "invalid-number", "at.1 is Infinity"],
    [[0, 1], [Number.NaN, 11], "invalid-number", "temperature.0 is NaN"],
    [[0, 1], [10, -Infinity], "invalid-number", "temperature.1 is -Infinity"],
  ])("refuses times %j with %j", (at, temperature, code, text) => {
    const refusal = refusalOf(() => temperatureReadings(at, temperature));
    expect(refusal.message).toContain(text);
    expect(refusal.code).toBe(code);
  });

  it.each([0, -1, Number.NaN])("refuses %d hours as the longest gap", (longestGapHours) => {
    const refusal = refusalOf(() => temperatureReadings([0, 1], [1, 2], { longestGapHours }));
    expect([refusal.code, refusal.message]).toEqual([
      "invalid-option",
      `longestGapHours is ${longestGapHours}; it must be above 0.`,
    ]);
  });
});
