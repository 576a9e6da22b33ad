import { givenList } from "../../given.ts";
import { capitalised } from "../../plain-words.ts";
import { longDate } from "../dates.ts";
import type { SeenOn, StageWindowRow } from "./stage-window-rows.ts";

/** The windows in words, one sentence a row. */
export function describeStageWindows(rows: readonly StageWindowRow[]): string {
  givenList(rows, ["rows"]);
  return rows.map(describeRow).join(" ");
}

function describeRow({ name, early, expected, late, absence, seen: days }: StageWindowRow): string {
  const seen = days.length === 0 ? "" : `; seen on ${seenText(days)}`;
  if (expected === null)
    return `${capitalised(name)}: no date${seen}.${absence === null ? "" : ` ${absence}`}`;
  const window =
    early !== null && late !== null
      ? `, between ${longDate(early)} and ${longDate(late)}`
      : late === null
        ? ", with a late end beyond the temperatures"
        : "";
  return `${capitalised(name)}: about ${longDate(expected)}${window}${seen}.`;
}

/** Days on which something was seen, with how many: `4 July (3)`. @internal */
export function seenText(days: readonly SeenOn[]): string {
  return days.map(({ day, count }) => `${longDate(day)} (${count})`).join(", ");
}
