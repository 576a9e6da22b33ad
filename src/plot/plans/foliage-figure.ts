import { given } from "../../given.ts";
import type { FoliageOutlook } from "../../rearing/plan/foliage-outlook.ts";
import { dayAxis, noonOf, noonTicks, shortDate } from "../dates.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  drawFigure,
  frameOf,
} from "../figure.ts";
import { describeFoliage } from "./foliage-words.ts";

/**
 * Leaves that are eaten on each day: a stem up to what is expected, and a thin line on to the most that it may be. Where
 * a supply does not last, the day is marked.
 * @param library Observable Plot.
 * @param outlook One of `dayPlan(...).foliage`.
 */
export function foliageFigure(
  library: PlotLibrary,
  outlook: FoliageOutlook,
  options: Omit<FigureOptions, "unit"> = {},
): Figure {
  given(outlook, ["outlook"], "an outlook of a day plan", "days", "food");
  const { width } = frameOf(library, outlook.days, options);
  const eating = outlook.days.flatMap(({ day, expected, most }) =>
    most > 0 ? [{ day, expected, most }] : [],
  );
  const days = eating.map((one) => ({ ...one, x: noonOf(one.day) }));
  const [first, last] = [days[0], days.at(-1)];
  const ticks = noonTicks(first?.day, last?.day, width - 72);
  const runsOut = outlook.runsOut === null ? [] : [noonOf(outlook.runsOut)];
  const late =
    first !== undefined && last !== undefined && Number(runsOut[0]) * 2 > Number(first.x) + Number(last.x);
  return drawFigure(
    library,
    {
      ariaLabel: `Leaves of ${outlook.food} eaten on each day`,
      ariaDescription: describeFoliage(outlook),
      caption:
        "Each stem: leaves expected for the day; thin line to the ring: the most it may be" +
        (runsOut.length === 0 ? "." : "; upright dashes: the first day on which those at hand do not last."),
      height: 240,
      marginLeft: 40,
      marginRight: 16,
      marginTop: 44,
      marginBottom: 34,
      insetLeft: 8,
      insetRight: 8,
      x: dayAxis(ticks),
      y: { label: "leaves a day", zero: true, nice: true, tickSize: 4, labelArrow: "none" },
      marks: [
        library.ruleY([0], { stroke: COLOURS.limit }),
        library.ruleX(days, { x: "x", y1: "expected", y2: "most", stroke: COLOURS.limit, strokeWidth: 1.5 }),
        library.ruleX(days, {
          x: "x",
          y1: 0,
          y2: "expected",
          stroke: COLOURS.heat,
          strokeWidth: Math.max(2, Math.min(9, (width / Math.max(days.length, 1)) * 0.5)),
          className: "leaves",
        }),
        library.dot(days, {
          x: "x",
          y: "most",
          r: 3,
          fill: COLOURS.halo,
          stroke: COLOURS.limit,
          strokeWidth: 1.5,
          className: "leaves-most",
        }),
        library.ruleX(runsOut, {
          stroke: COLOURS.seen,
          strokeWidth: 2,
          strokeDasharray: "5 3",
          className: "runs-out",
        }),
        library.text(runsOut, {
          x: runsOut,
          text: outlook.runsOut === null ? [] : [`not enough from ${shortDate(outlook.runsOut)}`],
          frameAnchor: "top",
          textAnchor: late ? "end" : "start",
          dx: late ? -4 : 4,
          dy: -14,
          fill: "currentColor",
        }),
      ],
    },
    options,
  );
}
