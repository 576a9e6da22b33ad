// @vitest-environment jsdom
import * as Plot from "@observablehq/plot";
import { describe, expect, test } from "vitest";
import { accumulateDegreeDays } from "../../src/clock/accumulate.ts";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { METHODS } from "../../src/diurnal/method.ts";
import {
  addingUpFigure,
  curveFigure,
  curveRows,
  describeAddingUp,
  describeCurve,
} from "../../src/plot/index.ts";
import { CUTOFFS } from "../../src/response/linear.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { refusalOf } from "../support/refusal.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";

const DAY = "2026-05-01";
const span = { from: DAY, to: DAY };
const hot = dailyTemperatures(DAY, [12], [36]);
const days = dailyTemperatures(DAY, [8, 12, 2], [24, 30, 9]);

/** The area under what counts, by trapezoids. */
function area(values: readonly number[]): number {
  return (
    values.slice(1).reduce((sum, value, i) => sum + (value + (values[i] ?? 0)) / 2, 0) / (values.length - 1)
  );
}

describe("curveRows", () => {
  test.each(METHODS.flatMap((method) => CUTOFFS.map((cutoff) => [method, cutoff] as const)))(
    "covers with %s and the cutoff %s the area that degreeDays gives",
    (method, cutoff) => {
      const thresholds = { lower: 15, upper: 28, cutoff };
      const rows = curveRows(hot, { ...span, thresholds, method, perHour: 60 });
      const exact = degreeDays({ min: 12, max: 36 }, { ...thresholds, method });
      // A vertical cutoff jumps within a step of a minute, which is worth up to 13 degrees of 1/1440 day.
      expect(Math.abs(area(rows.map(({ counted }) => counted)) - exact)).toBeLessThan(0.02);
    },
  );

  test("parts what is above the lower threshold into what counts and what is taken", () => {
    const thresholds = { lower: 15, upper: 28, cutoff: "intermediate" } as const;
    for (const { temperature, counted, taken } of curveRows(hot, { ...span, thresholds }))
      expect(counted + taken).toBeCloseTo(Math.max(0, temperature - 15), 9);
  });

  test("runs from the begin of the first day to the end of the last, on the clock of the zone", () => {
    const options = { thresholds: { lower: 10 }, from: DAY, to: "2026-05-02", perHour: 1 };
    const rows = curveRows(days, { ...options, zone: "America/New_York" });
    expect(rows).toHaveLength(49);
    expect(rows[0]?.at).toBe("2026-05-01T00:00:00-04:00");
    expect(rows.at(-1)?.at).toBe("2026-05-03T00:00:00-04:00");
  });

  test.each([-1, 0, NaN, Infinity, 1e9])("refuses %d rows in each hour", (perHour) => {
    const options = { ...span, thresholds: { lower: 10 }, perHour };
    expect(refusalOf(() => curveRows(hot, options)).path).toEqual(["perHour"]);
  });

  test.each([7, 11, 13, 0.5])("reaches the end of the day with %d rows in each hour", (perHour) => {
    const rows = curveRows(hot, { ...span, thresholds: { lower: 10 }, perHour });
    expect(rows).toHaveLength(24 * perHour + 1);
    expect(rows.at(-1)?.at).toBe("2026-05-02T00:00:00");
  });

  test("follows the readings of a logger", () => {
    const hours = Array.from({ length: 25 }, (_, i) => Date.UTC(2026, 4, 1, i));
    const logger = temperatureReadings(
      hours,
      hours.map((_, i) => 10 + (i % 3)),
      { clock: "local" },
    );
    const rows = curveRows(logger, { ...span, thresholds: { lower: 10 }, perHour: 1 });
    expect(rows.map(({ temperature }) => temperature)).toEqual(hours.map((_, i) => 10 + (i % 3)));
  });

  test("refuses a day that is not there", () => {
    expect(() => curveRows(days, { thresholds: { lower: 10 }, from: "2025-01-01", to: DAY })).toThrow(
      /start/,
    );
  });
});

