import { type LogEntry, checkLog, fateOf } from "../../cohort/log.ts";
import { type CsvCell, csvText } from "../layout/csv-table.ts";

/** The columns of a log, in the order in which a row is thought of. */
export const LOG_HEADER = [
  "stage",
  "seen on",
  "time",
  "count",
  "cohort",
  "fate",
  "not yet",
  "note",
  "corrects",
  "written",
] as const;

/**
 * A log as CSV that `readLog` reads back: one row for each entry, as they stand now, without what was corrected.
 * Texts that a spreadsheet could take for a formula have an apostrophe before them.
 * @throws {InputError} What `checkLog` throws.
 * @example
 * logCsv([logEntry({ stage: "pupa", on: "2026-07-04", note: "=best of all" })]).split("\r\n")[1] // → "pupa,2026-07-04,1,,,,'=best of all"
 */
export function logCsv(entries: readonly LogEntry[]): string {
  return csvText(
    ["stage", "seen on", "count", "cohort", "fate", "not yet", "note"],
    checkLog(entries).map((entry): CsvCell[] => {
      const fate = fateOf(entry);
      return [
        entry.stage,
        entry.on,
        entry.count,
        entry.cohort,
        fate === "seen" ? null : fate,
        entry.notYet ?? null,
        entry.note,
      ];
    }),
  );
}
