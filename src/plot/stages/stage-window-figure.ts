import { greatest, least } from "../../numeric/extremes.ts";
import type { IsoInstant } from "../../forecast/question/result.ts";
import { dayAxis, dayTicks, noonOf, shortDate, wallClock } from "../dates.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  READABLE,
  drawFigure,
  frameOf,
} from "../figure.ts";
import type { StageWindowRow } from "./stage-window-rows.ts";
import { describeStageWindows } from "./stage-window-words.ts";

/** Options of {@link stageWindowFigure}. */
export interface StageWindowFigureOptions extends Omit<FigureOptions, "unit"> {
  /** Where the time axis begins, such as `forecast.found.at`. Default: the earliest window. */
  readonly from?: IsoInstant;
}

/**
 * When each stage begins: a bar from the early to the late animal, an upright tick for the middle one, and a
 * diamond for each day on which a log has it, larger for more animals. Name and dates stand beside the bar.
 * @param library Observable Plot.
 * @param rows From {@link stageWindowRows}; rows without any date are named in the description only.
 */
export function stageWindowFigure(
  library: PlotLibrary,
  rows: readonly StageWindowRow[],
  options: StageWindowFigureOptions = {},
): Figure {
  const { width } = frameOf(library, rows, options);
  const { from } = options;
  const bars = barsOf(rows);
  const seen = bars.flatMap((bar) => bar.seen.map((one) => ({ ...one, name: bar.name })));
  const times = [...bars.flatMap((bar) => [bar.from, bar.to]), ...seen.map((one) => one.at)].map(Number);
  const begin = from === undefined ? least(times) : wallClock(from).getTime();
  const end = greatest([begin, ...times]);
  // Without a date there is no axis.
  const domain = Number.isFinite(begin) ? [new Date(begin), new Date(end)] : [];
  const ticks = domain.length === 0 ? [] : dayTicks(new Date(begin), new Date(end), width - 40);
  // A label stands to the right of its bar where it has room there or more room than to the left.
  const pixelsPerMs = (width - 40) / (end - begin);
  const hasRoom = ({ name, dates, leftmost, rightmost }: (typeof bars)[number]): boolean => {
    const [left, right] = [Number(leftmost) - begin, end - Number(rightmost)];
    return right >= left || right * pixelsPerMs > 6.8 * Math.max(name.length, dates.length);
  };
  const early = bars.filter(hasRoom);
  const late = bars.filter((bar) => !hasRoom(bar));
  const label = { y: "name", ...READABLE } as const;
  const labels = (side: typeof bars, x: "rightmost" | "leftmost", anchor: "start" | "end", dx: number) => [
    library.text(side, { ...label, x, text: "name", textAnchor: anchor, dx, dy: -7, fontWeight: 600 }),
    library.text(side, { ...label, x, text: "dates", textAnchor: anchor, dx, dy: 8 }),
  ];
  return drawFigure(
    library,
    {
      ariaLabel: "Predicted begin of each stage",
      ariaDescription: describeStageWindows(rows),
      caption: captionOf(rows),
      height: 46 + bars.length * 42,
      marginLeft: 12,
      insetLeft: 6,
      insetRight: 6,
      marginRight: 16,
      marginTop: 8,
      marginBottom: 34,
      x: { ...dayAxis(ticks), domain },
      y: { type: "band", domain: bars.map((bar) => bar.name), axis: null },
      r: { type: "identity" },
      marks: [
        library.gridX(ticks),
        library.ruleY(bars, {
          y: "name",
          dy: -7,
          x1: "from",
          x2: "to",
          stroke: COLOURS.heat,
          strokeOpacity: 0.45,
          strokeWidth: 11,
          className: "window",
        }),
        library.tickX(
          bars.filter((bar) => bar.expected !== null),
          {
            x: "expected",
            y: "name",
            stroke: COLOURS.heat,
            strokeWidth: 3,
            dy: -7,
            insetTop: 10,
            insetBottom: 10,
            className: "expected",
          },
        ),
        library.text(
          bars.filter((bar) => bar.open),
          {
            x: "to",
            y: "name",
            text: () => "…",
            textAnchor: "start",
            dx: 2,
            dy: -10,
            fill: COLOURS.heat,
            fontSize: 18,
            className: "open-end",
          },
        ),
        library.dot(seen, {
          x: "at",
          y: "name",
          dy: 11,
          symbol: "diamond",
          r: "radius",
          fill: COLOURS.halo,
          stroke: COLOURS.seen,
          strokeWidth: 2,
          className: "seen",
        }),
        ...labels(early, "rightmost", "start", 14),
        ...labels(late, "leftmost", "end", -12),
      ],
    },
    options,
  );
}

// What is drawn of a row: nothing when no instant is known.
function barsOf(rows: readonly StageWindowRow[]) {
  return rows.flatMap((row) => {
    const { early, expected, late, name } = row;
    const start = early ?? expected;
    const end = late ?? expected ?? early;
    if (start === null || end === null) return [];
    const [from, to] = [wallClock(start), wallClock(end)];
    const seen = row.seen.map(({ day, count }) => ({
      at: noonOf(day),
      radius: 2.5 + 1.2 * Math.sqrt(count),
    }));
    const ends = [from, to, ...seen.map(({ at }) => at)].map(Number);
    return [
      {
        name,
        from,
        to,
        seen,
        open: late === null,
        expected: expected === null ? null : wallClock(expected),
        dates: datesOf(row),
        leftmost: new Date(least(ends)),
        rightmost: new Date(greatest(ends)),
      },
    ];
  });
}

function datesOf({ early, expected, late }: StageWindowRow): string {
  const middle = expected === null ? "?" : shortDate(expected);
  const end = late === null ? "later" : shortDate(late);
  if (early === null) return `${middle} (? – ${end})`;
  // Within one month its name once is enough.
  const start =
    late !== null && early.slice(0, 7) === late.slice(0, 7)
      ? shortDate(early).split(" ")[0]
      : shortDate(early);
  return `${middle} (${start} – ${end})`;
}

function captionOf(rows: readonly StageWindowRow[]): string {
  const parts = ["Bar: from the early to the late animal; upright tick: the middle animal"];
  if (rows.some((row) => row.seen.length > 0))
    parts.push("diamond: seen, from the log, larger for more animals");
  if (rows.some((row) => row.late === null && row.early !== null))
    parts.push("three dots: beyond the temperatures at hand");
  const undated = rows.filter((row) => row.early === null && row.expected === null);
  if (undated.length > 0) parts.push(`without a date: ${undated.map((row) => row.name).join(", ")}`);
  return `${parts.join("; ")}.`;
}
