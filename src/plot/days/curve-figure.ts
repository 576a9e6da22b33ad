import { LEFT, type Place, areaLabel, belowThreshold } from "./curve-labels.ts";
import { type CurveRow } from "./curve-rows.ts";
import { type CurveWordsOptions, describeCurve } from "./curve-words.ts";
import { dayAxis, dayTicks, wallClock } from "../dates.ts";
import { thresholdText } from "../display-unit.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  READABLE,
  drawFigure,
  frameOf,
} from "../figure.ts";
import { given } from "../../given.ts";
import type { IsoInstant } from "../../forecast/question/result.ts";
import { DAY_MS } from "../../time/zone.ts";
import type { Celsius } from "../../units.ts";

/** A measured temperature beside a curve. */
export interface CurveReading {
  readonly at: IsoInstant;
  readonly temperature: Celsius;
}

/** Options of {@link curveFigure}. */
export interface CurveFigureOptions extends FigureOptions, CurveWordsOptions {
  readonly unit?: "C" | "F";
  /** Measured temperatures to set beside the curve, as rings. Default none. */
  readonly readings?: readonly CurveReading[];
}

/**
 * A temperature curve with its thresholds: filled where it counts, with upright strokes where a cutoff takes
 * warmth away. The filled area is degree-days.
 * @param library Observable Plot.
 * @param rows From {@link curveRows}.
 */
export function curveFigure(
  library: PlotLibrary,
  rows: readonly CurveRow[],
  options: CurveFigureOptions,
): Figure {
  const { width, display: unit } = frameOf(library, rows, options);
  given(options, ["options"], "an object of options", "thresholds");
  const { thresholds, readings = [], counts = null } = options;
  const { lower, upper = null } = thresholds;
  const points = rows.map(({ at, temperature, counted, taken }) => ({
    x: wallClock(at),
    y: unit.temperature(temperature),
    from: unit.temperature(lower),
    to: unit.temperature(lower + counted),
    top: unit.temperature(Math.max(lower + counted + taken, lower)),
    taken,
  }));
  const [begin = new Date(0), end = begin] = [points[0]?.x, points.at(-1)?.x];
  const rings = readings.map(({ at, temperature }) => ({
    x: wallClock(at),
    y: unit.temperature(temperature),
  }));
  const height = 300;
  const shown = [...points.map(({ y }) => y), ...rings.map(({ y }) => y), unit.temperature(lower)];
  if (upper !== null) shown.push(unit.temperature(upper));
  const label = areaLabel(points, { counts, unit, width: width - 60, height: height - 66, shown });
  // So many strokes that they stand some five pixels apart.
  const every = Math.max(1, Math.round((5 * points.length) / (width - 60)));
  const threshold = (name: string, at: Celsius, dy: number, place: Place = LEFT) => [
    library.ruleY([unit.temperature(at)], {
      stroke: COLOURS.limit,
      strokeWidth: 1.5,
      strokeDasharray: "6 3",
      className: "threshold",
    }),
    library.text([`${name}${width < 420 ? "" : " threshold"} ${thresholdText(at, unit)}`], {
      y: [unit.temperature(at)],
      ...place,
      dy,
      ...READABLE,
    }),
  ];
  const share = ((width < 420 ? 80 : 150) * points.length) / (width - 60);
  const below = belowThreshold(points, share);
  return drawFigure(
    library,
    {
      ariaLabel: `Temperature over time in ${unit.degree}, with what counts`,
      ariaDescription: describeCurve(rows, options),
      caption: captionOf(
        rows.some(({ taken }) => taken > 1e-9),
        rings.length > 0,
      ),
      height,
      marginLeft: 40,
      marginRight: 20,
      marginTop: 26,
      marginBottom: 40,
      insetBottom: 20,
      insetTop: 14,
      x: timeAxis(begin, end, width - 60),
      y: { label: unit.degree, nice: true, tickSize: 4, labelArrow: "none" },
      marks: [
        library.areaY(points, {
          x: "x",
          y1: "from",
          y2: "to",
          fill: COLOURS.heat,
          fillOpacity: 0.4,
          className: "counted",
        }),
        library.ruleX(
          points.filter(({ taken }, i) => taken > 1e-9 && i % every === 0),
          { x: "x", y1: "to", y2: "top", stroke: COLOURS.seen, strokeWidth: 1.5, className: "taken" },
        ),
        library.lineY(points, {
          x: "x",
          y: "y",
          stroke: COLOURS.heat,
          strokeWidth: 2.5,
          className: "curve",
        }),
        library.dot(rings, {
          x: "x",
          y: "y",
          r: 3.5,
          fill: COLOURS.halo,
          stroke: COLOURS.seen,
          strokeWidth: 1.75,
          className: "reading",
        }),
        ...threshold("lower", lower, below === null ? -9 : 10, below ?? LEFT),
        ...(upper === null ? [] : threshold("upper", upper, -9)),
        library.text(label, {
          x: "x",
          y: "y",
          text: "text",
          fontSize: 14,
          fontWeight: 600,
          ...READABLE,
          className: "counts",
        }),
      ],
    },
    options,
  );
}

function timeAxis(begin: Date, end: Date, pixels: number) {
  if (Number(end) - Number(begin) > 1.1 * DAY_MS) return dayAxis(dayTicks(begin, end, pixels));
  const hours = [0, 3, 6, 9, 12, 15, 18, 21, 24].filter((hour) => pixels > 480 || hour % 6 === 0);
  const ticks = hours.map((hour) => new Date(Number(begin) + hour * 3_600_000));
  return dayAxis(ticks, (at) => `${Math.round((Number(at) - Number(begin)) / 3_600_000)}:00`);
}

function captionOf(taken: boolean, readings: boolean): string {
  const parts = ["The filled area between curve and lower threshold is what counts: degree-days"];
  if (taken) parts.push("upright strokes: warmth that the cutoff takes away");
  if (readings) parts.push("rings: the hours themselves");
  return `${parts.join("; ")}.`;
}
