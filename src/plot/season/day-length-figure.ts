import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  drawFigure,
  frameOf,
} from "../figure.ts";
import { PLACE_DASHES } from "./last-eggs-figure.ts";
import { dayAxis } from "../dates.ts";
import { dateOnAxis, monthTicks, seasonTick, spanOf } from "./season-axis.ts";
import type { DayLengthRow } from "./season-rows.ts";
import { describeDayLengths, placesOf } from "./season-words.ts";

/**
 * How long the days are over the season, one line a place, with a numbered mark where the middle animal of each
 * brood emerges.
 * @param library Observable Plot.
 * @param rows From {@link dayLengthRows}.
 */
export function dayLengthFigure(
  library: PlotLibrary,
  rows: readonly DayLengthRow[],
  options: Omit<FigureOptions, "unit"> = {},
): Figure {
  const { width } = frameOf(library, rows, options);
  const points = rows.map((row) => ({ ...row, x: dateOnAxis(row.date, row.hemisphere) }));
  const places = placesOf(rows);
  const [from, to] = spanOf(points, ["01-01", "12-31"]);
  const lines = places.map((place, i) => {
    const own = points.filter((point) => point.place === place);
    // The last week of the curve may fall into the next year, where it would be drawn back to the first.
    const curve = own.filter(({ brood }) => brood === null).sort((a, b) => Number(a.x) - Number(b.x));
    return { place, curve, dash: PLACE_DASHES[i % PLACE_DASHES.length] ?? "none" };
  });
  // Numbers stand outside the lines: above the one with the longest day, below the others.
  const longest = points.reduce((most, { hours }) => Math.max(most, hours), 0);
  const above = points.find(({ hours }) => hours === longest)?.place;
  const emergences = points.filter(({ brood }) => brood !== null);
  return drawFigure(
    library,
    {
      ariaLabel: "Day length over the season",
      ariaDescription: describeDayLengths(rows),
      caption: "Line: hours from sunrise to sunset; numbered dot: the middle adult of that brood emerges.",
      height: 280,
      marginLeft: 40,
      marginRight: 18,
      marginTop: 40,
      marginBottom: 30,
      x: { ...dayAxis(monthTicks(from, to, width - 60), seasonTick), domain: [from, to] },
      y: { label: "hours of daylight", labelArrow: "none", nice: true, tickSize: 4, grid: true },
      marks: [
        ...lines.map(({ curve, dash }) =>
          library.lineY(curve, {
            x: "x",
            y: "hours",
            stroke: COLOURS.heat,
            strokeWidth: 2,
            strokeDasharray: dash,
            className: "day-length",
          }),
        ),
        ...lines.map(({ place, curve }) => {
          const outside = place === above;
          return library.text(curve.slice(outside ? 19 : 14).slice(0, 1), {
            x: "x",
            y: "hours",
            text: [place],
            textAnchor: outside ? "end" : "start",
            dx: outside ? -10 : 14,
            dy: outside ? -6 : 12,
            fill: "currentColor",
            stroke: COLOURS.halo,
            strokeWidth: 4,
          });
        }),
        library.dot(emergences, {
          x: "x",
          y: "hours",
          r: 5,
          fill: COLOURS.seen,
          stroke: COLOURS.halo,
          strokeWidth: 1.5,
          className: "emergence",
        }),
        ...[true, false].map((up) =>
          library.text(
            emergences.filter(({ place }) => (place === above) === up),
            {
              x: "x",
              y: "hours",
              text: ({ brood }: DayLengthRow) => String(brood),
              dx: up ? 9 : -9,
              dy: up ? -9 : 10,
              fill: "currentColor",
              fontWeight: "bold",
              stroke: COLOURS.halo,
              strokeWidth: 3,
            },
          ),
        ),
      ],
    },
    options,
  );
}
