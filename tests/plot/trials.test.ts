// @vitest-environment jsdom
import { readFileSync } from "node:fs";
import { join } from "node:path";
import * as Plot from "@observablehq/plot";
import { describe, expect, test } from "vitest";
import { compareRateModels } from "../../src/evaluate/rate-fit/compare-rate-models.ts";
import { daysAt } from "../../src/evaluate/threshold/days-at.ts";
import { estimateThreshold } from "../../src/evaluate/threshold/estimate-threshold.ts";
import {
  type Figure,
  daysAtFigure,
  describeDaysAt,
  describeRateModels,
  describeThresholds,
  fastestOf,
  leaveOutRows,
  rateCurveFigure,
  rateCurveRows,
  rateModelName,
  thresholdFigure,
  trialRows,
} from "../../src/plot/index.ts";
import { readTrials } from "../../src/read/index.ts";
import { briere1 } from "../../src/response/briere-1.ts";
import { near } from "../support/near.ts";
import { drawn } from "./drawn.ts";

const trialsOf = (name: string) =>
  readTrials(readFileSync(join(import.meta.dirname, `../../fixtures/trials/${name}.csv`), "utf8")).trials;
// Honek et al. 2003: printed threshold 7.1 °C, printed constant 304.6.
const beetle = trialsOf("gastrophysa-viridula");
const invented = trialsOf("invented-trials");
const estimates = [
  estimateThreshold(beetle),
  estimateThreshold(beetle, { method: "reduced-major-axis" }),
] as const;
const [intercept, axis] = estimates;
const rows = trialRows(beetle, beetle.slice(3));
const ranked = compareRateModels(invented, [briere1]);
const days = daysAt(beetle, [14, 16, 18, 20, 25]);

