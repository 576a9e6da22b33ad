import { dayAxis, noonOf, noonTicks, shortDate } from "../dates.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  READABLE,
  drawFigure,
  frameOf,
} from "../figure.ts";
import type { StartRow } from "./start-rows.ts";
import { describeStarts, startText } from "./start-words.ts";

/** Options of {@link startFigure}. */
export interface StartFigureOptions extends FigureOptions {
  /** A start to mark, one of the rows. */
  readonly chosen?: StartRow | null;
}

/**
 * The chance of each start as an upright stem, over the days or over the temperatures of a room; beside it how
 * likely an animal is too early (dashes) and too late (dots).
 * @param library Observable Plot.
 * @param rows From {@link startRows}.
 */
export function startFigure(
  library: PlotLibrary,
  rows: readonly StartRow[],
  options: StartFigureOptions = {},
): Figure {
  const { width, display } = frameOf(library, rows, options);
  const { unit, chosen = null } = options;
  const room = rows.some(({ temperature }) => temperature !== null);
  const placeOf = ({ on, temperature }: StartRow): Date | number =>
    temperature === null ? noonOf(on.slice(0, 10)) : display.temperature(temperature);
  const points = rows.flatMap((row) =>
    row.chance === null
      ? []
      : [
          {
            x: placeOf(row),
            chance: row.chance * 100,
            early: (row.early ?? 0) * 100,
            late: (row.late ?? 0) * 100,
            best: row.rank === 1,
          },
        ],
  );
  const best = points.filter((point) => point.best);
  const lines = [
    { name: "too early", key: "early", className: "too-early", strokeDasharray: "7 4" },
    { name: "too late", key: "late", className: "too-late", strokeDasharray: "2 3" },
  ] as const;
  return drawFigure(
    library,
    {
      ariaLabel: room ? "Chance by the temperature of the room" : "Chance by the day of the start",
      ariaDescription: describeStarts(rows, { unit }),
      caption: captionOf(points.length < rows.length),
      height: 270,
      marginLeft: 40,
      marginRight: 16,
      marginTop: 44,
      marginBottom: room ? 40 : 34,
      insetLeft: 8,
      insetRight: 8,
      x: room
        ? {
            type: "linear",
            label: `room, ${display.degree}`,
            tickSize: 4,
            labelArrow: "none",
            ticks: width / 80,
          }
        : dayAxis(noonTicks(rows[0]?.on, rows.at(-1)?.on, width - 72)),
      y: { domain: [0, 100], label: "%", tickSize: 4, labelArrow: "none" },
      marks: [
        library.ruleY([0], { stroke: COLOURS.limit }),
        library.ruleX(points, {
          x: "x",
          y1: 0,
          y2: "chance",
          stroke: COLOURS.heat,
          strokeWidth: Math.max(2, Math.min(7, (width / Math.max(rows.length, 1)) * 0.5)),
          className: "chance",
        }),
        ...lines.map(({ key, className, strokeDasharray }) =>
          library.lineY(points, {
            x: "x",
            y: key,
            stroke: COLOURS.seen,
            strokeWidth: 2,
            strokeDasharray,
            className,
          }),
        ),
        // A line is named at its higher end, where the stems are short.
        ...lines.map(({ name, key }) => {
          const [first, last] = [points[0], points.at(-1)];
          const atBegin = (first?.[key] ?? 0) >= (last?.[key] ?? 0);
          return library.text(atBegin ? points.slice(0, 1) : points.slice(-1), {
            x: "x",
            y: key,
            text: [name],
            textAnchor: atBegin ? "start" : "end",
            dy: -9,
            ...READABLE,
          });
        }),
        library.dot(best, {
          x: "x",
          y: "chance",
          symbol: "diamond",
          r: 6,
          fill: COLOURS.halo,
          stroke: COLOURS.heat,
          strokeWidth: 2.5,
          className: "best-start",
        }),
        ...(chosen === null ? [] : chosenMarks(library, chosen, placeOf(chosen), { unit, rows })),
      ],
    },
    options,
  );
}

function chosenMarks(
  library: PlotLibrary,
  chosen: StartRow,
  at: Date | number,
  { unit, rows }: { readonly unit: FigureOptions["unit"]; readonly rows: readonly StartRow[] },
) {
  const place = rows.findIndex(
    ({ on, temperature }) => on === chosen.on && temperature === chosen.temperature,
  );
  const late = place > rows.length / 2;
  const name = chosen.temperature === null ? shortDate(chosen.on) : startText(chosen, unit);
  return [
    library.ruleX([at], {
      stroke: COLOURS.limit,
      strokeWidth: 1.5,
      strokeDasharray: "5 3",
      className: "chosen",
    }),
    library.text([at], {
      x: [at],
      text: [`chosen: ${name}`],
      frameAnchor: "top",
      textAnchor: late ? "end" : "start",
      dx: late ? -4 : 4,
      dy: -26,
      fill: "currentColor",
    }),
  ];
}

function captionOf(someUnknown: boolean): string {
  const parts = [
    "Each stem is the chance of what is aimed at; the diamond is the best",
    "dashes: chance that an animal is too early; dots: too late",
  ];
  if (someUnknown) parts.push("no stem: the chance is not known");
  return `${parts.join("; ")}.`;
}
