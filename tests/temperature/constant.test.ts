import { describe, expect, it } from "vitest";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { refusalOf } from "../support/refusal.ts";

describe("constantTemperature", () => {
  it("holds always unless it has a first or a last day", () => {
    expect(constantTemperature(24)).toEqual({ kind: "constant", temperature: 24, from: null, to: null });
    expect(constantTemperature(0, { to: "2026-05-01" })).toMatchObject({ from: null, to: "2026-05-01" });
  });

  it("may hold for one day", () => {
    const day = { from: "2026-05-01", to: "2026-05-01" };
    expect(constantTemperature(20, day)).toMatchObject(day);
  });

  it.each([
    [Number.NaN, {}, "invalid-number", "temperature is NaN"],
    [Infinity, {}, "invalid-number", "temperature is Infinity"],
    [20, { from: "2023-02-29" }, "invalid-day", 'from is "2023-02-29"'],
    [20, { to: "tomorrow" }, "invalid-day", 'to is "tomorrow"'],
    [20, { from: "2026-05-02", to: "2026-05-01" }, "invalid-option", "before from 2026-05-02"],
  ])("refuses %d with %j", (temperature, options, code, text) => {
    const refusal = refusalOf(() => constantTemperature(temperature, options));
    expect(refusal.message).toContain(text);
    expect(refusal.code).toBe(code);
  });
});
