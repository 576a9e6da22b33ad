import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { METHODS } from "../../src/diurnal/method.ts";
import { type MethodRow, compareMethods } from "../../src/evaluate/methods/compare-methods.ts";
import { CUTOFFS } from "../../src/response/linear.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import { startOfDay } from "../../src/time/zone.ts";
import { day, limits } from "../support/arbitraries.ts";
import { refusalOf } from "../support/refusal.ts";

const HOUR = 3_600_000;
const may = dailyTemperatures("2026-05-01", [8, 12, 2], [24, 30, 9]);
const AT = { zone: "America/New_York", place: { latitude: 40.7, longitude: -74 } };

function row(rows: readonly MethodRow[], method: string, cutoff: string): MethodRow {
  const found = rows.find((one) => one.method === method && one.cutoff === cutoff);
  if (found === undefined) throw new Error(`no row for ${method} with ${cutoff}`);
  return found;
}

/** A logger on a clock of its own, a reading every hour from midnight to midnight. */
function logger(hourly: readonly number[]) {
  const from = startOfDay("2026-05-01", null);
  return temperatureReadings(
    hourly.map((_, i) => from + i * HOUR),
    hourly,
    { clock: "local" },
  );
}

describe("compareMethods", () => {
  it("gives the closed form of each method and cutoff", () => {
    fc.assert(
      fc.property(fc.array(day, { minLength: 1, maxLength: 6 }), limits, (list, { lower, upper }) => {
        const series = dailyTemperatures(
          "2026-05-01",
          list.map((one) => one.min),
          list.map((one) => one.max),
        );
        const { rows } = compareMethods(series, { lower, upper });
        for (const { method, cutoff, degreeDays: sum } of rows) {
          const known = METHODS.find((one) => one === method);
          // The double methods' days run from 03:00 to 03:00, so their sums over midnights differ at the ends.
          if (known === undefined || known.startsWith("double-")) continue;
          const days = list.map((one) => degreeDays(one, { lower, upper, cutoff, method: known }));
          expect(sum).toBeCloseTo(
            days.reduce((a, b) => a + b, 0),
            7,
          );
        }
      }),
    );
  });

  it("has a row for each method and cutoff, one for those that clamp, and those of the sun with a place", () => {
    const plain = compareMethods(may, { lower: 10, upper: 28 });
    expect(plain.rows).toHaveLength(5 * 4 + 2);
    expect(compareMethods(may, { lower: 10 }).rows).toHaveLength(7);
    const placed = compareMethods(may, { lower: 10, upper: 28 }, AT);
    expect(placed.rows).toHaveLength(7 * 4 + 2);
    expect(placed.notes.map(({ code }) => code)).toEqual(["common-practice", "constant-from-memory"]);
    // A place without a zone cannot be used, and is not by default.
    expect(compareMethods(may, { lower: 10 }, { place: AT.place }).rows).toHaveLength(7);
    const chosen = compareMethods(may, { lower: 10, upper: 28 }, { methods: ["average"], cutoffs: ["none"] });
    expect(chosen.rows.map(({ method, cutoff }) => [method, cutoff])).toEqual([["average", "none"]]);
  });

  it("compares with the single sine and the cutoff of the thresholds", () => {
    const { reference, rows } = compareMethods(may, { lower: 10, upper: 28 });
    expect([reference.method, reference.cutoff]).toEqual(["single-sine", "horizontal"]);
    expect(row(rows, "single-sine", "horizontal").differencePercent).toBe(0);
    const none = row(rows, "single-sine", "none");
    expect(none.differencePercent).toBeCloseTo((none.degreeDays / reference.degreeDays - 1) * 100, 12);
    expect(compareMethods(may, { lower: 10, upper: 28, cutoff: "vertical" }).reference.cutoff).toBe(
      "vertical",
    );
  });

  it("orders the cutoffs: horizontal is never above none, intermediate and vertical never above horizontal", () => {
    fc.assert(
      fc.property(fc.array(day, { minLength: 1, maxLength: 5 }), limits, (list, span) => {
        const series = dailyTemperatures(
          "2026-06-01",
          list.map((one) => one.min),
          list.map((one) => one.max),
        );
        const { rows } = compareMethods(series, span, AT);
        for (const { method } of rows.filter(({ cutoff }) => cutoff === "vertical")) {
          const [none, horizontal, intermediate, vertical] = CUTOFFS.map(
            (cutoff) => row(rows, method, cutoff).degreeDays,
          );
          expect(horizontal).toBeLessThanOrEqual((none ?? 0) + 1e-9);
          expect(intermediate).toBeLessThanOrEqual((horizontal ?? 0) + 1e-9);
          expect(vertical).toBeLessThanOrEqual((horizontal ?? 0) + 1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("says when an amount is reached, and why it is not", () => {
    const { rows, reference, amount } = compareMethods(may, { lower: 10 }, { amount: 17.1 });
    expect([amount, reference.reachedAt?.slice(0, 10)]).toEqual([17.1, "2026-05-02"]);
    expect(row(rows, "average", "none")).toMatchObject({
      reachedAt: null,
      differenceDays: null,
      reason: "By the end of 2026-05-03 there are 17.0 of the 17.1 degree-days.",
    });
    const clamped = row(rows, "clamped-average", "none");
    // The clamped average is flat: 7 degree-days on the first day, 11 on the second.
    const reached = startOfDay("2026-05-02", null) + (10.1 / 11) * 24 * HOUR;
    expect(Date.parse(`${clamped.reachedAt}Z`) / 1000).toBe(Math.round(reached / 1000));
    expect(row(rows, "single-sine", "none").differenceDays).toBe(0);
    expect(clamped.reason).toBeNull();
  });

  it("counts from the first day asked for to the last", () => {
    const { rows, from, to } = compareMethods(may, { lower: 10 }, { from: "2026-05-02", to: "2026-05-02" });
    expect([from, to]).toEqual(["2026-05-02", "2026-05-02"]);
    expect(row(rows, "average", "none").degreeDays).toBeCloseTo(11, 9);
  });

  it("takes a logger's readings as the reference and shows the methods its extremes only", () => {
    // 10 °C all day but for one hour's peak: any curve between the extremes has far too much.
    const hourly = Array.from({ length: 49 }, (_, i) => (i % 24 === 12 ? 20 : 10));
    const { reference, rows, from, to } = compareMethods(logger(hourly), { lower: 10 });
    expect([reference.method, from, to]).toEqual(["measured", "2026-05-01", "2026-05-02"]);
    // Two triangles of two hours and 10 °C.
    expect(reference.degreeDays).toBeCloseTo((2 * 10) / 24, 12);
    expect(row(rows, "measured", "none").differencePercent).toBe(0);
    expect(row(rows, "single-triangle", "none").degreeDays).toBeCloseTo(10, 9);
    expect(row(rows, "single-triangle", "none").differencePercent).toBeCloseTo(1100, 6);
  });

  it("leaves out the days on which a logger began and ended", () => {
    const hourly = Array.from({ length: 60 }, (_, i) => 15 + (i % 7));
    const late = temperatureReadings(
      hourly.map((_, i) => startOfDay("2026-05-01", null) + (i + 5) * HOUR),
      hourly,
      { clock: "local" },
    );
    const { from, to } = compareMethods(late, { lower: 10 });
    expect([from, to]).toEqual(["2026-05-02", "2026-05-02"]);
  });

  it("ends before a gap and says so, and refuses to cross one", () => {
    const holes = dailyTemperatures("2026-05-01", [8, 9, Number.NaN, 2], [24, 25, Number.NaN, 9]);
    const { to, notes } = compareMethods(holes, { lower: 10 });
    expect([to, notes.map(({ code }) => code)]).toEqual(["2026-05-02", ["missing-days"]]);
    expect(refusalOf(() => compareMethods(holes, { lower: 10 }, { to: "2026-05-04" })).code).toBe(
      "missing-temperature",
    );
  });

  it("has no percentage where there is no heat", () => {
    const { rows } = compareMethods(dailyTemperatures("2026-01-01", [-8], [2]), { lower: 10 });
    expect(rows.every(({ differencePercent }) => differencePercent === null)).toBe(true);
  });

  it("takes joined temperatures and held ones", () => {
    const joined = joinTemperatures(may, constantTemperature(20));
    const { rows, to } = compareMethods(joined, { lower: 10 }, { to: "2026-05-05" });
    expect([row(rows, "average", "none").degreeDays, to]).toEqual([17 + 20, "2026-05-05"]);
    const before = compareMethods(joined, { lower: 10 }, { from: "2026-04-30", to: "2026-05-01" });
    expect(row(before.rows, "average", "none").degreeDays).toBeCloseTo(10 + 6, 9);
    const held = compareMethods(
      constantTemperature(20),
      { lower: 10 },
      { from: "2026-05-01", to: "2026-05-03" },
    );
    expect(held.rows.every(({ degreeDays: sum }) => Math.abs(sum - 30) < 1e-9)).toBe(true);
    expect(refusalOf(() => compareMethods(constantTemperature(20), { lower: 10 })).message).toContain(
      "give from",
    );
    expect(refusalOf(() => compareMethods(joined, { lower: 10 })).message).toContain("give to");
  });

  it("is plain data", () => {
    const result = compareMethods(may, { lower: 10, upper: 28 }, { ...AT, amount: 12 });
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
  });

  it.each([
    [{ from: "2026-04-30" }, "start-outside-series"],
    [{ to: "2026-05-04" }, "start-outside-series"],
    [{ from: "2026-05-03", to: "2026-05-02" }, "invalid-option"],
    [{ methods: ["sunrise-sine" as const], zone: AT.zone }, "place-needed"],
    [{ methods: ["sunrise-sine" as const], place: AT.place }, "zone-needed"],
    [{ methods: ["moonrise" as "average"] }, "invalid-method"],
    [{ amount: Number.NaN }, "invalid-number"],
  ])("refuses %j", (options, code) => {
    expect(refusalOf(() => compareMethods(may, { lower: 10 }, options)).code).toBe(code);
  });
});
