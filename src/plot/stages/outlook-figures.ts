import { type CivilDay, addDays } from "../../time/civil-day.ts";
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
import type { OutlookRow } from "./outlook-rows.ts";
import { describePaces, describeWindowWidths } from "./outlook-words.ts";
import { todayRule } from "../today-rule.ts";

/** Options of {@link windowWidthFigure} and {@link paceFigure}. */
export interface OutlookFigureOptions extends Omit<FigureOptions, "unit"> {
  /** The day to mark. */
  readonly today: CivilDay;
  /** First and last day of the time axis, so that it stands still while rows come in. Default: those of the rows. */
  readonly days?: { readonly from: CivilDay; readonly to: CivilDay };
}

/**
 * How the window of a stage narrows from evening to evening: a full line with the log, a dashed one without.
 * @param library Observable Plot.
 * @param rows From {@link outlookRows}.
 */
export function windowWidthFigure(
  library: PlotLibrary,
  rows: readonly OutlookRow[],
  options: OutlookFigureOptions,
): Figure {
  frameOf(library, rows, options);
  const lines = [
    { name: "with the log", className: "with-log", dash: "none", of: (row: OutlookRow) => row.windowDays },
    {
      name: "without it",
      className: "without-log",
      dash: "7 4",
      of: (row: OutlookRow) => row.windowDaysWithoutLog,
    },
  ];
  const named = lines.map((line) => ({ ...line, points: pointsOf(rows, line.of) }));
  return evenings(library, rows, options, {
    ariaLabel: "Width of the window, in days, evening by evening",
    ariaDescription: describeWindowWidths(rows),
    caption: "Days between the early and the late animal; full line: with the log, dashed line: without it.",
    y: { label: "days", zero: true, nice: true, tickSize: 4, labelArrow: "none" },
    marks: [
      library.ruleY([0], { stroke: COLOURS.limit }),
      ...named.map(({ points, className, dash }) =>
        library.lineY(points, {
          x: "x",
          y: "y",
          stroke: COLOURS.heat,
          strokeWidth: dash === "none" ? 3 : 2,
          strokeDasharray: dash,
          strokeLinecap: "butt",
          className,
        }),
      ),
      ...named.map(({ points, className }) =>
        library.dot(points, { x: "x", y: "y", r: 1.5, fill: COLOURS.heat, className: `${className}-day` }),
      ),
      // The dashed line ends above the full one where the log says more than the weather.
      ...named.map(({ points, name, dash }) =>
        library.text(points.slice(-1), {
          x: "x",
          y: "y",
          text: [name],
          textAnchor: "end",
          dy: dash === "none" ? 14 : -12,
          ...READABLE,
        }),
      ),
    ],
  });
}

/**
 * What is believed of the pace from evening to evening: the line is the middle, the band runs from the 10 to the
 * 90 % point. At 1 the animals are as fast as the constants say.
 * @param library Observable Plot.
 * @param rows From {@link outlookRows}.
 */
export function paceFigure(
  library: PlotLibrary,
  rows: readonly OutlookRow[],
  options: OutlookFigureOptions,
): Figure {
  frameOf(library, rows, options);
  const points = rows.map((row) => ({ x: eveningOf(row.day), ...row }));
  const edge = { x: "x", stroke: COLOURS.limit, strokeWidth: 1.25 };
  return evenings(library, rows, options, {
    ariaLabel: "Belief in the pace, evening by evening",
    ariaDescription: describePaces(rows),
    caption:
      "Line: the middle of the belief; band: from its 10 to its 90 % point; dashes at 1: as fast as the constants say.",
    y: { label: "pace (above 1: slower)", nice: true, tickSize: 4, labelArrow: "none" },
    marks: [
      library.areaY(points, { x: "x", y1: "paceLow", y2: "paceHigh", fill: COLOURS.cool, fillOpacity: 0.35 }),
      library.lineY(points, { ...edge, y: "paceLow" }),
      library.lineY(points, { ...edge, y: "paceHigh" }),
      library.ruleY([1], { stroke: COLOURS.limit, strokeDasharray: "6 3" }),
      library.lineY(points, { x: "x", y: "paceMiddle", stroke: COLOURS.heat, strokeWidth: 3 }),
      ...(["paceLow", "paceMiddle", "paceHigh"] as const).map((y) =>
        library.dot(points, { x: "x", y, r: 1.5, fill: COLOURS.heat, className: y }),
      ),
    ],
  });
}

type Parts = Parameters<typeof drawFigure>[1];

// What both figures share: the axis of evenings, and the rule of today.
function evenings(
  library: PlotLibrary,
  rows: readonly OutlookRow[],
  options: OutlookFigureOptions,
  parts: Parts,
): Figure {
  const { width } = frameOf(library, rows, options);
  const { today, days } = options;
  const from = days?.from ?? rows[0]?.day ?? today;
  const to = days?.to ?? rows.at(-1)?.day ?? today;
  const [begin, end] = [eveningOf(from), eveningOf(to)];
  return drawFigure(
    library,
    {
      height: 250,
      marginLeft: 44,
      marginRight: 16,
      marginTop: 44,
      marginBottom: 34,
      ...parts,
      x: { ...dayAxis(dayTicks(begin, end, width - 60)), domain: [begin, end] },
      marks: [...(parts.marks ?? []), ...todayRule(library, today, begin, end)],
    },
    options,
  );
}

function pointsOf(rows: readonly OutlookRow[], of: (row: OutlookRow) => number | null) {
  return rows.flatMap((row) => {
    const y = of(row);
    return y === null ? [] : [{ x: eveningOf(row.day), y }];
  });
}

function eveningOf(day: CivilDay): Date {
  return wallClock(addDays(day, 1));
}
