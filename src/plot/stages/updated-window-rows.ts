import { given } from "../../given.ts";
import type { Forecast, Window } from "../../forecast/question/result.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import { type LoggedStage, type SeenOn, type StageWindowRow, stageWindowRows } from "./stage-window-rows.ts";

/** One begin as it was predicted first and as it is predicted now, beside what was seen. */
export interface UpdatedWindowRow {
  readonly begins: StageWindowRow["begins"];
  readonly name: string;
  readonly first: Window;
  /** `null` when the forecast of now goes on from this stage or a later one, so does not predict it any more. */
  readonly now: Window | null;
  /** Why one of the instants of now is `null`; `null` where none is. */
  readonly absence: string | null;
  /** The days up to today on which the log has it. */
  readonly seen: readonly SeenOn[];
  /** The days after today on which the log has it: what nobody knows yet. */
  readonly later: readonly SeenOn[];
  /** The days of entries that were kept aside because they contradict the others. */
  readonly aside: readonly SeenOn[];
}

/**
 * The windows of a first forecast, each beside that of a later one.
 * @param first The forecast of the first day; its stages are the rows.
 * @param now The forecast of today.
 * @param options.log Entries of a log, those after today included. Default none.
 * @param options.aside Entries that were kept aside, which `log` does not have. Default none.
 * @param options.today What the log has up to the end of this day was known.
 */
export function updatedWindowRows(
  first: Forecast,
  now: Forecast,
  options: {
    readonly log?: readonly LoggedStage[];
    readonly aside?: readonly LoggedStage[];
    readonly today: CivilDay;
  },
): UpdatedWindowRow[] {
  given(options, ["options"], "an object with today", "today");
  const { log = [], aside = [], today } = options;
  const updated = new Map(stageWindowRows(now).map((row) => [row.begins, row]));
  const keptAside = new Map(stageWindowRows(first, aside).map((row) => [row.begins, row.seen]));
  return stageWindowRows(first, log).map(({ begins, name, seen, ...window }) => {
    const row = updated.get(begins);
    return {
      begins,
      name,
      first: windowOf(window),
      now: row === undefined ? null : windowOf(row),
      absence: row?.absence ?? null,
      seen: seen.filter(({ day }) => day <= today),
      later: seen.filter(({ day }) => day > today),
      aside: keptAside.get(begins) ?? [],
    };
  });
}

function windowOf({ early, expected, late }: Window): Window {
  return { early, expected, late };
}
