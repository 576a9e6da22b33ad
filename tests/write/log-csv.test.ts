import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type LogEntry, logEntry } from "../../src/cohort/log.ts";
import { readLog } from "../../src/read/log/log-csv.ts";
import { readLogEntries } from "../../src/read/log/log-entries.ts";
import { STAGE_IDS } from "../../src/species/life-cycle.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { logCsv } from "../../src/write/tables/log-csv.ts";
import { refusalOf } from "../support/refusal.ts";

// What a reader can give: trimmed, with single line ends, without control characters.
const text = fc
  .oneof(
    fc.string({ unit: "grapheme", minLength: 1, maxLength: 20 }),
    fc.string({
      unit: fc.constantFrom("'", "=", "+", "-", "@", "5", ",", ";", '"', "\n", " ", "é", "🐛"),
      minLength: 1,
    }),
  )
  .map((raw) => raw.replace(/[\u0000-\u0009\u000b-\u001f\u007f]/g, "").trim())
  .filter((one) => one !== "" && !one.startsWith("EXAMPLE"));

const clock = fc
  .tuple(fc.nat(23), fc.nat(59), fc.constantFrom("", "+00:00", "-04:00", "+05:30"))
  .map(
    ([hour, minute, offset]) =>
      `T${String(hour).padStart(2, "0")}:${String(minute).padStart(2, "0")}:00${offset}`,
  );

const entry = fc
  .record({
    stage: fc.constantFrom(...STAGE_IDS),
    day: fc.nat(4000).map((count) => addDays("2020-01-01", count)),
    clock: fc.option(clock, { nil: "" }),
    count: fc.integer({ min: 1, max: 999_999_999 }),
    cohort: fc.option(text),
    note: fc.option(text),
    fate: fc.constantFrom("seen" as const, "died" as const, "lost" as const),
    before: fc.option(fc.integer({ min: 1, max: 9 })),
  })
  .map(({ day, clock: time, before, ...rest }): LogEntry =>
    logEntry({ ...rest, on: day + time, ...(before !== null && { notYet: addDays(day, -before) }) }),
  );

describe("a log as CSV", () => {
  it("is read back as it was, whatever its notes and groups are called", () => {
    fc.assert(
      fc.property(fc.array(entry, { minLength: 1, maxLength: 8 }), (entries) => {
        const back = readLog(logCsv(entries)).entries;
        expect(back).toEqual(entries.map((one, i) => ({ ...one, row: i + 2 })));
      }),
      { numRuns: 500 },
    );
  });

  it("as JSON too", () => {
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 8 }), (entries) => {
        expect(readLogEntries(JSON.parse(JSON.stringify(entries)))).toEqual(entries);
      }),
    );
  });

  it("JSON of another shape is refused with its place", () => {
    expect(refusalOf(() => readLogEntries({})).code).toBe("invalid-log");
    expect(refusalOf(() => readLogEntries([{ stage: "pupa", on: "2026-07-04", cout: 2 }])).message).toContain(
      "did you mean count",
    );
    expect(refusalOf(() => readLogEntries([{ stage: "pupa", on: "2026-02-30" }])).code).toBe("invalid-day");
    expect(refusalOf(() => readLogEntries([{ stage: "frog", on: "2026-02-03" }])).message).toContain("stage");
  });
});
