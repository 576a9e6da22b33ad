import type { IsoInstant, Window } from "../../forecast/question/result.ts";
import { noonOf, shortDate, wallClock } from "../dates.ts";
import type { SeenOn } from "./stage-window-rows.ts";
import type { UpdatedWindowRow } from "./updated-window-rows.ts";

interface Bar {
  readonly name: string;
  readonly from: Date;
  readonly to: Date;
  readonly expected: Date | null;
  readonly open: boolean;
}

/** What is drawn of a row. @internal */
export interface UpdatedWindowLine {
  readonly name: string;
  readonly dates: string;
  readonly first: Bar | null;
  readonly now: Bar | null;
  readonly seen: readonly Diamond[];
  readonly later: readonly Diamond[];
  readonly aside: readonly Diamond[];
  /** From the leftmost to the rightmost thing drawn, what was kept aside left out: it can lie anywhere; `null` for nothing. */
  readonly span: readonly [Date, Date] | null;
}

interface Diamond {
  readonly name: string;
  readonly at: Date;
  readonly radius: number;
}

/** What is drawn of a row: nothing of a window without any instant. @internal */
export function lineOf({ name, first, now, seen, later, aside }: UpdatedWindowRow): UpdatedWindowLine {
  const diamonds = (days: readonly SeenOn[]): Diamond[] =>
    days.map(({ day, count }) => ({ name, at: noonOf(day), radius: 2.5 + 1.2 * Math.sqrt(count) }));
  const parts = { first: barOf(name, first), now: now === null ? null : barOf(name, now) };
  const marks = { seen: diamonds(seen), later: diamonds(later) };
  const ends = [parts.first, parts.now].flatMap((bar) => (bar === null ? [] : [bar.from, bar.to]));
  const drawn = [...ends, ...[...marks.seen, ...marks.later].map(({ at }) => at)].sort(
    (a, b) => Number(a) - Number(b),
  );
  const [left, right] = [drawn[0], drawn.at(-1)];
  const span = left === undefined || right === undefined ? null : ([left, right] as const);
  return { name, ...parts, ...marks, aside: diamonds(aside), span, dates: datesOf(now, seen) };
}

function barOf(name: string, { early, expected, late }: Window): Bar | null {
  const [start, end] = [early ?? expected, late ?? expected ?? early];
  if (start === null || end === null) return null;
  const middle = expected === null ? null : wallClock(expected);
  return { name, from: wallClock(start), to: wallClock(end), expected: middle, open: late === null };
}

function datesOf(now: Window | null, seen: readonly SeenOn[]): string {
  if (now === null) return seen.length === 0 ? "behind them" : `seen from ${shortDate(seen[0]?.day ?? "")}`;
  const date = (at: IsoInstant | null): string => (at === null ? "?" : shortDate(at));
  // Within one month its name once is enough.
  const sameMonth = now.early?.slice(0, 7) === now.late?.slice(0, 7);
  const early = sameMonth ? date(now.early).replace(/ .*/, "") : date(now.early);
  return `${date(now.expected)} (${early} – ${date(now.late)})`;
}
