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
    fc.option(
      fc.tuple(
        fc.integer({ min: -10, max: 20 }),
        fc.integer({ min: 0, max: 20 }),
        fc.integer({ min: 0, max: 9 }),
      ),
      { nil: null },
    ),
    {
      minLength: 1,
      maxLength: 40,
    },
  )
  // Of some days one of the two was read.
  .filter((days) => days.some((one) => one !== null && one[2] > 1))
  .map((days) =>
    dailyTemperatures(
      "2026-05-01",
      days.map((one) => (one === null || one[2] === 0 ? no : one[0])),
      days.map((one) => (one === null || one[2] === 1 ? no : one[0] + one[1])),
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
    // By hand: minima 10 to 16 and maxima 20 to 32, in three steps; a maximum of 25 was read.
    expect([...filled.min]).toEqual([no, 10, 12, 14, 16, 8, no]);
    expect([...filled.max]).toEqual([20, 20, 24, 25, 32, no, 30]);
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

  it.each([
    // A frost that was read stays; by hand, the maximum half way from 20 to 22.
    ["a minimum", [8, -3, 10], [20, no, 22], [8, -3, 10], [20, 21, 22]],
    ["a maximum", [8, no, 10], [20, 35, 22], [8, 9, 10], [20, 35, 22]],
    ["a minimum above the line", [8, 25, 10], [20, no, 22], [8, 25, 10], [20, 25, 22]],
    ["a maximum below the line", [8, no, 10], [20, 5, 22], [8, 5, 10], [20, 5, 22]],
    [
      "a minimum on the way",
      [8, no, 2, no, 12],
      [20, no, no, no, 28],
      [8, 9, 2, 11, 12],
      [20, 22, 24, 26, 28],
    ],
  ])("keeps %s that was read", (_, min, max, lows, highs) => {
    const filled = fillGaps(dailyTemperatures("2026-05-01", min, max), { fill: "interpolate", upToDays: 3 });
    expect([[...filled.min], [...filled.max]]).toEqual([lows, highs]);
    expect(filled.origin.slice(1, -1).every((one) => one === "filled")).toBe(true);
  });

  it("keeps readings beside normals", () => {
    const half = dailyTemperatures("2026-05-01", [-3, no, 30, 8], [no, 0, no, 20]);
    const filled = fillGaps(half, { fill: "normals", normals });
    // Slots 120 to 122: minima 1.2 to 1.22, maxima 21.2 to 21.22.
    expect([...filled.min]).toEqual([-3, 0, 30, 8]);
    expect([...filled.max]).toEqual([21.2, 0, 30, 20]);
  });

  it.each([undefined, null, {}])("refuses normals that are %j", (none) => {
    const policy = { fill: "normals", normals: none as never } as const;
    expect(refusalOf(() => fillGaps(series, policy)).path).toEqual(["policy", "normals"]);
  });

  it("leaves a gap that is longer than allowed, and the series it was given", () => {
    const filled = fillGaps(series, { fill: "interpolate", upToDays: 1 });
    expect(gapsOf(filled)).toEqual(gapsOf(series));
    expect(series.min[2]).toBeNaN();
  });

  it("takes normals for any gap, at the ends too", () => {
    const filled = fillGaps(series, { fill: "normals", normals });
    expect(gapsOf(filled)).toEqual([]);
    // 3 May is day 123 of 2026, slot 122; on 1 May, slot 120, a maximum of 20 was read.
    expect([filled.min[0], filled.max[0]]).toEqual([1.2, 20]);
    expect([filled.min[2], filled.max[2]]).toEqual([1.22, 21.22]);
    expect(filled.origin.filter((one) => one === "filled")).toHaveLength(5);
  });

  it("never touches a day with both readings and never puts a minimum above its maximum", () => {
    fc.assert(
      fc.property(holed, fc.integer({ min: 1, max: 10 }), (one, upToDays) => {
        const filled = fillGaps(one, { fill: "interpolate", upToDays });
        for (let i = 0; i < one.min.length; i++) {
          if (!isMissing(one, i)) expect([filled.min[i], filled.max[i]]).toEqual([one.min[i], one.max[i]]);
          else if (!isMissing(filled, i)) expect(filled.origin[i]).toBe("filled");
          for (const [read, now] of [
            [one.min[i], filled.min[i]],
            [one.max[i], filled.max[i]],
          ])
            if (!Number.isNaN(read)) expect(now).toBe(read);
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
