import { givenList } from "../../given.ts";
import { longDate } from "../dates.ts";
import { short } from "../display-unit.ts";
import type { OutlookRow } from "./outlook-rows.ts";

/** How the window narrows, in words: its first and last width with the log and without it. */
export function describeWindowWidths(rows: readonly OutlookRow[]): string {
  givenList(rows, ["rows"]);
  const known = rows.filter((row) => row.windowDays !== null);
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined) return "No window is known on any day.";
  const without = rows.filter((row) => row.windowDaysWithoutLog !== null);
  const [start, end] = [without[0], without.at(-1)];
  const rest =
    start === undefined || end === undefined
      ? ""
      : ` Without it, it goes from ${widthText(start.windowDaysWithoutLog)} to ${widthText(end.windowDaysWithoutLog)}.`;
  return (
    `With the log the window goes from ${widthText(first.windowDays)} on ${longDate(first.day)} to ` +
    `${widthText(last.windowDays)} on ${longDate(last.day)}.${rest}`
  );
}

/** The belief in the pace in words: where it begins, where it ends, and from when on it leaves 1 behind. */
export function describePaces(rows: readonly OutlookRow[]): string {
  givenList(rows, ["rows"]);
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return "There is no belief to show.";
  const since = sureSince(rows);
  const sure =
    since === null
      ? "On the last day a pace of 1 is still between the outer points."
      : `From ${longDate(since.day)} on, a pace of 1 lies outside the outer points: the animals are ${since.paceLow > 1 ? "slower" : "faster"} than the constants say.`;
  return `The pace on ${longDate(first.day)} is ${paceText(first)}; on ${longDate(last.day)} ${paceText(last)}. ${sure}`;
}

/**
 * The first day from which on, to the last of the rows, a pace of 1 lies outside the 10 and 90 % points, always on
 * the same side; `null` when there is none.
 */
export function sureSince(rows: readonly OutlookRow[]): OutlookRow | null {
  givenList(rows, ["rows"]);
  const sideOf = ({ paceLow, paceHigh }: OutlookRow): number => Number(paceLow > 1) - Number(paceHigh < 1);
  const last = rows.at(-1);
  if (last === undefined || sideOf(last) === 0) return null;
  const unsure = rows.findLastIndex((row) => sideOf(row) !== sideOf(last));
  return rows[unsure + 1] ?? null;
}

function widthText(days: number | null): string {
  return days === null ? "an unknown width" : `${short(days)} days`;
}

function paceText({ paceLow, paceMiddle, paceHigh }: OutlookRow): string {
  return `${paceMiddle.toFixed(2)} (${paceLow.toFixed(2)} to ${paceHigh.toFixed(2)})`;
}
