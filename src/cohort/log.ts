import { InputError, type InputPath, nearestNames, shown } from "../errors.ts";
import { given } from "../given.ts";
import { STAGE_IDS, type StageId } from "../species/life-cycle.ts";
import { parseMoment } from "../time/zone.ts";

/** What a line of a log tells of its animals. */
const LOG_FATES = ["seen", "died", "lost"] as const;

/**
 * `seen`: they were found to have begun the stage. `died`: they died in it. `lost`: they were last seen alive
 * in it, and escaped, were moved elsewhere or given away.
 */
export type LogFate = (typeof LOG_FATES)[number];

/** One line of what was seen: so many animals were found to have begun a stage, or to have ended in it. */
export interface LogEntry {
  /** The stage that had begun: `pupa` when an animal had pupated. Of dead or lost ones the stage they were in. */
  readonly stage: StageId;
  /** ISO 8601: the day, or the date and time, when it was seen. */
  readonly on: string;
  /** How many animals. */
  readonly count: number;
  /** Which animals, where several groups are kept; `null` where there is one. */
  readonly cohort: string | null;
  readonly note: string | null;
  /** Row of the file it came from, or `null` where it came from none. */
  readonly row: number | null;
  /** Left out: `seen`. */
  readonly fate?: LogFate;
  /** ISO 8601: the last look at which the stage had not begun yet. Left out: a day before. */
  readonly notYet?: string;
}

/**
 * What an entry tells of its animals.
 * @example
 * fateOf(logEntry({ stage: "pupa", on: "2026-07-04" })) // → "seen"
 */
export function fateOf(entry: LogEntry): LogFate {
  given(entry, ["entry"], "an entry of a log");
  return entry.fate ?? "seen";
}

/**
 * A log entry from what is known; everything but the stage and the day may be left out.
 * @param seen `count` defaults to 1, `fate` to `seen`.
 * @throws {InputError} `unknown-stage`, `invalid-day`, `invalid-instant`, `invalid-log`.
 * @example
 * logEntry({ stage: "pupa", on: "2026-07-04" }).count // → 1
 */
export function logEntry(
  seen: { readonly stage: StageId; readonly on: string } & Partial<Omit<LogEntry, "stage" | "on">>,
): LogEntry {
  given(seen, ["seen"], "an object with stage and on");
  const { stage, on, count = 1, cohort = null, note = null, row = null, fate, notYet } = seen;
  const entry: LogEntry = {
    stage,
    on,
    count,
    cohort,
    note,
    row,
    ...(fate === undefined || fate === "seen" ? {} : { fate }),
    ...(notYet === undefined ? {} : { notYet }),
  };
  checkEntry(entry, []);
  return entry;
}

/**
 * The log itself when every entry is one that a forecast can take.
 * @throws {InputError} `unknown-stage`, `invalid-day`, `invalid-instant`, `invalid-log`; the path begins
 *   with the index of the entry.
 */
export function checkLog(entries: readonly LogEntry[]): readonly LogEntry[] {
  // Callers without types may hand over anything.
  const given: unknown = entries;
  if (!Array.isArray(given)) {
    throw new InputError("invalid-log", `the log is ${shown(given)}; it must be a list of entries.`, {
      path: ["log"],
      value: given,
    });
  }
  entries.forEach((entry, i) => checkEntry(entry, ["log", i]));
  return entries;
}

function checkEntry(entry: LogEntry | null | undefined, path: InputPath): void {
  if (typeof entry !== "object" || entry === null)
    throw refused(path, entry, "an object with stage, on and count");
  const { stage, on, count, cohort, note, row, notYet } = entry;
  const fate: string = fateOf(entry);
  if (!STAGE_IDS.includes(stage)) {
    const near = typeof stage === "string" ? nearestNames(stage, STAGE_IDS) : [];
    const at = [...path, "stage"];
    throw new InputError(
      "unknown-stage",
      `${at.join(".")} is ${shown(stage)}; it must be one of ${(near.length > 0 ? near : STAGE_IDS).join(", ")}.`,
      { path: at, value: stage },
    );
  }
  // Only whether it is a day or a time matters here; in UTC no time is skipped.
  parseMoment(on, "UTC", [...path, "on"]);
  if (notYet !== undefined) checkOrder(notYet, on, path);
  if (!Number.isSafeInteger(count) || count < 1)
    throw refused([...path, "count"], count, "a whole number of animals, 1 or more");
  if (cohort !== null && (typeof cohort !== "string" || cohort.trim() === "")) {
    throw refused([...path, "cohort"], cohort, "the name of a group, or null");
  }
  if (note !== null && typeof note !== "string") throw refused([...path, "note"], note, "a text, or null");
  if (row !== null && (!Number.isSafeInteger(row) || row < 1))
    throw refused([...path, "row"], row, "a row number from 1, or null");
  if (!LOG_FATES.some((known) => known === fate))
    throw refused([...path, "fate"], fate, `one of ${LOG_FATES.join(", ")}`);
}

/** The last look without a stage must come before the look that found it. */
function checkOrder(notYet: string, on: string, path: InputPath): void {
  const at = [...path, "notYet"];
  const [last, seen] = [parseMoment(notYet, "UTC", at), parseMoment(on, "UTC", [...path, "on"])];
  // Beside a day, the day that was written counts: an offset can make it another one in UTC. Before midnight there
  // was no look on that day.
  const [lastDay, seenDay] = [notYet.slice(0, 10), on.slice(0, 10)];
  const before =
    last.instant !== null && seen.instant !== null
      ? last.instant < seen.instant
      : lastDay < seenDay || (lastDay === seenDay && on.slice(11, 16) !== "00:00");
  if (!before) throw refused(at, notYet, `before ${on}, when the stage was seen`);
}

function refused(path: InputPath, value: unknown, mustBe: string): InputError {
  const place = path.length === 0 ? "the entry" : path.join(".");
  return new InputError("invalid-log", `${place} is ${shown(value)}; it must be ${mustBe}.`, { path, value });
}
