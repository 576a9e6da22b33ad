import { type CivilDay, addDays } from "../../time/civil-day.ts";
import { DAY_MS } from "../../time/zone.ts";
import { dayAxis, dayTicks, wallClock } from "../dates.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  READABLE,
  drawFigure,
  frameOf,
} from "../figure.ts";
import { todayRule } from "../today-rule.ts";
import { type UpdatedWindowLine, lineOf } from "./updated-window-line.ts";
import type { UpdatedWindowRow } from "./updated-window-rows.ts";
import { describeUpdatedWindows } from "./updated-window-words.ts";

/** Options of {@link updatedWindowFigure}. */
export interface UpdatedWindowFigureOptions extends Omit<FigureOptions, "unit"> {
  /** The day whose evening the forecast is of. */
  readonly today: CivilDay;
  /** First and last day of the time axis, so that it stands still from day to day. Default: what is drawn. */
  readonly days?: { readonly from: CivilDay; readonly to: CivilDay };
}

/**
 * When each stage begins, as seen from one day: a dark bar for the window of that day over a pale, wide one
 * for that of the first day, an upright tick for the middle animal of each, a full diamond for what a log had
 * by then and a hollow one for what it has later.
 * @param library Observable Plot.
 * @param rows From {@link updatedWindowRows}.
 */
export function updatedWindowFigure(
  library: PlotLibrary,
  rows: readonly UpdatedWindowRow[],
  options: UpdatedWindowFigureOptions,
): Figure {
  const { width } = frameOf(library, rows, options);
  const { today, days } = options;
  const lines = rows.map(lineOf);
  const times = [...lines.flatMap(({ span }) => span ?? []), wallClock(addDays(today, 1))].map(Number);
  if (days !== undefined)
    times.push(wallClock(days.from).getTime(), wallClock(addDays(days.to, 1)).getTime());
  const begin = times.reduce((a, b) => Math.min(a, b));
  const end = times.reduce((a, b) => Math.max(a, b));
  const ticks = dayTicks(new Date(begin), new Date(end), width - 40);
  // A name stands right of what is drawn where it has room there or more room than to the left.
  const pixels = (width - 40) / (end - begin);
  // Where nothing is drawn, it stands at the begin.
  const spanOf = ({ span }: UpdatedWindowLine) => span ?? ([new Date(begin), new Date(begin)] as const);
  const isRight = (line: UpdatedWindowLine): boolean => {
    const [left, right] = spanOf(line);
    const { length } = line.name.length > line.dates.length ? line.name : line.dates;
    return end - Number(right) >= Number(left) - begin || (end - Number(right)) * pixels > 6.8 * length;
  };
  const names = (right: boolean) => {
    const side = lines.filter((line) => isRight(line) === right);
    const at = {
      x: (line: UpdatedWindowLine) => spanOf(line)[right ? 1 : 0],
      y: "name",
      dx: right ? 13 : -13,
    };
    const text = { ...READABLE, textAnchor: right ? "start" : "end" } as const;
    return [
      library.text(side, { ...at, ...text, text: "name", dy: -8, fontWeight: 600 }),
      library.text(side, { ...at, ...text, text: "dates", dy: 7 }),
    ];
  };
  const bar = (which: "first" | "now", strokeWidth: number, strokeOpacity: number, stroke: string) =>
    library.ruleY(
      lines.flatMap((line) => line[which] ?? []),
      { y: "name", x1: "from", x2: "to", dy: -7, stroke, strokeOpacity, strokeWidth, className: which },
    );
  const tick = (which: "first" | "now", inset: number, strokeWidth: number, stroke: string) =>
    library.tickX(
      lines.flatMap((line) => (line[which]?.expected == null ? [] : [line[which]])),
      {
        x: "expected",
        y: "name",
        stroke,
        strokeWidth,
        dy: -7,
        insetTop: inset,
        insetBottom: inset,
        className: `${which}-expected`,
      },
    );
  const diamonds = (which: "seen" | "later") =>
    library.dot(
      lines.flatMap((line) => line[which]),
      {
        x: "at",
        y: "name",
        dy: 12,
        symbol: "diamond",
        r: "radius",
        fill: which === "seen" ? COLOURS.seen : COLOURS.halo,
        stroke: COLOURS.seen,
        strokeWidth: which === "seen" ? 2 : 1.25,
        className: which,
      },
    );
  return drawFigure(
    library,
    {
      ariaLabel: "Begin of each stage, as seen from one day",
      ariaDescription: describeUpdatedWindows(rows, today),
      caption: captionOf(rows),
      height: 62 + rows.length * 44,
      marginLeft: 12,
      insetLeft: 6,
      insetRight: 6,
      marginRight: 16,
      marginTop: 24,
      marginBottom: 34,
      x: { ...dayAxis(ticks), domain: [new Date(begin), new Date(end)] },
      y: { type: "band", domain: rows.map(({ name }) => name), axis: null },
      r: { type: "identity" },
      marks: [
        library.gridX(ticks),
        bar("first", 19, 0.4, COLOURS.cool),
        tick("first", 9, 1.5, COLOURS.limit),
        ...todayRule(library, today, new Date(begin), new Date(end)),
        bar("now", 9, 0.75, COLOURS.heat),
        tick("now", 11, 3, COLOURS.heat),
        library.text(
          lines.flatMap(({ now }) => (now?.open === true ? [now] : [])),
          {
            x: "to",
            y: "name",
            text: () => "…",
            textAnchor: "start",
            dx: 2,
            dy: -10,
            fontSize: 18,
            className: "open-end",
          },
        ),
        diamonds("later"),
        library.dot(
          // A date that is wrong by months is in the words, not on the axis.
          lines.flatMap(({ aside }) => aside.filter(({ at }) => +at > begin - DAY_MS && +at < end + DAY_MS)),
          {
            x: "at",
            y: "name",
            dy: 12,
            symbol: "times",
            r: 4,
            stroke: COLOURS.seen,
            strokeWidth: 2.5,
            className: "aside",
          },
        ),
        diamonds("seen"),
        ...names(true),
        ...names(false),
      ],
    },
    options,
  );
}

function captionOf(rows: readonly UpdatedWindowRow[]): string {
  const parts = [
    "Dark bar: from the early to the late animal as seen today, with a tick for the middle one; pale bar behind it: as seen on the first day",
  ];
  if (rows.some(({ seen, later }) => seen.length + later.length > 0))
    parts.push("full diamond: in the log by today; hollow: in the log later; larger for more animals");
  if (rows.some(({ aside }) => aside.length > 0)) parts.push("cross: kept aside");
  if (rows.some(({ now }) => now !== null && now.late === null && now.early !== null))
    parts.push("three dots: beyond the temperatures at hand");
  return `${parts.join("; ")}.`;
}
