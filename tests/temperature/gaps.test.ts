import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { fillGaps, gapsOf, isMissing } from "../../src/temperature/gaps.ts";
import { refusalOf } from "../support/refusal.ts";

const no = Number.NaN;
const series = dailyTemperatures("2026-05-01", [no, 10, no, no, 16, 8, no], [20, 20, no, 25, 32, no, 30]);

const normals = {
  min: Array.from({ length: 366 }, (_, i) => i / 100),
  max: Array.from({ length: 366 }, (_, i) => 20 + i / 100),
  daysUsed: 366,
};

const holed = fc
  .array(
    fc.option(fc.tuple(fc.integer({ min: -10, max: 20 }), fc.integer({ min: 0, max: 20 })), { nil: null }),
    {
      minLength: 1,
      maxLength: 40,
    },
  )
  .filter((days) => days.some((one) => one !== null))
  .map((days) =>
    dailyTemperatures(
      "2026-05-01",
      days.map((one) => one?.[0] ?? no),
      days.map((one) => (one === null ? no : one[0] + one[1])),
    ),
  );

describe("gapsOf", () => {
  it("finds runs of days that lack one of the two, at both ends too", () => {
    expect(gapsOf(series)).toEqual([
      { from: "2026-05-01", to: "2026-05-01", days: 1 },
      { from: "2026-05-03", to: "2026-05-04", days: 2 },
      { from: "2026-05-06", to: "2026-05-07", days: 2 },
    ]);
  });

  it("is empty for a whole series", () => {
    expect(gapsOf(dailyTemperatures("2026-05-01", [1, 2], [3, 4]))).toEqual([]);
  });

  it("counts every missing day once", () => {
    fc.assert(
      fc.property(holed, (one) => {
        const missing = Array.from(one.min, (_, i) => isMissing(one, i)).filter(Boolean).length;
        expect(gapsOf(one).reduce((sum, { days }) => sum + days, 0)).toBe(missing);
      }),
    );
  });
});

describe("fillGaps", () => {
  it("runs straight lines between the days before and after, and marks the days", () => {
    const filled = fillGaps(series, { fill: "interpolate", upToDays: 2 });
    // By hand: minima 10 to 16 and maxima 20 to 32, in three steps.
    expect([...filled.min]).toEqual([no, 10, 12, 14, 16, 8, no]);
    expect([...filled.max]).toEqual([20, 20, 24, 28, 32, no, 30]);
    expect(filled.origin).toEqual([
      "observed",
      "observed",
      "filled",
      "filled",
      "observed",
      "observed",
      "observed",
    ]);
  });

  it("leaves a gap that is longer than allowed, and the series it was given", () => {
    const filled = fillGaps(series, { fill: "interpolate", upToDays: 1 });
    expect(gapsOf(filled)).toEqual(gapsOf(series));
    expect(series.min[2]).toBeNaN();
  });

  it("takes normals for any gap, at the ends too", () => {
    const filled = fillGaps(series, { fill: "normals", normals });
    expect(gapsOf(filled)).toEqual([]);
    // 1 May is day 121 of 2026, slot 120.
    expect([filled.min[0], filled.max[0]]).toEqual([1.2, 21.2]);
    expect(filled.origin.filter((one) => one === "filled")).toHaveLength(5);
  });

  it("never touches a day with both readings and never puts a minimum above its maximum", () => {
    fc.assert(
      fc.property(holed, fc.integer({ min: 1, max: 10 }), (one, upToDays) => {
        const filled = fillGaps(one, { fill: "interpolate", upToDays });
        for (let i = 0; i < one.min.length; i++) {
          if (!isMissing(one, i)) expect([filled.min[i], filled.max[i]]).toEqual([one.min[i], one.max[i]]);
          else if (!isMissing(filled, i)) expect(filled.origin[i]).toBe("filled");
        }
        const long = gapsOf(one).filter(
          ({ days, from }, k, all) =>
            days > upToDays ||
            from === one.start ||
            (k === all.length - 1 && isMissing(one, one.min.length - 1)),
        );
        expect(gapsOf(filled)).toEqual(long);
      }),
    );
  });

  it.each([0, -3, 1.5, Number.NaN, Infinity])("refuses to fill up to %d days", (upToDays) => {
    const refusal = refusalOf(() => fillGaps(series, { fill: "interpolate", upToDays }));
    expect([refusal.code, refusal.message]).toEqual([
      "invalid-option",
      `upToDays is ${upToDays}; it must be a whole number of days from 1.`,
    ]);
  });

  it("refuses a policy that it does not know", () => {
    const wrong = JSON.parse('{"fill":"interpolat","upToDays":3}');
    expect(refusalOf(() => fillGaps(series, wrong)).message).toBe(
      'fill is "interpolat"; it must be "interpolate" or "normals".',
    );
  });
});
