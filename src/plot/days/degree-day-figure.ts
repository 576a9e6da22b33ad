import { givenList } from "../../given.ts";
import type { IsoInstant } from "../../forecast/question/result.ts";
import { addDays } from "../../time/civil-day.ts";
import { dayAxis, dayTicks, longDate, wallClock } from "../dates.ts";
import type { DegreeDayRow, StageTotalRow } from "./degree-day-rows.ts";
import { type DisplayUnit, short, thresholdText, unitOf } from "../display-unit.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  READABLE,
  drawFigure,
  frameOf,
} from "../figure.ts";

/** Options of {@link degreeDayFigure}. */
export interface DegreeDayFigureOptions extends FigureOptions {
  /** Stages to mark on the curve, from `stageTotalRows`. Default none. */
  readonly stages?: readonly StageTotalRow[];
}

/** Dash patterns that tell curves apart without colour, for up to five pairs of thresholds. */
const DASHES = ["none", "7 3", "2 2", "8 3 2 3", "1 3"];

/**
 * Degree-days adding up, with a dot and a name where each stage begins. Every pair of thresholds is a curve of
 * its own, with its own dash and its name at the end.
 * @param library Observable Plot.
 * @param rows From {@link degreeDayRows}.
 */
export function degreeDayFigure(
  library: PlotLibrary,
  rows: readonly DegreeDayRow[],
  options: DegreeDayFigureOptions = {},
): Figure {
  const { width, display: unit } = frameOf(library, rows, options);
  const { stages = [] } = options;
  const curves = curvesOf(rows, unit, stages[0]?.at);
  const [begin, end] = [curves[0]?.points[0]?.x, curves[0]?.points.at(-1)?.x];
  const ticks = begin && end ? dayTicks(begin, end, width - 140) : [];
  const height = Math.max(280, 60 + stages.length * 30);
  const dots = stages.map((stage) => ({ ...stage, x: wallClock(stage.at), y: unit.sum(stage.total) }));
  // The found stage begins the curve and needs no name. Names stand to the right of their dots, or to the left
  // where the next dot follows so close that they would meet.
  const crowded = (i: number): boolean =>
    (dots[i + 1]?.y ?? Infinity) - (dots[i]?.y ?? 0) < 0.06 * (dots.at(-1)?.y ?? 0);
  const left = dots
    .filter((_, i) => i > 0 && crowded(i))
    .map((dot) => ({ ...dot, name: dot.name.replace(/ \(.*\)$/, "") }));
  const right = dots.filter((_, i) => i > 0 && !crowded(i));
  const names = endNames(curves, height, unit);
  // Room for the names of curves, or for the name beside the last dot, as far as the axis does not run on past it.
  const [lastDot] = right.slice(-1);
  const past =
    lastDot && begin && end ? (Number(end) - Number(lastDot.x)) / (Number(end) - Number(begin)) : 1;
  const widest = Math.max(0, ...names.map(({ name }) => name.length));
  const marginRight =
    16 + Math.max(6.8 * widest, 12 + 6.8 * (lastDot?.name.length ?? 0) - past * (width - 60), 0);
  return drawFigure(
    library,
    {
      ariaLabel: `Degree-days adding up, in ${unit.degreeDay}`,
      ariaDescription: describeDegreeDays(rows, options),
      caption: captionOf(stages.length > 0, curves.length),
      height,
      marginLeft: 44,
      marginRight,
      marginTop: 26,
      marginBottom: 34,
      x: dayAxis(ticks),
      y: {
        label: `degree-days (${unit.degreeDay})`,
        nice: true,
        zero: true,
        tickSize: 4,
        labelArrow: "none",
      },
      marks: [
        library.ruleY([0], { stroke: COLOURS.limit }),
        ...curves.map(({ points }, i) =>
          library.lineY(points, {
            x: "x",
            y: "y",
            stroke: COLOURS.heat,
            strokeWidth: 2.5,
            strokeLinecap: "butt",
            strokeDasharray: DASHES[i % DASHES.length] ?? "none",
            className: "running-total",
          }),
        ),
        ...names.map(({ name, end, dy }) =>
          library.text([end], { x: "x", y: "y", text: [name], textAnchor: "start", dx: 8, dy, ...READABLE }),
        ),
        library.dot(dots, {
          x: "x",
          y: "y",
          r: 4.5,
          fill: COLOURS.halo,
          stroke: COLOURS.heat,
          strokeWidth: 2,
          className: "stage-begin",
        }),
        library.text(left, { x: "x", y: "y", text: "name", textAnchor: "end", dx: -9, dy: -5, ...READABLE }),
        library.text(right, { x: "x", y: "y", text: "name", textAnchor: "start", dx: 9, dy: 7, ...READABLE }),
      ],
    },
    options,
  );
}

