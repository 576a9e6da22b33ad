import { describe, expect, test } from "vitest";
import { logEntry } from "../../src/cohort/log.ts";
import { otherYear } from "../../src/cohort/other-year.ts";

const FOUND = "2026-06-08T17:30";
const log = (...days: string[]) => days.map((on) => logEntry({ stage: "pupa", on }));

describe("otherYear", () => {
  test.each([
    ["a year after", log("2027-06-20", "2027-07-04"), "All 2 entries of the log lie about a year after"],
    ["a year before", log("2025-06-12"), "The only entry of the log lies about a year before"],
  ])("says in one note that a log lies %s its find", (_, entries, says) => {
    const notes = otherYear(entries, FOUND);
    expect(notes).toHaveLength(1);
    expect(notes[0]?.message).toContain(`${says} the find (2026-06-08); check the year`);
  });

  test.each([
    ["in the season of the find", log("2026-06-20", "2026-07-04")],
    ["in both years, of which only some are slips", log("2026-06-20", "2027-07-04")],
    ["where adults that overwintered as pupae emerge", log("2027-04-20")],
    ["nowhere", []],
  ])("has nothing to say of a log %s", (_, entries) => {
    expect(otherYear(entries, FOUND)).toEqual([]);
  });
});
