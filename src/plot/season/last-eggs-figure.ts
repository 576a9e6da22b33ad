import { DAY_MS } from "../../time/zone.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  drawFigure,
  frameOf,
} from "../figure.ts";
import { dayAxis } from "../dates.ts";
import { dateOnAxis, monthTicks, seasonTick, spanOf } from "./season-axis.ts";
import type { LastEggRow } from "./season-rows.ts";
import { describeLastEggs, placesOf } from "./season-words.ts";

/** Lines of the places, in their order: told apart by their dashes. */
export const PLACE_DASHES = ["none", "7 4", "2 3"] as const;

/**
 * In what share of the seasons eggs of a date still make it, with the interval of that share: one line a place.
 * @param library Observable Plot.
 * @param rows From {@link lastEggRows}.
 */
export function lastEggsFigure(
  library: PlotLibrary,
  rows: readonly LastEggRow[],
  options: Omit<FigureOptions, "unit"> = {},
): Figure {
  const { width } = frameOf(library, rows, options);
  const points = rows.map((row) => ({
    place: row.place,
    x: dateOnAxis(row.date, row.hemisphere),
    share: row.share * 100,
    lower: row.lower * 100,
    upper: row.upper * 100,
  }));
  const places = placesOf(rows);
  const [from, to] = spanOf(points, ["07-01", "10-01"]);
  const days = (Number(to) - Number(from)) / DAY_MS;
  return drawFigure(
    library,
    {
      ariaLabel: "Share of the seasons in which eggs of a date make it",
      ariaDescription: describeLastEggs(rows),
      caption:
        "Steps: share of the seasons in which eggs laid on the date make it; band: the interval of that share.",
      height: 250,
      marginLeft: 40,
      marginRight: 18,
      marginTop: 44,
      marginBottom: 30,
      x: {
        ...dayAxis((days > 120 ? monthTicks : weekTicks)(from, to, width - 60), seasonTick),
        domain: [from, to],
      },
      y: { domain: [0, 100], label: "% of the seasons", labelArrow: "none", tickSize: 4 },
      marks: [
        library.ruleY([0], { stroke: COLOURS.limit }),
        library.areaY(points, {
          x: "x",
          y1: "lower",
          y2: "upper",
          z: "place",
          fill: COLOURS.cool,
          fillOpacity: 0.3,
          curve: "step-before",
          className: "share-band",
        }),
        ...places.map((place, i) =>
          library.lineY(
            points.filter((point) => point.place === place),
            {
              x: "x",
              y: "share",
              stroke: COLOURS.heat,
              strokeWidth: 2.5,
              strokeDasharray: PLACE_DASHES[i % PLACE_DASHES.length] ?? "none",
              curve: "step-before",
            },
          ),
        ),
        library.dot(points, { x: "x", y: "share", r: 1.8, fill: COLOURS.heat, className: "share" }),
        ...places.map((place) => {
          const first = points.filter((point) => point.place === place).slice(0, 1);
          const late = Number(first[0]?.x) - Number(from) > (Number(to) - Number(from)) * 0.6;
          return library.text(first, {
            x: "x",
            y: "share",
            text: [place],
            textAnchor: late ? "end" : "start",
            dy: -10,
            fill: "currentColor",
            stroke: COLOURS.halo,
            strokeWidth: 4,
          });
        }),
      ],
    },
    options,
  );
}

function weekTicks(from: Date, to: Date, pixels: number): Date[] {
  const days = Math.round((Number(to) - Number(from)) / DAY_MS);
  const step = 7 * Math.max(1, Math.ceil(((days / 7) * 56) / pixels));
  return Array.from(
    { length: Math.floor(days / step) + 1 },
    (_, i) => new Date(Number(from) + i * step * DAY_MS),
  );
}
