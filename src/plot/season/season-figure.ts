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
import { dateOnAxis, dayOnAxis, monthTicks, seasonTick } from "./season-axis.ts";
import type { SeasonRow } from "./season-rows.ts";
import { describeSeasons, placesOf } from "./season-words.ts";

const ROW_PIXELS = 38;

/**
 * Broods over the seasons: a bar from the eggs of each brood to its adults, one line a season, places one below the
 * other. A brood that does not come to its end before the season does is dashed up to there.
 * @param library Observable Plot.
 * @param rows From {@link seasonRows}.
 */
export function seasonFigure(
  library: PlotLibrary,
  rows: readonly SeasonRow[],
  options: Omit<FigureOptions, "unit"> = {},
): Figure {
  const { width } = frameOf(library, rows, options);
  const bars = rows.flatMap((row) =>
    row.broods.flatMap(({ number, eggs, adults }) => {
      const until = adults ?? row.ends;
      if (until === null) return [];
      const [x1, x2] = [eggs, until].map((day) => dayOnAxis(day, row.label, row.hemisphere));
      return x1 === undefined || x2 === undefined || x2 <= x1
        ? []
        : [{ place: row.place, label: row.label, number, x1, x2, whole: adults !== null }];
    }),
  );
  const ends = rows.flatMap(({ place, label, hemisphere, ends, endsBy }) =>
    ends === null ? [] : [{ place, label, x: dayOnAxis(ends, label, hemisphere), endsBy }],
  );
  const lastEggs = rows.flatMap(({ place, label, hemisphere, lastEggs }) =>
    lastEggs === null ? [] : [{ place, label, x: dayOnAxis(lastEggs, label, hemisphere) }],
  );
  const times = [...bars.flatMap(({ x1, x2 }) => [x1, x2]), ...[...ends, ...lastEggs].map(({ x }) => x)].map(
    Number,
  );
  const from = new Date(times.length === 0 ? dateOnAxis("04-01", "north") : Math.min(...times) - 6 * DAY_MS);
  const to = new Date(times.length === 0 ? dateOnAxis("11-30", "north") : Math.max(...times) + 6 * DAY_MS);
  const places = placesOf(rows);
  const at = { fy: "place", y: "label" } as const;
  return drawFigure(
    library,
    {
      ariaLabel: "Broods of each season",
      ariaDescription: describeSeasons(rows),
      caption: captionOf({
        broken: bars.some(({ whole }) => !whole),
        endings: [...new Set(ends.map(({ endsBy }) => endsBy))],
        lastEggs: lastEggs.length > 0,
      }),
      height: 60 + rows.length * ROW_PIXELS + places.length * 30,
      marginLeft: 58,
      marginRight: 14,
      marginTop: 30,
      marginBottom: 30,
      x: { ...dayAxis(monthTicks(from, to, width - 72), seasonTick), domain: [from, to], grid: true },
      y: { type: "band", label: null, tickSize: 0, padding: 0.3 },
      fy: { domain: places, label: null, axis: null, padding: 0.18 },
      marks: [
        ...places.map((place) =>
          library.text([place], {
            fy: [place],
            text: [place],
            frameAnchor: "top-left",
            textAnchor: "start",
            dx: -54,
            dy: -15,
            fontWeight: "bold",
            fill: "currentColor",
          }),
        ),
        library.ruleY(
          bars.filter(({ whole }) => whole),
          { ...at, x1: "x1", x2: "x2", stroke: COLOURS.heat, strokeWidth: 14, className: "brood" },
        ),
        library.ruleY(
          bars.filter(({ whole }) => !whole),
          {
            ...at,
            x1: "x1",
            x2: "x2",
            stroke: COLOURS.limit,
            strokeWidth: 2,
            strokeDasharray: "5 4",
            className: "brood-unfinished",
          },
        ),
        library.text(
          bars.filter(({ whole }) => whole),
          {
            ...at,
            x: ({ x1, x2 }: { readonly x1: Date; readonly x2: Date }) =>
              new Date((Number(x1) + Number(x2)) / 2),
            text: ({ number }: { readonly number: number }) => String(number),
            fill: COLOURS.halo,
            fontWeight: "bold",
            fontSize: 11,
          },
        ),
        library.dot(lastEggs, {
          ...at,
          x: "x",
          dy: 12,
          symbol: "triangle",
          r: 4,
          fill: COLOURS.seen,
          stroke: COLOURS.seen,
          className: "last-eggs",
        }),
        ...(["frost", "cold"] as const).map((kind) =>
          library.dot(
            ends.filter(({ endsBy }) => endsBy === kind),
            {
              ...at,
              x: "x",
              symbol: kind === "frost" ? "asterisk" : "square",
              r: 5,
              fill: COLOURS.halo,
              stroke: "currentColor",
              strokeWidth: 2,
              className: `ends-by-${kind}`,
            },
          ),
        ),
      ],
    },
    options,
  );
}

function captionOf(has: {
  readonly broken: boolean;
  readonly endings: readonly SeasonRow["endsBy"][];
  readonly lastEggs: boolean;
}): string {
  const parts = ["Bar with a number: a brood, from its first eggs to its middle adult"];
  if (has.broken) parts.push("dashes: a brood that the season cuts off");
  if (has.lastEggs) parts.push("triangle: the last eggs that make it");
  if (has.endings.includes("cold")) parts.push("square: lasting cold ends the season");
  if (has.endings.includes("frost")) parts.push("star: frost ends it");
  return `${parts.join("; ")}.`;
}
