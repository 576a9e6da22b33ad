import { givenList } from "../../given.ts";
import type { RankedModel } from "../../evaluate/rate-fit/compare-rate-models.ts";
import type { Celsius } from "../../units.ts";
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
import { type TrialRow, rateCurveRows } from "./trial-rows.ts";
import { describeRateModels, fastestOf, rateModelName } from "./trial-words.ts";

/** Options of {@link rateCurveFigure}. */
export interface RateCurveFigureOptions extends FigureOptions {
  /** Id of the model to draw thick. Default: the first. */
  readonly chosen?: string | undefined;
  /** First and last temperature of the curves, °C. Default: four degrees beyond the trials. */
  readonly span?: { readonly from: Celsius; readonly to: Celsius };
}

/**
 * Fitted rate models over the trials: the chosen one thick, with a mark where it is fastest, the others thin, the
 * straight line dashed.
 * @param library Observable Plot.
 * @param rows From {@link trialRows}.
 * @param ranked What `compareRateModels` returned for the same trials.
 */
export function rateCurveFigure(
  library: PlotLibrary,
  rows: readonly TrialRow[],
  ranked: readonly RankedModel[],
  options: RateCurveFigureOptions = {},
): Figure {
  const { width, display } = frameOf(library, rows, options);
  givenList(ranked, ["ranked"], "a list of ranked models");
  const { unit, chosen = ranked[0]?.model } = options;
  const temperatures = rows.map(({ temperature }) => temperature);
  const span = options.span ?? { from: Math.min(...temperatures) - 4, to: Math.max(...temperatures) + 4 };
  const points = (rows.length === 0 ? [] : rateCurveRows(ranked, span)).map((row) => ({
    ...row,
    x: display.temperature(row.temperature),
    y: row.rate * 100,
  }));
  const top = 1.2 * 100 * Math.max(...rows.map(({ rate }) => rate), 0.001);
  const curve = { x: "x", y: "y", z: "model", stroke: COLOURS.heat, clip: true } as const;
  const optima = ranked.flatMap((row) => {
    const fastest = row.model === chosen ? fastestOf(row) : null;
    return fastest === null ? [] : [display.temperature(fastest)];
  });
  return drawFigure(
    library,
    {
      ariaLabel: "Fitted rates of development against temperature",
      ariaDescription: describeRateModels(ranked, { unit }),
      caption: captionOf(ranked, chosen),
      height: 310,
      marginLeft: 40,
      marginRight: 18,
      marginTop: 30,
      marginBottom: 40,
      x: temperatureAxis(display, width),
      y: { label: "% of the development a day", domain: [0, top], labelArrow: "none", tickSize: 4 },
      marks: [
        library.ruleY([0], { stroke: COLOURS.limit }),
        library.ruleX(optima, { stroke: COLOURS.limit, strokeDasharray: "2 3", className: "fastest" }),
        library.lineY(
          points.filter(({ model }) => model !== chosen && model !== "linear"),
          { ...curve, stroke: COLOURS.limit, strokeWidth: 1, className: "other-curves" },
        ),
        library.lineY(
          points.filter(({ model }) => model === "linear"),
          {
            ...curve,
            strokeWidth: chosen === "linear" ? 3 : 1.5,
            strokeDasharray: "7 4",
            className: "straight-line",
          },
        ),
        library.lineY(
          points.filter(({ model }) => model === chosen && model !== "linear"),
          { ...curve, strokeWidth: 3, className: "chosen-curve" },
        ),
        ...trialMarks(library, rows, { x: display.temperature, y: ({ rate }) => rate * 100 }),
        library.text(optima, {
          x: (x: number) => x,
          frameAnchor: "bottom",
          text: (x: number) => `fastest: ${x.toFixed(1)} ${display.degree}`,
          textAnchor: "end",
          dx: -6,
          dy: -10,
          ...READABLE,
        }),
      ],
    },
    options,
  );
}

function captionOf(ranked: readonly RankedModel[], chosen: string | undefined): string {
  const fitted = ranked.filter(({ parameters }) => parameters !== null);
  const parts = ["Rings: the trials"];
  const thick = fitted.find(({ model }) => model === chosen);
  if (thick !== undefined) parts.push(`thick: ${rateModelName(thick.model)}`);
  if (chosen !== "linear" && fitted.some(({ model }) => model === "linear"))
    parts.push("dashes: straight line");
  if (fitted.some(({ model }) => model !== chosen && model !== "linear"))
    parts.push("thin: the other curves");
  return `${parts.join("; ")}.`;
}