/** The key numbers of {@link degreeDayFigure} in words: the end of each curve, and where the stages begin. */
export function describeDegreeDays(
  rows: readonly DegreeDayRow[],
  options: Pick<DegreeDayFigureOptions, "stages" | "unit"> = {},
): string {
  givenList(rows, ["rows"]);
  const unit = unitOf(options);
  const sentences = curvesOf(rows, unit).map(
    ({ name, last }) =>
      `By the end of ${longDate(last.day)} ${short(unit.sum(last.total))} ${unit.degreeDay} had added up ${name}.`,
  );
  const begun = (options.stages ?? [])
    .slice(1)
    .map(({ name, at, total }) => `${name} at ${short(unit.sum(total))} on ${longDate(at)}`);
  if (begun.length > 0) sentences.push(`The middle animal begins: ${begun.join("; ")}.`);
  return sentences.length > 0 ? sentences.join(" ") : "There are no degree-days to show.";
}

interface Curve {
  readonly name: string;
  readonly last: DegreeDayRow;
  readonly points: readonly { readonly x: Date; readonly y: number }[];
}

// One curve for each pair of thresholds, from zero at the find or the begin of the first day.
function curvesOf(rows: readonly DegreeDayRow[], unit: DisplayUnit, from?: IsoInstant): Curve[] {
  const groups = new Map<string, DegreeDayRow[]>();
  for (const row of rows) {
    const pair = [row.lower, row.upper, row.cutoff].join();
    const group = groups.get(pair);
    if (group) group.push(row);
    else groups.set(pair, [row]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first, last] = [group[0], group.at(-1)];
    if (!first || !last) return [];
    const points = group.map((row) => ({ x: wallClock(addDays(row.day, 1)), y: unit.sum(row.total) }));
    return [
      { name: nameOf(first, unit), last, points: [{ x: wallClock(from ?? first.day), y: 0 }, ...points] },
    ];
  });
}

// Short names of several curves for the right margin, at the height of their ends but a line of text apart.
function endNames(curves: readonly Curve[], height: number, unit: DisplayUnit) {
  if (curves.length < 2) return [];
  const ends = curves.flatMap(({ last, points }) =>
    points.slice(-1).map((end) => ({ end, name: shortNameOf(last, unit) })),
  );
  ends.sort((a, b) => b.end.y - a.end.y);
  const pixels = (height - 60) / (ends[0]?.end.y || 1);
  let previous = -Infinity;
  return ends.map(({ end, name }) => {
    const level = -end.y * pixels;
    previous = Math.max(level, previous + 15);
    return { end, name, dy: previous - level };
  });
}

function shortNameOf({ lower, upper }: DegreeDayRow, unit: DisplayUnit): string {
  return upper === null
    ? `above ${thresholdText(lower, unit)}`
    : `${short(unit.temperature(lower))} to ${thresholdText(upper, unit)}`;
}

function nameOf({ lower, upper, cutoff }: DegreeDayRow, unit: DisplayUnit): string {
  const above = `above ${thresholdText(lower, unit)}`;
  return upper === null || cutoff === "none"
    ? above
    : `${above}, ${cutoff} cutoff at ${thresholdText(upper, unit)}`;
}

function captionOf(withStages: boolean, curves: number): string {
  const parts = ["The curve is the running total since the find"];
  if (curves > 1) parts.push("each pair of thresholds has its own dash");
  if (withStages) parts.push("a ring marks where the middle animal begins a stage");
  return `${parts.join("; ")}.`;
}