/** Where symbols stand: they are moved there, not drawn there. */
function placed(figure: Figure, mark: string): number[] {
  const axis = figure.scale("x");
  return Array.from(figure.querySelectorAll(`.${mark} > *`), (shape) => {
    const [, x = "NaN"] = /translate\(([^,]+),/.exec(shape.getAttribute("transform") ?? "") ?? [];
    return Number(axis?.invert?.(Number(x)));
  });
}

describe("trialRows", () => {
  test("stand from cold to hot, and say which are left out", () => {
    expect(trialRows([...beetle].reverse()).map(({ temperature }) => temperature)).toEqual([
      18, 21.5, 25, 28,
    ]);
    expect(rows.map(({ used }) => used)).toEqual([true, true, true, false]);
    expect(rows[0]).toEqual({ temperature: 18, days: 28.2, weight: null, rate: 1 / 28.2, used: true });
    expect(trialRows(invented)[0]?.weight).toBe(8);
  });
});

describe("leaveOutRows", () => {
  test("hold the threshold without each temperature", () => {
    const found = leaveOutRows(beetle);
    expect(found.map(({ leftOut }) => leftOut)).toEqual([null, 18, 21.5, 25, 28]);
    found.slice(1).forEach(({ lower, lowerError, moves }, i) => {
      const without = estimateThreshold(beetle.filter((_, j) => j !== i));
      expect([lower, lowerError]).toEqual([without.lower, without.lowerError]);
      expect(moves).toBeCloseTo(without.lower - intercept.lower, 12);
    });
  });

  test("say why there is none", () => {
    const found = leaveOutRows(beetle.slice(0, 2));
    expect(found[0]?.lower).not.toBeNull();
    expect(found[1]).toMatchObject({ lower: null, moves: null });
    expect(found[1]?.reason).toContain("one temperature");
  });
});

describe("rateCurveRows", () => {
  test("run over the span, never below nothing", () => {
    const curve = rateCurveRows(ranked, { from: 0, to: 40 }, 41);
    expect(curve).toHaveLength(82);
    expect(Math.min(...curve.map(({ rate }) => rate))).toBe(0);
    const at24 = curve.find(({ model, temperature }) => model === "briere-1" && temperature === 24);
    const fit = ranked.find(({ model }) => model === "briere-1");
    expect(at24?.rate).toBe(briere1.rate(24, { a: 0, lower: 0, upper: 0, ...fit?.parameters }));
    expect(
      rateCurveRows(
        ranked.map((row) => ({ ...row, parameters: null })),
        { from: 0, to: 1 },
      ),
    ).toEqual([]);
  });
});

const figures: readonly (readonly [string, (width: number, unit?: "C" | "F") => Figure])[] = [
  [
    "thresholdFigure",
    (width, unit = "C") => thresholdFigure(Plot, rows, { estimates, width, unit, document }),
  ],
  ["daysAtFigure", (width, unit = "C") => daysAtFigure(Plot, days, { trials: rows, width, unit, document })],
  [
    "rateCurveFigure",
    (width, unit = "C") => rateCurveFigure(Plot, trialRows(invented), ranked, { width, unit, document }),
  ],
];

describe.each(figures)("%s", (_, draw) => {
  test.each([320, 640, 1200])("is one named and described image %d pixels wide", (width) => {
    const figure = draw(width);
    const drawing = figure.querySelector("svg[role=img]");
    expect(drawing?.getAttribute("width")).toBe(String(width));
    expect(drawing?.getAttribute("aria-label")).toBeTruthy();
    expect(drawing?.getAttribute("aria-description")).toMatch(/\d/);
    expect(drawing?.querySelector("[aria-label]")).toBeNull();
    expect(figure.querySelector("figcaption")?.textContent).toMatch(/\.$/);
  });

  test("is shown in °F on request", () => {
    const figure = draw(640, "F");
    expect(figure.textContent).toContain("°F");
    expect(figure.textContent).not.toContain("°C");
  });
});

describe("thresholdFigure", () => {
  test.each([
    ["C", (celsius: number) => celsius],
    ["F", (celsius: number) => celsius * 1.8 + 32],
  ] as const)("draws trials and thresholds in °%s", (unit, shown) => {
    const figure = thresholdFigure(Plot, rows, { estimates, unit, document });
    near(drawn(figure, "trial", "cx", "x"), [18, 21.5, 25].map(shown));
    near(
      drawn(figure, "trial", "cy", "y"),
      [28.2, 21.6, 16.1].map((one) => 100 / one),
    );
    near(placed(figure, "threshold-by-intercept"), [shown(intercept.lower)]);
    near(placed(figure, "threshold-by-axis"), [shown(axis.lower)]);
    const error = intercept.lowerError ?? NaN;
    near(drawn(figure, "threshold-error", "x1", "x"), [shown(intercept.lower - error)]);
    near(drawn(figure, "threshold-error", "x2", "x"), [shown(intercept.lower + error)]);
    expect(figure.querySelectorAll(".trial-left-out > *")).toHaveLength(1);
    expect(figure.textContent).toContain("cross: left out");
  });

  test("of nothing is drawn without failing", () => {
    expect(thresholdFigure(Plot, [], { document }).querySelector("svg")).not.toBeNull();
  });
});

test("a fit without meaning has no curve and no fastest temperature", () => {
  const [row] = ranked;
  const faulty = { ...row, model: "briere-1", parameters: { a: 1e-4, lower: 10, upper: -2 } };
  expect(fastestOf(faulty)).toBeNull();
  expect(
    rateCurveRows(
      ranked.map((one) => ({ ...one, ...(one.model === "briere-1" && { parameters: faulty.parameters }) })),
      { from: 0, to: 1 },
    ).map(({ model }) => model),
  ).not.toContain("briere-1");
});

describe("daysAtFigure", () => {
  test("is drawn before a page is laid out", () => {
    const figure = daysAtFigure(Plot, days, { width: 0, document });
    for (const shape of figure.querySelectorAll("rect"))
      expect(Number(shape.getAttribute("width"))).toBeGreaterThan(0);
  });

  test("names the temperatures asked for", () => {
    const named = days.filter(({ temperature }) => temperature >= 20);
    const figure = daysAtFigure(Plot, days, { trials: rows, named, document });
    near(placed(figure, "days-named"), [20, 25]);
    expect(figure.textContent).toContain("17 days");
    expect(daysAtFigure(Plot, [], { document }).querySelector("svg")).not.toBeNull();
  });
});

describe("rateCurveFigure", () => {
  test("marks where the chosen curve is fastest, and nothing on a line", () => {
    const trials = trialRows(invented);
    const fastest = fastestOf(ranked[0] ?? { model: "", parameters: null });
    const figure = rateCurveFigure(Plot, trials, ranked, { document });
    near(drawn(figure, "fastest", "x1", "x"), [fastest ?? NaN]);
    const line = rateCurveFigure(Plot, trials, ranked, { chosen: "linear", document });
    expect(line.querySelectorAll(".fastest > *")).toHaveLength(0);
    expect(rateCurveFigure(Plot, [], [], { document }).querySelector("svg")).not.toBeNull();
  });
});

describe("the words beside the figures", () => {
  test("hold the printed threshold and constant", () => {
    expect(describeThresholds(rows, estimates)).toMatch(
      /18\u00a0°C 28\.2 days, .*28\u00a0°C 15 days \(left out\)\. By the x-intercept the line meets zero at 7\.1 ± 1\.9\u00a0°C, and development needs 304\.6 ± 35\.1\u00a0°C·day\. By the reduced major axis/,
    );
    expect(describeThresholds([], [])).toBe("There are no trials to show.");
  });

  test("hold the days and the ranks", () => {
    expect(describeDaysAt(days)).toMatch(/20\u00a0°C 23\.6 days \([\d.]+ to [\d.]+\)/);
    expect(describeDaysAt(daysAt(beetle, [3]))).toContain("says nothing");
    expect(describeRateModels(ranked)).toMatch(
      /^Brière 1, ranked first, fastest at 30\.1\u00a0°C; straight line, [\d.]+ behind\.$/,
    );
    expect(describeRateModels([])).toBe("No curve is fitted.");
    expect(rateModelName("own")).toBe("own");
  });
});
