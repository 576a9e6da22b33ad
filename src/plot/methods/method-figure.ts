import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  READABLE,
  drawFigure,
  frameOf,
} from "../figure.ts";
import type { MethodDifferenceRow } from "./method-rows.ts";
import {
  type MethodMeasure,
  describeMethodDifferences,
  measureName,
  measureOf,
  measured,
  rowNames,
  signedText,
} from "./method-words.ts";

/** Options of {@link methodFigure}. */
export interface MethodFigureOptions extends FigureOptions {
  /** What the bars show. */
  readonly measure: MethodMeasure;
}

/** Pixels that the names of the methods take at least. */
const NAMES = 142;

/**
 * What each method says more or less than the reference, as a bar from it to the right or to the left with the
 * number at its end. Groups stand side by side, or one below the other where the figure is narrow.
 * @param library Observable Plot.
 * @param rows From {@link methodDifferenceRows}, one a method and group.
 */
export function methodFigure(
  library: PlotLibrary,
  rows: readonly MethodDifferenceRow[],
  options: MethodFigureOptions,
): Figure {
  const { width } = frameOf(library, rows, options);
  const { measure, display } = measureOf(options);
  const nameOf = rowNames(rows);
  const bars = rows.flatMap((row) => {
    const value = measured(row, measure, display);
    return value === null ? [] : [{ name: nameOf(row), group: row.group, value, text: signedText(value) }];
  });
  const unknown = rows
    .filter((row) => measured(row, measure, display) === null)
    .map((row) => ({ name: nameOf(row), group: row.group }));
  const groups = [...new Set(rows.map(({ group }) => group))];
  const names = [...new Set(rows.map(nameOf))];
  // Some seven pixels a letter.
  const room = names.reduce((most, { length }) => Math.max(most, 8 + 7 * length), NAMES);
  const beside = groups.length > 1 && width >= room + groups.length * 110;
  const facet = groups.length < 2 ? {} : beside ? { fx: "group" } : { fy: "group" };
  const panels = beside ? groups.length : 1;
  const most = bars.reduce((far, { value }) => Math.max(far, Math.abs(value)), 0) || 1;
  const panel = Math.max(90, (width - room - 12) / panels);
  // Numbers stand at the ends of the bars: the scale runs on so far that they find room there.
  const reach = most / Math.max(0.2, 1 - 84 / panel);
  const height = (beside || groups.length < 2 ? 1 : groups.length) * (names.length * 21 + 26) + 46;
  return drawFigure(
    library,
    {
      ariaLabel: `What each method says more or less, in ${measureName(measure, display)}`,
      ariaDescription: describeMethodDifferences(rows, options),
      caption: captionOf(measure, measureName(measure, display), unknown.length > 0),
      height,
      marginLeft: room,
      marginRight: 12,
      marginTop: groups.length > 1 ? 28 : 12,
      marginBottom: groups.length > 1 ? 8 : 34,
      // Side by side there is no room for an axis each; every bar has its number.
      x:
        groups.length > 1
          ? { domain: [-reach, reach], axis: null }
          : {
              domain: [-reach, reach],
              label: measureName(measure, display),
              labelArrow: "none",
              labelAnchor: "center",
              ticks: panel / 56,
              tickSize: 4,
            },
      y: { type: "band", domain: names, label: null, tickSize: 0, padding: 0.25 },
      fx: { domain: beside ? groups : [], label: null, axis: "top", padding: 0.06 },
      fy: { domain: beside || groups.length < 2 ? [] : groups, label: null, axis: null, padding: 0.14 },
      marks: [
        library.barX(bars, {
          x: "value",
          y: "name",
          ...facet,
          fill: COLOURS.heat,
          fillOpacity: 0.75,
          className: "method-difference",
        }),
        library.ruleX([0], { stroke: COLOURS.limit, strokeWidth: 1.5 }),
        ...[true, false].map((right) =>
          library.text(
            bars.filter(({ value }) => value >= 0 === right),
            {
              x: "value",
              y: "name",
              ...facet,
              text: "text",
              textAnchor: right ? "start" : "end",
              dx: right ? 5 : -5,
              ...READABLE,
            },
          ),
        ),
        library.text(unknown, {
          x: () => 0,
          y: "name",
          ...facet,
          text: () => (measure === "percent" ? "no percentage" : "not reached"),
          textAnchor: "start",
          dx: 5,
          ...READABLE,
          className: "no-difference",
        }),
        ...(beside || groups.length < 2
          ? []
          : [
              library.text(groups, {
                fy: (group: string) => group,
                text: (group: string) => group,
                frameAnchor: "top-left",
                dx: 6 - room,
                dy: -16,
                fontWeight: 600,
                ...READABLE,
              }),
            ]),
      ],
    },
    options,
  );
}

function captionOf(measure: MethodMeasure, name: string, unknown: boolean): string {
  const parts = [
    measure === "days"
      ? "A bar to the right: the method says so many days later than the reference; to the left: earlier"
      : `A bar to the right: the method counts so much more than the reference (${name}); to the left: less`,
  ];
  if (unknown)
    parts.push(measure === "percent" ? "without a bar: no percentage" : "without a bar: not reached");
  return `${parts.join("; ")}.`;
}
