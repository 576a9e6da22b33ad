import { describe, expect, it } from "vitest";
import { accumulateDegreeDays } from "../../src/clock/accumulate.ts";
import { shiftedTemperatures } from "../../src/temperature/shift.ts";
import { city } from "../support/city.ts";
import { GRID_DAYS, JOB, streamDays } from "./scale-days.ts";
import { scaleMarkdown } from "./scale.ts";

describe("the report of scale", () => {
  it("streams the seasons that the library counts one by one", () => {
    const streamed = streamDays(1);
    expect(streamed.days).toBe(700 * 1461);
    expect(streamed.seasons).toBe(700 * 4);
    // The coldest cell decides whether all reach the amount.
    const cold = shiftedTemperatures(city("new-york"), -5);
    const reached = [2012, 2013, 2014, 2015].filter((year) => {
      const days = accumulateDegreeDays(cold, { ...JOB, from: `${year}-01-01`, to: `${year}-12-31` });
      return (days.at(-1)?.total ?? 0) >= JOB.amount;
    });
    expect(reached).toHaveLength(4);
    expect(streamed.reached).toBe(streamed.seasons);
  });

  it("extrapolates by the rule of three", () => {
    const thread = { days: 1e6, seasons: 1, reached: 1, seconds: 1, early: 1e8, late: 1e8 };
    const query = { seconds: 2, busy: 3.6, answer: 1 };
    const text = scaleMarkdown(
      { machine: "an invented machine", node: "v0", day: "2026-01-01", load: [0, 0] },
      [{ threads: [thread], seconds: 1, busy: 1, peak: 2e8 }],
      {
        days: 1e6,
        bytes: 4e6,
        engine: "v0",
        queries: [{ threads: 1, sum: query, reached: query }],
        peak: 1e9,
      },
    );
    expect(GRID_DAYS).toBeCloseTo(5.2706e9, -6);
    // 5270.6 times 1 s is 87.8 min; 5270.6 times 3.6 s of processors is 5.27 h.
    expect(text).toContain("| 87.8 min | 1.46 |");
    expect(text).toContain("| 2.9 h | 5.27 |");
    expect(text).toContain("| 4.00 | 21.1 GB |");
  });
});
