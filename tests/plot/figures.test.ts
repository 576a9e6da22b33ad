// @vitest-environment jsdom
import * as Plot from "@observablehq/plot";
import { describe, expect, test } from "vitest";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import {
  type Figure,
  degreeDayFigure,
  degreeDayRows,
  describeDegreeDays,
  describeStageWindows,
  describeTemperatures,
  forecastDays,
  stageTotalRows,
  stageWindowFigure,
  stageWindowRows,
  temperatureFigure,
  temperatureRows,
} from "../../src/plot/index.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { drawn } from "./drawn.ts";
import { log, newYork, season } from "./season.ts";

const warmth = temperatureRows(newYork, forecastDays(season));
const figures: readonly (readonly [string, (width: number) => Figure])[] = [
  [
    "temperatureFigure",
    (width) => temperatureFigure(Plot, warmth, { thresholds: season.tables, width, document }),
  ],
  [
    "degreeDayFigure",
    (width) =>
      degreeDayFigure(Plot, degreeDayRows(season), { stages: stageTotalRows(season), width, document }),
  ],
  [
    "stageWindowFigure",
    (width) => stageWindowFigure(Plot, stageWindowRows(season, log), { width, document }),
  ],
];

describe.each(figures)("%s", (_, draw) => {
  test.each([320, 640, 1200])("is one named and described image %d pixels wide", (width) => {
    const drawing = draw(width).querySelector("svg");
    expect(drawing?.getAttribute("role")).toBe("img");
    expect(drawing?.getAttribute("width")).toBe(String(width));
    expect(drawing?.getAttribute("aria-label")).toBeTruthy();
    expect(drawing?.getAttribute("aria-description")).toMatch(/\d/);
    expect(drawing?.querySelector("[aria-label]")).toBeNull();
  });

  test("says in a caption what its shapes mean", () => {
    expect(draw(640).querySelector("figcaption")?.textContent).toMatch(/\.$/);
  });

  test("draws the same twice", () => {
    expect(draw(640).outerHTML).toBe(draw(640).outerHTML);
  });
});

describe("temperatureFigure", () => {
  test("draws each day from its minimum to its maximum", () => {
    const figure = temperatureFigure(Plot, warmth, { document });
    drawn(figure, "day-range", "y1", "y").forEach((value, i) =>
      expect(value).toBeCloseTo(warmth[i]?.min ?? NaN, 6),
    );
    expect(drawn(figure, "day-range", "y2", "y")).toHaveLength(warmth.length);
  });

  test("draws thick only what lies between the thresholds", () => {
    const rows = [
      { day: "2026-05-01", min: 5, max: 20, origin: "observed" },
      { day: "2026-05-02", min: 2, max: 9, origin: "observed" },
      { day: "2026-05-03", min: 15, max: 40, origin: "observed" },
    ] as const;
    const figure = temperatureFigure(Plot, rows, { thresholds: [{ lower: 10, upper: 30 }], document });
    const [from, to] = ["y1", "y2"].map((end) => drawn(figure, "warm-range", end, "y").map(Math.round));
    expect([from, to]).toEqual([
      [10, 15],
      [20, 30],
    ]);
  });

  test("shows °F with the offset of temperatures", () => {
    const [row] = temperatureRows(constantTemperature(20), { from: "2026-05-01", to: "2026-05-01" });
    const figure = temperatureFigure(Plot, row ? [row] : [], { unit: "F", document });
    expect(drawn(figure, "day-range-unobserved", "y2", "y").map(Math.round)).toEqual([68]);
  });

  test("marks a day without a reading", () => {
    const rows = [...warmth.slice(0, 2), { day: "2014-06-14", min: null, max: null, origin: null }];
    const figure = temperatureFigure(Plot, rows, { document });
    expect(figure.querySelectorAll(".no-reading > *")).toHaveLength(1);
    expect(describeTemperatures(rows)).toContain("1 day has no reading.");
  });
});

