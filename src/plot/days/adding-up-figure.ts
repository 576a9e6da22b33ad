import { givenList } from "../../given.ts";
import type { AccumulatedDay } from "../../clock/accumulate.ts";
import { counted } from "../../plain-words.ts";
import { addDays } from "../../time/civil-day.ts";
import type { TemperatureUnit } from "../../units.ts";
import { dayAxis, longDate, noonOf, noonTicks, wallClock } from "../dates.ts";
import { short, unitOf } from "../display-unit.ts";
import {
  COLOURS,
  type Figure,
  type FigureOptions,
  type PlotLibrary,
  READABLE,
  drawFigure,
  frameOf,
} from "../figure.ts";

/**
 * Days adding up: each day is a block as high as its degree-days and stands on the days before it, so that its
 * top is the running total.
 * @param library Observable Plot.
 * @param days From `accumulateDegreeDays`.
 */
export function addingUpFigure(
  library: PlotLibrary,
  days: readonly AccumulatedDay[],
  options: FigureOptions = {},
): Figure {
  const { width, display: unit } = frameOf(library, days, options);
  const blocks = days.map(({ day, degreeDays, total }) => ({
    x: noonOf(day),
    begin: wallClock(day),
    end: wallClock(addDays(day, 1)),
    from: unit.sum(total - degreeDays),
    to: unit.sum(total),
    text: `+${short(unit.sum(degreeDays))}`,
  }));
  const [first, last] = [days[0], days.at(-1)];
  const room = (width - 60) / Math.max(1, days.length);
  const ticks = noonTicks(first?.day, last?.day, width - 60 - room);
  return drawFigure(
    library,
    {
      ariaLabel: `Degree-days of each day and their running total, in ${unit.degreeDay}`,
      ariaDescription: describeAddingUp(days, options),
      caption:
        "Each block is one day, as high as what it counts, and stands on the days before it: its top is the running total.",
      height: 280,
      marginLeft: 44,
      marginRight: 16,
      marginTop: 30,
      marginBottom: 34,
      x: dayAxis(ticks),
      y: { label: unit.degreeDay, nice: true, zero: true, tickSize: 4, labelArrow: "none" },
      marks: [
        library.ruleY([0], { stroke: COLOURS.limit }),
        library.rect(blocks, {
          x1: "begin",
          x2: "end",
          y1: "from",
          y2: "to",
          insetLeft: 1,
          insetRight: 1,
          fill: COLOURS.heat,
          fillOpacity: 0.4,
          stroke: COLOURS.heat,
          strokeWidth: 1.5,
          className: "day-block",
        }),
        ...(room < 38
          ? []
          : [
              library.text(blocks, {
                x: "x",
                y: "to",
                text: "text",
                dy: -9,
                ...READABLE,
                className: "block-sum",
              }),
            ]),
      ],
    },
    options,
  );
}

/** Days adding up in words: how many, the least and the most that one counts, and the total. */
export function describeAddingUp(
  days: readonly AccumulatedDay[],
  options: { readonly unit?: TemperatureUnit } = {},
): string {
  givenList(days, ["days"], "a list of days");
  const unit = unitOf(options);
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return "There are no days to add up.";
  const told = (day: AccumulatedDay): string => `${short(unit.sum(day.degreeDays))} on ${longDate(day.day)}`;
  const least = days.reduce((a, b) => (b.degreeDays < a.degreeDays ? b : a));
  const most = days.reduce((a, b) => (b.degreeDays > a.degreeDays ? b : a));
  const range =
    days.length < 2 ? "" : ` The least that a day counts is ${told(least)}, the most ${told(most)}.`;
  return (
    `From ${longDate(first.day)} to ${longDate(last.day)} ${last.day.slice(0, 4)}, ` +
    `${counted(days.length, "day adds", "days add")} up to ${short(unit.sum(last.total))} ${unit.degreeDay}.${range}`
  );
}
