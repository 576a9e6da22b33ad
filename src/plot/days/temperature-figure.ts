import { dayAxis, noonOf, noonTicks } from "../dates.ts";
import { type DisplayUnit, thresholdText } from "../display-unit.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  drawFigure,
  frameOf,
} from "../figure.ts";
import type { TemperatureRow } from "./temperature-rows.ts";
import {
  type ThresholdLine,
  type ThresholdPair,
  describeTemperatures,
  thresholdLines,
} from "./temperature-words.ts";

/** Options of {@link temperatureFigure}. */
export interface TemperatureFigureOptions extends FigureOptions {
  /** Thresholds to draw, such as `forecast.tables`. Default none. */
  readonly thresholds?: readonly ThresholdPair[];
}

/**
 * Each day's range of temperatures as an upright stroke, thick where it lies between the thresholds, with
 * the thresholds across.
 * @param library Observable Plot.
 * @param rows From {@link temperatureRows}.
 */
export function temperatureFigure(
  library: PlotLibrary,
  rows: readonly TemperatureRow[],
  options: TemperatureFigureOptions = {},
): Figure {
  const { width, display } = frameOf(library, rows, options);
  const { thresholds = [] } = options;
  const { degree, temperature } = display;
  const days = rows.flatMap(({ day, min, max, origin }) =>
    min === null || max === null ? [] : [{ at: noonOf(day), min, max, dashed: origin !== "observed" }],
  );
  const { lower, upper } = widest(thresholds);
  const strokes = days.map((day) => ({
    ...day,
    warmFrom: temperature(Math.max(day.min, lower)),
    warmTo: temperature(Math.min(day.max, upper)),
    from: temperature(day.min),
    to: temperature(day.max),
  }));
  const warm = thresholds.length === 0 ? [] : strokes.filter((day) => day.warmTo > day.warmFrom);
  const stroke = Math.max(2, Math.min(7, (width / Math.max(rows.length, 1)) * 0.5));
  const lines = thresholdLines(thresholds).map((line) => ({ ...line, y: temperature(line.at) }));
  return drawFigure(
    library,
    {
      ariaLabel: `Daily temperatures in ${degree}`,
      ariaDescription: describeTemperatures(rows, options),
      caption: captionOf(thresholds.length > 0, rows),
      height: 260,
      marginLeft: 40,
      insetLeft: 6,
      insetRight: 6,
      // Room for the name of a lower threshold that is the lowest thing drawn.
      insetBottom: 12,
      marginRight: 16,
      marginTop: 26,
      marginBottom: 34,
      x: dayAxis(noonTicks(rows[0]?.day, rows.at(-1)?.day, width - 68)),
      y: { label: degree, nice: true, tickSize: 4, labelArrow: "none" },
      marks: [
        library.ruleX(
          strokes.filter((day) => !day.dashed),
          { x: "at", y1: "from", y2: "to", stroke: COLOURS.cool, strokeWidth: 1.5, className: "day-range" },
        ),
        library.ruleX(
          strokes.filter((day) => day.dashed),
          {
            x: "at",
            y1: "from",
            y2: "to",
            stroke: COLOURS.cool,
            strokeWidth: 1.5,
            strokeDasharray: "2 2",
            className: "day-range-unobserved",
          },
        ),
        library.ruleX(warm, {
          x: "at",
          y1: "warmFrom",
          y2: "warmTo",
          stroke: COLOURS.heat,
          strokeWidth: stroke,
          className: "warm-range",
        }),
        // Gaps laid over a thick stroke make it dashed without hiding where it ends.
        library.ruleX(
          warm.filter((day) => day.dashed),
          {
            x: "at",
            y1: "warmFrom",
            y2: "warmTo",
            stroke: COLOURS.halo,
            strokeWidth: stroke - 1,
            strokeDasharray: "2 3",
          },
        ),
        library.text(
          rows.filter((row) => row.min === null),
          {
            x: (row: TemperatureRow) => noonOf(row.day),
            text: () => "×",
            frameAnchor: "bottom",
            dy: -2,
            fill: COLOURS.seen,
            className: "no-reading",
          },
        ),
        library.ruleY(lines, {
          y: "y",
          stroke: COLOURS.limit,
          strokeDasharray: "6 3",
          className: "threshold",
        }),
        // Names stand outside the thresholds, where strokes are thin.
        ...namesOf(lines, display).map(({ name, y, dy }) =>
          library.text([name], {
            y: [y],
            frameAnchor: "left",
            textAnchor: "start",
            dx: 4,
            dy,
            fill: "currentColor",
          }),
        ),
      ],
    },
    options,
  );
}

// One name for all lower thresholds, below the lowest, and one for all upper ones, above the highest.
function namesOf(lines: readonly (ThresholdLine & { readonly y: number })[], display: DisplayUnit) {
  return ["lower", "upper"].flatMap((side) => {
    const ofSide = lines.filter(({ name }) => name.startsWith(side)).sort((a, b) => a.at - b.at);
    const outermost = side === "lower" ? ofSide[0] : ofSide.at(-1);
    if (!outermost) return [];
    const values = ofSide.map(({ at }) => thresholdText(at, display)).join(", ");
    const name = `${outermost.name}${ofSide.length > 1 ? "s" : ""} ${values}`;
    return [{ name, y: outermost.y, dy: side === "lower" ? 9 : -8 }];
  });
}

// The warmth that counts in at least one stage.
function widest(thresholds: readonly ThresholdPair[]): { lower: number; upper: number } {
  return {
    lower: thresholds.reduce((least, pair) => Math.min(least, pair.lower), Infinity),
    upper: thresholds.reduce((most, pair) => Math.max(most, pair.upper ?? Infinity), -Infinity),
  };
}

function captionOf(withThresholds: boolean, rows: readonly TemperatureRow[]): string {
  const parts = ["Each stroke runs from the day's lowest to its highest temperature"];
  if (withThresholds) parts.push("its thick part lies between the thresholds and counts");
  if (rows.some((row) => row.origin !== null && row.origin !== "observed"))
    parts.push("a dashed one was not measured");
  if (rows.some((row) => row.min === null)) parts.push("× marks a day without a reading");
  return `${parts.join("; ")}.`;
}
