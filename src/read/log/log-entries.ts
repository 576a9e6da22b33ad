import * as z from "zod/mini";
import { type LogEntry, checkLog, logEntry } from "../../cohort/log.ts";
import { STAGE_IDS } from "../../species/life-cycle.ts";
import { inShape } from "../json/shape.ts";

const logEntryShape = z.strictObject({
  stage: z
    .enum(STAGE_IDS)
    .check(
      z.describe("The stage that had begun; of animals that died or were lost, the stage they were in."),
    ),
  on: z.string().check(z.describe("The day, or the date and time, when it was seen: ISO 8601.")),
  count: z.optional(z.int().check(z.minimum(1))).check(z.describe("How many animals. Left out: 1.")),
  cohort: z
    .optional(z.nullable(z.string().check(z.minLength(1))))
    .check(z.describe("Which animals, where several groups are kept.")),
  note: z.optional(z.nullable(z.string())),
  row: z.optional(z.nullable(z.int().check(z.minimum(1)))).check(z.describe("Row of the file it came from.")),
  fate: z
    .optional(z.enum(["seen", "died", "lost"]))
    .check(z.describe("What became of them. Left out: seen.")),
  notYet: z
    .optional(z.string())
    .check(z.describe("The last look at which the stage had not begun: ISO 8601. Left out: a day before.")),
});

/** The shape of a log as JSON, for the published schema. */
export const logShape = z.array(logEntryShape);

/**
 * A log from parsed JSON: a list of entries, of which only stage and day must be there. `readLog` reads the table
 * that people keep by hand.
 * @param json The value, as `JSON.parse` gives it.
 * @throws {InputError} `invalid-log` for another shape; what `checkLog` throws.
 * @example
 * readLogEntries([{ stage: "pupa", on: "2026-07-04" }])[0]?.count // → 1
 */
export function readLogEntries(json: unknown): readonly LogEntry[] {
  const given = inShape(logShape, json, "invalid-log", "the log");
  return checkLog(
    given.map(({ fate, notYet, ...seen }) =>
      logEntry({
        stage: seen.stage,
        on: seen.on,
        count: seen.count ?? 1,
        cohort: seen.cohort ?? null,
        note: seen.note ?? null,
        row: seen.row ?? null,
        ...(fate !== undefined && { fate }),
        ...(notYet !== undefined && { notYet }),
      }),
    ),
  );
}
