import { type Column, chooser } from "../table/columns.ts";
import { headerMeaning } from "../table/header-words.ts";
import type { LogOptions } from "../options.ts";

/** Columns of a log of what was seen. */
export interface LogColumns {
  readonly stage: Column;
  readonly on: Column;
  readonly time: Column | null;
  readonly count: Column | null;
  readonly cohort: Column | null;
  readonly note: Column | null;
  /** Whether the animals were seen, died or were lost. */
  readonly fate: Column | null;
  /** The last look at which the stage had not begun. */
  readonly notYet: Column | null;
  /** The row that a row corrects or retracts. */
  readonly corrects: Column | null;
  /** When a row was written. */
  readonly written: Column | null;
}

type LogField = keyof LogColumns;

const LOG_HEADERS = new Map<string, LogField>([
  ["stage", "stage"],
  ["event", "stage"],
  ["seen", "stage"],
  ["seen on", "on"],
  ["on", "on"],
  ["date", "on"],
  ["day", "on"],
  ["date seen", "on"],
  ["time", "time"],
  ["time of day", "time"],
  ["count", "count"],
  ["number", "count"],
  ["how many", "count"],
  ["cohort", "cohort"],
  ["animals", "cohort"],
  ["animal", "cohort"],
  ["group", "cohort"],
  ["batch", "cohort"],
  ["cage", "cohort"],
  ["note", "note"],
  ["notes", "note"],
  ["remark", "note"],
  ["remarks", "note"],
  ["not yet", "notYet"],
  ["not yet on", "notYet"],
  ["last look", "notYet"],
  ["last look without", "notYet"],
  ["fate", "fate"],
  ["what", "fate"],
  ["what happened", "fate"],
  ["corrects", "corrects"],
  ["corrects row", "corrects"],
  ["written", "written"],
  ["written at", "written"],
]);

/**
 * Columns of a log, or `null` where the header lacks the stage or the day.
 * @param many Whether two columns that could be the same thing are refused, or the first of them taken.
 * @throws {InputError} `ambiguous-column`.
 */
export function logColumns(
  header: readonly string[],
  many: "first" | "refuse",
  named: NonNullable<LogOptions["columns"]> = {},
): LogColumns | null {
  const columns = header.map((text, index): Column => ({ index, header: headerMeaning(text) }));
  const choose = chooser<LogField>(columns, named, many, ({ header: { text } }) => {
    const words = text
      .toLowerCase()
      .split(/[^\p{L}\p{N}]+/u)
      .filter((word) => word !== "");
    return LOG_HEADERS.get(words.join(" ")) ?? null;
  });
  const stage = choose("stage", "stage");
  const on = choose("on", "on");
  if (!stage || !on) return null;
  return {
    stage,
    on,
    time: choose("time", "time"),
    count: choose("count", "count"),
    cohort: choose("cohort", "cohort"),
    note: choose("note", "note"),
    fate: choose("fate", "fate"),
    notYet: choose("notYet", "notYet"),
    corrects: choose("corrects", "corrects"),
    written: choose("written", "written"),
  };
}