describe("degreeDayFigure", () => {
  test("rings the totals of the stages", () => {
    const stages = stageTotalRows(season);
    const figure = degreeDayFigure(Plot, degreeDayRows(season), { stages, document });
    const totals = drawn(figure, "stage-begin", "cy", "y");
    expect(totals).toHaveLength(stages.length);
    totals.forEach((total, i) => expect(total).toBeCloseTo(stages[i]?.total ?? NaN, 6));
  });

  test("gives sums in °F without the offset", () => {
    const stages = stageTotalRows(season);
    const figure = degreeDayFigure(Plot, degreeDayRows(season), { stages, unit: "F", document });
    const adult = drawn(figure, "stage-begin", "cy", "y").at(-1);
    expect(adult).toBeCloseTo((stages.at(-1)?.total ?? NaN) * 1.8, 6);
  });

  test("gives each pair of thresholds a curve with a dash and a name of its own", () => {
    const moth = forecast({
      lifeCycle: findSpecies("helicoverpa-armigera"),
      found: { stage: "egg", on: "2026-05-01" },
      temperatures: constantTemperature(24),
    });
    const figure = degreeDayFigure(Plot, degreeDayRows(moth), { document });
    const dashes = Array.from(figure.querySelectorAll(".running-total"), (line) =>
      line.getAttribute("stroke-dasharray"),
    );
    expect(moth.tables.length).toBeGreaterThan(1);
    expect(new Set(dashes).size).toBe(moth.tables.length);
    for (const { lower } of moth.tables) expect(figure.textContent).toContain(`above ${lower}\u00a0°C`);
  });
});

describe("stageWindowFigure", () => {
  test("draws the bar from early to late, the tick at expected, a diamond for each day of the log", () => {
    const rows = stageWindowRows(season, log);
    const figure = stageWindowFigure(Plot, rows, { from: season.found.at, document });
    const clock = (at: string | null): number => Date.parse(`${at?.slice(0, 19)}Z`);
    const near = (values: number[], expected: number[]): void => {
      expect(values).toHaveLength(expected.length);
      // A tenth of a pixel of a month on 600 pixels is about seven minutes.
      values.forEach((value, i) => expect(Math.abs(value - (expected[i] ?? NaN))).toBeLessThan(7 * 60_000));
    };
    near(
      drawn(figure, "window", "x1", "x"),
      rows.map((row) => clock(row.early)),
    );
    near(
      drawn(figure, "window", "x2", "x"),
      rows.map((row) => clock(row.late)),
    );
    near(
      drawn(figure, "expected", "x1", "x"),
      rows.map((row) => clock(row.expected)),
    );
    expect(figure.querySelectorAll(".seen > *")).toHaveLength(rows.flatMap((row) => row.seen).length);
  });

  test("leaves a bar open where the temperatures end, and says so", () => {
    const rows = stageWindowRows(season).map((row) => ({
      ...row,
      late: null,
      absence: "The temperatures end.",
    }));
    const figure = stageWindowFigure(Plot, rows, { document });
    expect(figure.querySelectorAll(".open-end > *")).toHaveLength(rows.length);
    expect(figure.querySelector("figcaption")?.textContent).toContain("beyond the temperatures");
  });

  test("draws nothing, without failing, when there is nothing to draw", () => {
    expect(stageWindowFigure(Plot, [], { document }).querySelector("svg")).not.toBeNull();
    expect(degreeDayFigure(Plot, [], { document }).querySelector("svg")).not.toBeNull();
    expect(temperatureFigure(Plot, [], { document }).querySelector("svg")).not.toBeNull();
  });
});

describe("the words beside the figures", () => {
  test("hold the key numbers", () => {
    expect(describeTemperatures(warmth, { thresholds: season.tables })).toMatch(
      /^From 12 June to \d+ July 2014 the temperature lay between 15\.6 and 32\.8\u00a0°C\. On none of the \d+ days did it fall below/,
    );
    expect(describeDegreeDays(degreeDayRows(season), { stages: stageTotalRows(season) })).toContain(
      "second instar at 54.8 on",
    );
    expect(describeStageWindows(stageWindowRows(season, log))).toMatch(
      /Pupa: about 30 June, between 28 June and \d July; seen on 1 July \(8\), 2 July \(2\)\./,
    );
  });
});

test("stages that nothing is known of make an empty drawing with an axis of days", () => {
  const rows = stageWindowRows(season).map((row) => ({ ...row, early: null, expected: null, late: null }));
  const figure = stageWindowFigure(Plot, rows, { from: season.found.at, document });
  expect(figure.querySelector("figcaption")?.textContent).toContain("without a date: ");
  expect(Array.from(figure.scale("x")?.domain ?? [], Number).every((at) => at > 0)).toBe(true);
  expect(stageWindowFigure(Plot, rows, { document }).outerHTML).not.toContain("NaN");
});

test("curves that stay at zero have their names a line apart", () => {
  const rows = degreeDayRows(season).flatMap((row) =>
    [10, 12].map((lower) => ({ ...row, lower, degreeDays: 0, total: 0 })),
  );
  expect(degreeDayFigure(Plot, rows, { document }).outerHTML).not.toContain("NaN");
});
