import type { ThresholdEstimate } from "../../evaluate/threshold/estimate-threshold.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  drawFigure,
  frameOf,
} from "../figure.ts";
import { temperatureAxis, trialMarks } from "./trial-marks.ts";
import type { TrialRow } from "./trial-rows.ts";
import { describeThresholds, thresholdWithError } from "./trial-words.ts";

/** Options of {@link thresholdFigure}. */
export interface ThresholdFigureOptions extends FigureOptions {
  /** Lines to draw, such as one of each method. */
  readonly estimates?: readonly ThresholdEstimate[];
}

/**
 * Development a day against temperature: a point for each trial, and for each estimate its line down to where it
 * meets zero, the lower threshold, with a bar of one standard error to either side.
 * @param library Observable Plot.
 * @param rows From {@link trialRows}.
 */
export function thresholdFigure(
  library: PlotLibrary,
  rows: readonly TrialRow[],
  options: ThresholdFigureOptions = {},
): Figure {
  const { width, display } = frameOf(library, rows, options);
  const { estimates = [], unit } = options;
  const hottest = Math.max(...rows.map(({ temperature }) => temperature)) + 1;
  // Without trials there is nothing that a line could run through.
  const lines = (rows.length === 0 ? [] : estimates).map((estimate) => {
    const intercept = estimate.method === "x-intercept";
    return {
      estimate,
      className: intercept ? "by-intercept" : "by-axis",
      dash: intercept ? "none" : "7 4",
      at: display.temperature(estimate.lower),
      error: estimate.lowerError === null ? null : display.difference(estimate.lowerError),
      ends: [
        { x: display.temperature(estimate.lower), y: 0 },
        {
          x: display.temperature(hottest),
          y: (100 * Math.max(0, hottest - estimate.lower)) / estimate.thermalConstant,
        },
      ],
    };
  });
  const [first] = lines;
  return drawFigure(
    library,
    {
      ariaLabel: "Development a day against temperature",
      ariaDescription: describeThresholds(rows, estimates, { unit }),
      caption: captionOf(rows, estimates),
      height: 330,
      marginLeft: 40,
      marginRight: 18,
      marginTop: 30,
      marginBottom: 40,
      x: { ...temperatureAxis(display, width), nice: true },
      y: { label: "% of the development a day", zero: true, nice: true, labelArrow: "none", tickSize: 4 },
      marks: [
        library.ruleY([0], { stroke: COLOURS.limit }),
        ...lines.map(({ ends, className, dash }) =>
          library.lineY(ends, {
            x: "x",
            y: "y",
            stroke: COLOURS.heat,
            strokeWidth: dash === "none" ? 2.5 : 2,
            strokeDasharray: dash,
            className,
          }),
        ),
        ...lines.flatMap(({ at, error }) =>
          error === null
            ? []
            : [
                library.ruleY([{ x1: at - error, x2: at + error }], {
                  x1: "x1",
                  x2: "x2",
                  y: 0,
                  stroke: COLOURS.seen,
                  strokeWidth: 5,
                  className: "threshold-error",
                }),
              ],
        ),
        ...lines.map(({ at, className }) =>
          library.dot([at], {
            x: [at],
            y: [0],
            symbol: "diamond",
            r: 6,
            fill: className === "by-intercept" ? COLOURS.seen : COLOURS.halo,
            stroke: COLOURS.seen,
            strokeWidth: 2,
            className: `threshold-${className}`,
          }),
        ),
        ...(first === undefined
          ? []
          : [
              library.text([first.at], {
                x: [first.at],
                y: [0],
                text: [thresholdWithError(first.estimate, { unit })],
                // Right of the diamonds, where the lines have risen above it.
                textAnchor: "start",
                dx: 64,
                dy: -9,
                fontWeight: "bold",
                fill: "currentColor",
                stroke: COLOURS.halo,
                strokeWidth: 5,
              }),
            ]),
        ...trialMarks(library, rows, { x: display.temperature, y: ({ rate }) => rate * 100 }),
      ],
    },
    options,
  );
}

function captionOf(rows: readonly TrialRow[], estimates: readonly ThresholdEstimate[]): string {
  const parts = ["Each ring: a trial"];
  if (rows.some(({ used }) => !used)) parts.push("cross: left out");
  for (const { method } of estimates)
    parts.push(
      method === "x-intercept"
        ? "full line: through the trials, down to the threshold (full diamond)"
        : "dashes: reduced major axis, with its threshold (hollow diamond)",
    );
  if (estimates.some(({ lowerError }) => lowerError !== null))
    parts.push("thick bar at zero: one standard error to either side");
  return `${parts.join("; ")}.`;
}
