import { type CivilDay, addDays } from "../time/civil-day.ts";
import { shortDate, wallClock } from "./dates.ts";
import { COLOURS, type PlotLibrary } from "./figure.ts";

/**
 * An upright rule at the end of a day, with its name on the side that has room, above the frame.
 * @param begin Begin of the time axis.
 * @param end End of the time axis.
 * @internal
 */
export function todayRule(library: PlotLibrary, today: CivilDay, begin: Date, end: Date) {
  const at = wallClock(addDays(today, 1));
  const late = Number(at) - Number(begin) > (Number(end) - Number(begin)) / 2;
  return [
    library.ruleX([at], { stroke: COLOURS.limit, strokeDasharray: "2 3", className: "today" }),
    library.text([at], {
      x: [at],
      text: [`evening of ${shortDate(today)}`],
      frameAnchor: "top",
      textAnchor: late ? "end" : "start",
      dx: late ? -4 : 4,
      dy: -14,
      fill: "currentColor",
    }),
  ];
}
