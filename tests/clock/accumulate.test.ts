import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { accumulateDegreeDays } from "../../src/clock/accumulate.ts";
import { readTemperatures } from "../../src/read/index.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import { startOfDay } from "../../src/time/zone.ts";
import { refusalOf } from "../support/refusal.ts";

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
});
