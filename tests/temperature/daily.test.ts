import { describe, expect, it } from "vitest";
import { dailyTemperatures, lastDay } from "../../src/temperature/daily.ts";
import { refusalOf } from "../support/refusal.ts";

describe("dailyTemperatures", () => {
  it("keeps one slot a day, with NaN for a missing reading", () => {
    const series = dailyTemperatures("2026-02-27", [1, Number.NaN, 3], [9, 8, Number.NaN]);
    expect([...series.min]).toEqual([1, Number.NaN, 3]);
    expect([...series.max]).toEqual([9, 8, Number.NaN]);
    expect(series.origin).toEqual(["observed", "observed", "observed"]);
    expect(lastDay(series)).toBe("2026-03-01");
  });

  it("does not change when the arrays it came from do", () => {
    const min = [1, 2];
    const series = dailyTemperatures("2026-05-01", min, [9, 9]);
    min[0] = 100;
    expect(series.min[0]).toBe(1);
  });

  it("takes one origin for all days or one for each", () => {
    expect(dailyTemperatures("2026-05-01", [1, 2], [3, 4], "forecast").origin).toEqual([
      "forecast",
      "forecast",
    ]);
    expect(dailyTemperatures("2026-05-01", [1, 2], [3, 4], ["observed", "filled"]).origin[1]).toBe("filled");
  });

  it("takes 0 °C and a day whose minimum is its maximum", () => {
    expect(dailyTemperatures("2026-05-01", [0], [0]).max[0]).toBe(0);
  });

  it.each([
    ["2023-02-29", [1], [2], "invalid-day", 'start is "2023-02-29", which does not exist'],
    ["5/1/2026", [1], [2], "invalid-day", "YYYY-MM-DD"],
    ["2026-05-01", [], [], "no-temperatures", "no day has both"],
    ["2026-05-01", [Number.NaN, 4], [9, Number.NaN], "no-temperatures", "no day has both"],
    ["2026-05-01", [1, 2], [3], "length-mismatch", "2 minima, 1 maxima and 2 origins"],
    ["2026-05-01", [1, 20], [9, 10], "min-above-max", "on 2026-05-02 the minimum 20 is above the maximum 10"],
    ["2026-05-01", [1, -Infinity], [9, 10], "invalid-number", "min on 2026-05-02 is -Infinity"],
    ["2026-05-01", [1], [Infinity], "invalid-number", "max on 2026-05-01 is Infinity"],
  ])("refuses %s with %j and %j", (start, min, max, code, text) => {
    const refusal = refusalOf(() => dailyTemperatures(start, min, max));
    expect(refusal.message).toContain(text);
    expect(refusal.code).toBe(code);
  });

  it("refuses a list of origins of another length", () => {
    expect(refusalOf(() => dailyTemperatures("2026-05-01", [1, 2], [3, 4], ["filled"])).code).toBe(
      "length-mismatch",
    );
  });

  it("names the day of a bad value in its path", () => {
    expect(refusalOf(() => dailyTemperatures("2026-12-31", [1, 5], [2, 4])).path).toEqual([
      "2027-01-01",
      "min",
    ]);
  });
});
