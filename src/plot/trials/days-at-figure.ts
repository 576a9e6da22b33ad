import type { DaysAt } from "../../evaluate/threshold/days-at.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  READABLE,
  drawFigure,
  frameOf,
} from "../figure.ts";
import { temperatureAxis, trialMarks } from "./trial-marks.ts";
import type { TrialRow } from "./trial-rows.ts";
import { describeDaysAt } from "./trial-words.ts";

/** Options of {@link daysAtFigure}. */
export interface DaysAtFigureOptions extends FigureOptions {
  /** Trials to draw as points. */
  readonly trials?: readonly TrialRow[];
  /** Temperatures to name, some of the rows. */
  readonly named?: readonly DaysAt[];
}

/**
 * How long development takes against temperature, by the line through trials: the curve is the mean, the band its
 * interval. Where no trial was, the curve is dashed.
 * @param library Observable Plot.
 * @param rows What `daysAt` returned, from cold to hot and close enough to make a curve.
 */
export function daysAtFigure(
  library: PlotLibrary,
  rows: readonly DaysAt[],
  options: DaysAtFigureOptions = {},
): Figure {
  const { width, display } = frameOf(library, rows, options);
  const { trials = [], named = [], unit } = options;
  const most = Math.max(...trials.map(({ days }) => days), ...named.map(({ days }) => days ?? 0));
  const top = Number.isFinite(most) && most > 0 ? most * 1.25 : 100;
  const points = rows.flatMap(({ temperature, days, early, late, beyond }) =>
    days === null
      ? []
      : [
          {
            x: display.temperature(temperature),
            days,
            early: early ?? days,
            late: early === null ? days : (late ?? top * 4),
            beyond,
          },
        ],
  );
  const band = points.some(({ early, late }) => early < late);
  const marked = named.flatMap(({ temperature, days }) =>
    days === null ? [] : [{ x: display.temperature(temperature), days }],
  );
  const curve = { x: "x", y: "days", stroke: COLOURS.heat, clip: true } as const;
  return drawFigure(
    library,
    {
      ariaLabel: "Days of development against temperature",
      ariaDescription: describeDaysAt(named.length > 0 ? named : rows, { unit }),
      caption: captionOf({ band, named: marked.length > 0, beyond: points.some(({ beyond }) => beyond) }),
      height: 300,
      marginLeft: 40,
      marginRight: 18,
      marginTop: 30,
      marginBottom: 40,
      x: temperatureAxis(display, width),
      y: { label: "days", domain: [0, top], labelArrow: "none", tickSize: 4 },
      marks: [
        library.ruleY([0], { stroke: COLOURS.limit }),
        library.areaY(points, {
          x: "x",
          y1: "early",
          y2: "late",
          fill: COLOURS.cool,
          fillOpacity: 0.35,
          clip: true,
          className: "days-band",
        }),
        // Drawn in full over the tested part; each part keeps the point at which they meet.
        library.lineY(points, { ...curve, strokeWidth: 2, strokeDasharray: "4 4", className: "days-beyond" }),
        library.lineY(
          points.filter(({ beyond }) => !beyond),
          { ...curve, strokeWidth: 3, className: "days" },
        ),
        ...trialMarks(library, trials, { x: display.temperature, y: ({ days }) => days }),
        library.ruleX(marked, { x: "x", y: "days", stroke: COLOURS.limit, strokeDasharray: "2 3" }),
        library.dot(marked, {
          x: "x",
          y: "days",
          symbol: "diamond",
          r: 5,
          fill: COLOURS.seen,
          stroke: COLOURS.seen,
          className: "days-named",
        }),
        library.text(marked, {
          x: "x",
          y: "days",
          text: ({ days }: { readonly days: number }) => `${days.toFixed(0)} days`,
          textAnchor: "start",
          dx: 7,
          dy: -12,
          ...READABLE,
        }),
      ],
    },
    options,
  );
}

function captionOf(has: {
  readonly band: boolean;
  readonly named: boolean;
  readonly beyond: boolean;
}): string {
  const parts = ["Line: mean days by the straight line through the rates"];
  if (has.beyond) parts.push("dashes: no trial was there");
  if (has.band) parts.push("band: its interval");
  parts.push("rings: the trials");
  if (has.named) parts.push("diamonds: the temperatures of the table");
  return `${parts.join("; ")}.`;
}
