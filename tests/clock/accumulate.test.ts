import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { accumulateDegreeDays } from "../../src/clock/accumulate.ts";
import { readTemperatures } from "../../src/read/index.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import { startOfDay } from "../../src/time/zone.ts";
import { refusalOf, refusalParts } from "../support/refusal.ts";

const may = dailyTemperatures("2026-05-01", [8, 12, 2], [24, 30, 9]);

describe("accumulateDegreeDays", () => {
  it("adds up day by day from the biofix", () => {
    expect(accumulateDegreeDays(may, { lower: 10, from: "2026-05-02" })).toEqual([
      { day: "2026-05-02", degreeDays: 11, total: 11 },
      { day: "2026-05-03", degreeDays: 0, total: 11 },
    ]);
  });

  it("is the same whether a season is added up at once or in two parts", () => {
    const whole = accumulateDegreeDays(may, { lower: 10, method: "double-sine" });
    const first = accumulateDegreeDays(may, { lower: 10, method: "double-sine", to: "2026-05-01" });
    const second = accumulateDegreeDays(may, { lower: 10, method: "double-sine", from: "2026-05-02" });
    expect([...first, ...second].map((one) => one.degreeDays)).toEqual(whole.map((one) => one.degreeDays));
  });

  it.each([
    ["average", undefined, [1133.4, 1369.25, 1490.2, 1541.05]],
    ["single-sine", 31.1, [1199.716, 1435.227, 1557.634, 1611.238]],
    ["single-triangle", 31.1, [1178.002, 1413.505, 1536.915, 1588.773]],
    ["clamped-average", 30, [1260.65, 1493.65, 1610.65, 1667.5]],
  ] as const)(
    "comes to the sums computed elsewhere for four Seattle years, base 10 °C, %s",
    (method, upper, sums) => {
      // Derived from the same open data by another program; a regression check, not a published value.
      const text = readFileSync("fixtures/temperatures/seattle-2012-2015.csv", "utf8");
      const { series } = readTemperatures(text, { unit: "C" });
      sums.forEach((sum, i) => {
        const year = 2012 + i;
        const days = accumulateDegreeDays(series, {
          lower: 10,
          upper: upper ?? null,
          method,
          from: `${year}-01-01`,
          to: `${year}-12-31`,
        });
        expect(days).toHaveLength(year === 2012 ? 366 : 365);
        expect(days.at(-1)?.total).toBeCloseTo(sum, upper === 31.1 ? 3 : 2);
      });
    },
  );

  it("cuts readings and joined series at midnight", () => {
    const at = Array.from({ length: 49 }, (_, i) => startOfDay("2026-05-01", null) + i * 3_600_000);
    const readings = temperatureReadings(
      at,
      at.map((_, i) => 15 + (i >= 24 ? 5 : 0)),
      { clock: "local" },
    );
    const days = accumulateDegreeDays(readings, { lower: 10 });
    expect(days.map((one) => one.day)).toEqual(["2026-05-01", "2026-05-02"]);
    expect(days[1]?.degreeDays).toBeCloseTo(10, 12);
    const joined = joinTemperatures(readings, constantTemperature(12, { to: "2026-05-04" }));
    expect(
      accumulateDegreeDays(joined, { lower: 10, from: "2026-05-01" }).map((one) =>
        Number(one.degreeDays.toFixed(6)),
      ),
    ).toEqual([
      // The last of the first day's readings rises to 20 °C within its last hour.
      Number((5 + 2.5 / 24).toFixed(6)),
      10,
      2,
      2,
    ]);
  });

  it.each([
    [
      { from: "2026-04-30" },
      "start-outside-series",
      "from is 2026-04-30, but the temperatures run from 2026-05-01 to 2026-05-03",
    ],
    [{ to: "2026-05-04" }, "start-outside-series", "to is 2026-05-04"],
    [{ from: "2026-05-03", to: "2026-05-02" }, "invalid-option", "before from"],
  ])("refuses the span %j", (span, code, text) => {
    const refusal = refusalOf(() => accumulateDegreeDays(may, { lower: 10, ...span }));
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(text);
  });

  it("refuses a gap instead of counting it as cold, and a constant without an end", () => {
    const gap = dailyTemperatures("2026-05-01", [8, Number.NaN, Number.NaN, 2], [24, 30, 31, 9]);
    expect(refusalOf(() => accumulateDegreeDays(gap, { lower: 10 })).message).toContain(
      "2026-05-02 to 2026-05-03",
    );
    expect(accumulateDegreeDays(gap, { lower: 10, to: "2026-05-01" })).toHaveLength(1);
    expect(
      refusalOf(() => accumulateDegreeDays(constantTemperature(20), { lower: 10, from: "2026-05-01" }))
        .message,
    ).toContain("give to");
  });

  it("says where a refused series or span stood", () => {
    const options = { lower: 10 };
    expect(refusalParts(() => accumulateDegreeDays(JSON.parse("7"), options)).slice(0, 3)).toEqual([
      "invalid-option",
      "series",
      7,
    ]);
    expect(refusalParts(() => accumulateDegreeDays(may, JSON.parse("null")))).toEqual([
      "invalid-option",
      "options",
      null,
      "options is null; it must be an object of options.",
    ]);
    for (const field of ["from", "to"]) {
      const refusal = refusalOf(() => accumulateDegreeDays(may, { lower: 10, [field]: "soon" }));
      expect([refusal.code, refusal.path]).toEqual(["invalid-day", [field]]);
    }
    expect(refusalParts(() => accumulateDegreeDays(may, { lower: 10, to: "2026-05-04" }))).toEqual([
      "start-outside-series",
      "to",
      "2026-05-04",
      "to is 2026-05-04, but the temperatures run from 2026-05-01 to 2026-05-03; take a day within them.",
    ]);
    const back = { lower: 10, from: "2026-05-03", to: "2026-05-02" };
    expect(refusalParts(() => accumulateDegreeDays(may, back))).toEqual([
      "invalid-option",
      "to",
      "2026-05-02",
      "to is 2026-05-02, before from 2026-05-03; it must be the same day or later.",
    ]);
  });

  it("refuses the first gap within the span, and none beside it", () => {
    const hole = Number.NaN;
    const min = [8, hole, 5, hole, hole, 7, hole];
    const gaps = dailyTemperatures(
      "2026-05-01",
      min,
      min.map((one) => one + 10),
    );
    const at = (from: string, to: string) =>
      accumulateDegreeDays(gaps, { lower: 10, from: `2026-05-0${from}`, to: `2026-05-0${to}` });
    expect([at("1", "1"), at("3", "3"), at("6", "6")].map((days) => days.length)).toEqual([1, 1, 1]);
    expect(refusalParts(() => at("1", "2"))).toEqual([
      "missing-temperature",
      "2026-05-02",
      hole,
      "there is no temperature for 2026-05-02; fill the gap by a named policy or take another span.",
    ]);
    expect(refusalOf(() => at("3", "4")).path).toEqual(["2026-05-04"]);
    expect(refusalOf(() => at("5", "6")).message).toContain("2026-05-04 to 2026-05-05;");
    expect(refusalOf(() => at("6", "7")).path).toEqual(["2026-05-07"]);
  });

  it("takes the first and the last whole day of any series", () => {
    const held = constantTemperature(15, { from: "2026-05-03", to: "2026-05-04" });
    const days = (...args: Parameters<typeof accumulateDegreeDays>) =>
      accumulateDegreeDays(...args).map(({ day, degreeDays }) => [
        day.slice(8),
        Number(degreeDays.toFixed(9)),
      ]);
    expect(days(held, { lower: 10 })).toEqual([
      ["03", 5],
      ["04", 5],
    ]);
    const joined = joinTemperatures(dailyTemperatures("2026-05-01", [12, 12], [12, 12]), held);
    const all = [
      ["01", 2],
      ["02", 2],
      ["03", 5],
      ["04", 5],
    ];
    expect(days(joined, { lower: 10 })).toEqual(all);
    // A later part may begin earlier: it only fills what the ones before it leave open.
    const over = joinTemperatures(
      dailyTemperatures("2026-05-02", [12], [12]),
      constantTemperature(15, { from: "2026-05-01", to: "2026-05-03" }),
    );
    expect(days(over, { lower: 10, from: "2026-05-02" })[0]).toEqual(["02", 2]);
    const endless = joinTemperatures(
      dailyTemperatures("2026-05-01", [12], [12]),
      constantTemperature(15, { from: "2026-05-02" }),
    );
    expect(days(endless, { lower: 10, to: "2026-05-02" })).toEqual([
      ["01", 2],
      ["02", 5],
    ]);
    expect(refusalParts(() => accumulateDegreeDays(endless, { lower: 10 }))).toEqual([
      "invalid-option",
      "to",
      undefined,
      "a temperature held for ever has no last day; give to.",
    ]);
    expect(
      refusalParts(() => accumulateDegreeDays(constantTemperature(15), { lower: 10, to: "2026-05-02" })),
    ).toEqual([
      "invalid-option",
      "from",
      undefined,
      "a temperature held for ever has no first day; give from.",
    ]);
    expect(refusalOf(() => accumulateDegreeDays(held, { lower: 10, to: "2026-05-05" })).code).toBe(
      "start-outside-series",
    );
    expect(refusalOf(() => accumulateDegreeDays(held, { lower: 10, from: "x" })).path).toEqual(["from"]);
    expect(refusalOf(() => accumulateDegreeDays(held, { lower: 10, to: "x" })).path).toEqual(["to"]);
    const back = { lower: 10, from: "2026-05-04", to: "2026-05-03" };
    expect(refusalOf(() => accumulateDegreeDays(held, back)).message).toContain("before from 2026-05-04");
    expect(days(held, { lower: 10, from: "2026-05-04", to: "2026-05-04" })).toEqual([["04", 5]]);
  });

  it("begins with the first whole day of readings, by their own clock", () => {
    const hours = (from: number, count: number) =>
      Array.from({ length: count }, (_, i) => from + i * 3_600_000);
    const midnight = startOfDay("2026-05-01", null);
    const local = (begin: number) => {
      const at = hours(begin, 50);
      return temperatureReadings(
        at,
        at.map(() => 15),
        { clock: "local" },
      );
    };
    const first = (...args: Parameters<typeof accumulateDegreeDays>) => accumulateDegreeDays(...args)[0]?.day;
    expect(first(local(midnight), { lower: 10 })).toBe("2026-05-01");
    expect(first(local(midnight + 3_600_000), { lower: 10 })).toBe("2026-05-02");
    // A clock on the wall needs no zone, and a zone does not move it.
    expect(first(local(midnight), { lower: 10, zone: "America/New_York" })).toBe("2026-05-01");
    const at = hours(startOfDay("2026-05-01", "America/New_York"), 50);
    const instants = temperatureReadings(
      at,
      at.map(() => 15),
      { clock: "utc" },
    );
    expect(first(instants, { lower: 10, zone: "America/New_York" })).toBe("2026-05-01");
    expect(first(instants, { lower: 10, zone: "Europe/Berlin" })).toBe("2026-05-02");
  });

  it("refuses a gap in readings where it lies within the span", () => {
    const midnight = startOfDay("2026-05-01", null);
    const at = [...Array(25).keys(), 60, 61, 84, 108].map((hour) => midnight + hour * 3_600_000);
    const readings = temperatureReadings(
      at,
      at.map(() => 15),
      { clock: "local", longestGapHours: 24 },
    );
    const until = (to?: string) =>
      accumulateDegreeDays(readings, { lower: 10, ...(to === undefined ? {} : { to }) });
    expect(until("2026-05-01").map(({ degreeDays }) => degreeDays)).toEqual([5]);
    for (const to of ["2026-05-02", "2026-05-04"]) {
      expect(refusalParts(() => until(to))).toEqual([
        "missing-temperature",
        "to",
        to,
        "there is a gap in the temperatures after 2026-05-01; fill it by a named policy, or name that day as the last.",
      ]);
    }
    expect(refusalOf(() => until()).path).toEqual(["to"]);
  });
});
