import { givenList } from "../../given.ts";
import type { Window } from "../../forecast/question/result.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import { capitalised } from "../../plain-words.ts";
import { longDate } from "../dates.ts";
import { seenText } from "./stage-window-words.ts";
import type { UpdatedWindowRow } from "./updated-window-rows.ts";

/** The windows of now and of the first day in words, one sentence a row. */
export function describeUpdatedWindows(rows: readonly UpdatedWindowRow[], today: CivilDay): string {
  givenList(rows, ["rows"]);
  if (rows.length === 0) return "There are no stages to show.";
  return [`As seen on ${longDate(today)}.`, ...rows.map(describeRow)].join(" ");
}

function describeRow({ name, first, now, absence, seen, later, aside }: UpdatedWindowRow): string {
  const parts = [now === null ? "behind them" : windowText(now), `on the first day ${windowText(first)}`];
  if (seen.length > 0) parts.push(`seen on ${seenText(seen)}`);
  if (later.length > 0) parts.push(`to be seen on ${seenText(later)}`);
  if (aside.length > 0) parts.push(`kept aside: ${seenText(aside)}`);
  return `${capitalised(name)}: ${parts.join("; ")}.${absence === null ? "" : ` ${absence}`}`;
}

function windowText({ early, expected, late }: Window): string {
  if (expected === null) return early === null ? "no date" : `from ${longDate(early)} on`;
  const about = `about ${longDate(expected)}`;
  if (late === null) return `${about}, with a late end beyond the temperatures`;
  return early === null
    ? `${about}, to ${longDate(late)}`
    : `${about}, ${longDate(early)} to ${longDate(late)}`;
}
