import { describe, expect, it } from "vitest";
import { greatest, least } from "../../src/numeric/extremes.ts";
import { given, givenColumn, givenFunction, givenList } from "../../src/given.ts";
import * as core from "../../src/index.ts";
import { knownSeries } from "../../src/temperature/known-series.ts";
import { degreeDayText } from "../../src/write/index.ts";
import { inventedDays } from "../support/invented-season.ts";
import { refusalOf } from "../support/refusal.ts";

// Each of these once hung, filled the memory, overflowed the stack or came out as NaN.
describe("limits", () => {
  const days = inventedDays("2026-05-01", 30);
  const from = Date.parse("2026-05-02T00:00Z");
  const timeline = core.timelineOf(days, {
    method: "single-sine",
    zone: null,
    from,
    limits: { lower: 10, upper: 30 },
  });

  it("a rate too great to be reckoned with", () => {
    for (const rate of [1e308, 1e101, NaN, Infinity, -1])
      expect(refusalOf(() => core.developmentClock(timeline, () => rate)).code).toBe("invalid-number");
    expect(core.developmentClock(timeline, () => 1e100).total).toBeGreaterThan(2e101);
  });

  it("numbers whose squares overflow", () => {
    expect(refusalOf(() => core.degreeDays({ min: 0, max: 1e160 }, { lower: 10 })).code).toBe(
      "invalid-number",
    );
    expect(core.degreeDays({ min: 0, max: 1e100 }, { lower: 10 })).toBeGreaterThan(1e99);
    const wide = refusalOf(() =>
      core.degreeDaysEach(Float64Array.of(0), Float64Array.of(1e160), { lower: 10 }),
    );
    expect(wide.code).toBe("missing-temperature");
    expect(core.degreeDaysEach(Float64Array.of(0), Float64Array.of(1e100), { lower: 10 })[0]).toBeGreaterThan(
      1e99,
    );
    const trials = [1e308, 20, 25, 30, 32].map((temperature) => ({ temperature, days: 20 }));
    expect(refusalOf(() => core.compareRateModels(trials)).message).toContain(
      "trials.0.temperature is 1e+308",
    );
    expect(refusalOf(() => core.estimateThreshold([{ temperature: 20, days: 5e-324 }])).path).toEqual([
      "trials",
      0,
      "days",
    ]);
  });

  it("days outside the calendar", () => {
    for (const number of [NaN, 0.5, Infinity, 2_932_897, -719_163])
      expect(refusalOf(() => core.civilDay(number)).code).toBe("invalid-day");
    expect([core.civilDay(-719_162), core.civilDay(2_932_896)]).toEqual(["0001-01-01", "9999-12-31"]);
  });

  it("spans that would fill the memory", () => {
    const years = inventedDays("2021-01-01", 4 * 365 + 1);
    const normals = core.normalsOf(years);
    expect(refusalOf(() => core.normalTemperatures(normals, "0001-01-01", "9999-12-31")).message).toContain(
      "146097 at most",
    );
    for (const length of [0, 1.5, 36_526, 1e9, NaN])
      expect(
        refusalOf(() => core.weatherEnsemble({ observed: days, past: years, days: length })).path,
      ).toEqual(["days"]);
    const long = { length: 1e9 };
    expect(refusalOf(() => core.dailyTemperatures("2026-05-01", long, long)).path).toEqual(["min"]);
    expect(refusalOf(() => core.temperatureReadings(long, long)).path).toEqual(["at"]);
  });

  it("counts that are not whole any more", () => {
    expect(refusalOf(() => core.lifeTable([{ stage: "egg", entered: 1e308, died: 1 }])).message).toContain(
      "1e+308",
    );
    expect(refusalOf(() => core.logEntry({ stage: "egg", on: "2026-05-01", count: 1e16 })).path).toEqual([
      "count",
    ]);
  });

  it("tables longer than the stack", () => {
    const rows = Array.from({ length: 200_000 }, () => ({ day: "2026-05-01", degreeDays: 1, total: 1 }));
    expect(degreeDayText(rows).split("\n")).toHaveLength(200_001);
    expect([greatest(new Float64Array(300_000).fill(2)), least([3, 1, 2])]).toEqual([2, 1]);
    expect([greatest([]), least([]), greatest([1, NaN])]).toEqual([-Infinity, Infinity, NaN]);
  });

  it("scores without anything to compare with say so", () => {
    const run = { start: "2024-05-01", lead: 0, truth: 30, recordEnds: 200, forecast: [29, 30, 31] };
    expect(refusalOf(() => core.scoreHindcast([run])).message).toContain("no other year has a run at lead 0");
    expect(refusalOf(() => core.scoreHindcast([{ ...run, truth: null }])).message).toContain(
      "no run of these months",
    );
    expect(refusalOf(() => core.scoreHindcast([])).code).toBe("too-few-readings");
    const other = { ...run, start: "2023-05-01", truth: 32 };
    expect(core.scoreHindcast([run, other])[0]?.scored).toBe(2);
  });
});

describe("values of another kind", () => {
  it("are refused by the place that they stand in", () => {
    const messageOf = (act: () => void): string => refusalOf(act).message;
    expect(messageOf(() => given(null, ["options"], "an object"))).toBe(
      "options is null; it must be an object.",
    );
    expect(messageOf(() => given([], ["a", 1], "an object"))).toBe(
      "a.1 is a list of 0; it must be an object.",
    );
    expect(messageOf(() => given({ a: 1 }, ["x"], "a thing", "a", "b"))).toBe(
      "x is an object without b; it must be a thing.",
    );
    expect(messageOf(() => givenList("ab", ["x"]))).toBe('x is "ab"; it must be a list.');
    expect(messageOf(() => givenList([1, null], ["x"]))).toBe(
      "x.1 is null; no entry of the list may be missing or be a list.",
    );
    expect(messageOf(() => givenFunction(1, ["rate"]))).toBe("rate is 1; it must be a function.");
    expect(messageOf(() => givenColumn({ length: 2 }, ["x"]))).toContain("it must be a list of numbers");
    expect(messageOf(() => givenColumn([1, "2"], ["x"]))).toBe('x.1 is "2"; it must be a number.');
    expect(() => givenColumn([1, NaN], ["x"])).not.toThrow();
    for (const series of [
      null,
      {},
      { kind: "daily" },
      { kind: "toString" },
      { kind: "joined", parts: [null] },
    ])
      expect(refusalOf(() => knownSeries(series as never, ["series"])).code).toBe("invalid-option");
    expect(refusalOf(() => core.stageName("constructor" as never)).code).toBe("unknown-stage");
    expect(refusalOf(() => core.windIn(1, "toString" as never)).code).toBe("unknown-unit");
  });
});