describe("curveFigure", () => {
  const thresholds = { lower: 15, upper: 28 };
  const counts = degreeDays({ min: 12, max: 36 }, thresholds);
  const rows = curveRows(hot, { ...span, thresholds });

  test.each([320, 640])("is one named and described image %d pixels wide", (width) => {
    const drawing = curveFigure(Plot, rows, { thresholds, counts, width, document }).querySelector("svg");
    expect(drawing?.getAttribute("role")).toBe("img");
    expect(drawing?.getAttribute("width")).toBe(String(width));
    expect(drawing?.getAttribute("aria-description")).toMatch(/The day counts \d/);
    expect(drawing?.querySelector("[aria-label]")).toBeNull();
  });

  test("writes the sum into the area, or leaves it out where it has no room", () => {
    const text = (counts: number, lower: number): string | undefined =>
      curveFigure(Plot, curveRows(hot, { ...span, thresholds: { lower } }), {
        thresholds: { lower },
        counts,
        document,
      }).querySelector(".counts")?.textContent;
    expect(text(9.04, 15)).toBe("9 °C·day");
    expect(text(0.001, 35.9)).toBeUndefined();
  });

  test("draws the strokes of a cutoff up to the curve, and none without", () => {
    const strokes = curveFigure(Plot, rows, { thresholds, document }).querySelectorAll(".taken > *");
    expect(strokes.length).toBeGreaterThan(10);
    const none = { lower: 15 };
    const figure = curveFigure(Plot, curveRows(hot, { ...span, thresholds: none }), {
      thresholds: none,
      document,
    });
    expect(figure.querySelectorAll(".taken > *")).toHaveLength(0);
    expect(figure.querySelector("figcaption")?.textContent).not.toContain("strokes");
  });

  test("sets readings beside the curve", () => {
    const readings = [{ at: "2026-05-01T06:00:00", temperature: 13 }];
    const figure = curveFigure(Plot, rows, { thresholds, readings, document });
    const ring = figure.querySelector(".reading > *");
    expect(figure.scale("y")?.invert?.(Number(ring?.getAttribute("cy")))).toBeCloseTo(13, 6);
    expect(figure.querySelector("figcaption")?.textContent).toContain("rings");
  });

  test("labels hours on one day and days on several", () => {
    expect(curveFigure(Plot, rows, { thresholds, document }).textContent).toContain("12:00");
    const several = curveRows(days, { thresholds, from: DAY, to: "2026-05-03" });
    expect(curveFigure(Plot, several, { thresholds, document }).textContent).toContain("2 May");
  });
});

describe("describeCurve", () => {
  const rows = curveRows(days, { ...span, thresholds: { lower: 10 } });

  test("says range, hours and sum", () => {
    expect(describeCurve(rows, { thresholds: { lower: 10 }, counts: 6.304 })).toBe(
      "Over the day the temperature runs between 8 and 24\u00a0°C. It is above the lower threshold of 10\u00a0°C for about " +
        "18.5 of 24 hours. The day counts 6.3 °C·day.",
    );
  });

  test("shows °F, the sum without the offset", () => {
    const words = describeCurve(rows, { thresholds: { lower: 10, upper: 30 }, counts: 10, unit: "F" });
    expect(words).toContain("46.4 and 75.2\u00a0°F");
    expect(words).toContain("above the upper one of 86\u00a0°F for about 0.");
    expect(words).toContain("18 °F·day");
  });

  test("has words for a flat day and for none", () => {
    const flat = curveRows(days, { ...span, thresholds: { lower: 10 }, method: "average" });
    expect(describeCurve(flat, { thresholds: { lower: 10 } })).toContain("16\u00a0°C throughout");
    expect(describeCurve([], { thresholds: { lower: 10 } })).toBe("There is no temperature to show.");
  });
});

describe("addingUpFigure", () => {
  const sums = accumulateDegreeDays(days, { lower: 10 });

  test("stands each day on the days before it", () => {
    const figure = addingUpFigure(Plot, sums, { document });
    const axis = figure.scale("y");
    const tops = Array.from(figure.querySelectorAll(".day-block > *"), (block) =>
      Number(axis?.invert?.(Number(block.getAttribute("y")))),
    );
    tops.forEach((top, i) => expect(top).toBeCloseTo(sums[i]?.total ?? NaN, 6));
    expect(tops).toHaveLength(3);
    expect(figure.querySelector("svg")?.getAttribute("aria-description")).toBe(describeAddingUp(sums));
  });

  test("leaves the numbers out where blocks are too narrow for them", () => {
    expect(addingUpFigure(Plot, sums, { document }).querySelectorAll(".block-sum > *")).toHaveLength(3);
    const month = Array.from({ length: 30 }, (_, i) => ({
      day: addDays(DAY, i),
      degreeDays: 1,
      total: i + 1,
    }));
    expect(addingUpFigure(Plot, month, { document }).querySelector(".block-sum")).toBeNull();
  });

  test("says the least, the most and the sum", () => {
    expect(describeAddingUp(sums)).toBe(
      "From 1 May to 3 May 2026, 3 days add up to 17.3 °C·day. The least that a day counts is 0 on 3 May, the most 11 on 2 May.",
    );
    expect(describeAddingUp(sums.slice(0, 1), { unit: "F" })).toContain("1 day adds up to 11.3 °F·day.");
    expect(describeAddingUp([])).toBe("There are no days to add up.");
  });
});

test.each([
  ["2026-03-08", 23],
  ["2026-11-01", 25],
])("a day on which the clocks change, %s, has %d hours", (day, hours) => {
  const series = dailyTemperatures(day, [12], [36]);
  const thresholds = { lower: 10 };
  const rows = curveRows(series, { from: day, to: day, thresholds, zone: "America/New_York" });
  const words = describeCurve(rows, { thresholds, counts: 1 });
  expect(words).toContain(`for about ${hours} of ${hours} hours`);
  expect(words).toMatch(/^Over the day .* The day counts /);
});

test("there are words for a single moment", () => {
  const [row] = curveRows(hot, { ...span, thresholds: { lower: 10 } });
  if (row === undefined) throw new Error("the day has a begin");
  expect(describeCurve([row], { thresholds: { lower: 10 } })).not.toContain("NaN");
});
