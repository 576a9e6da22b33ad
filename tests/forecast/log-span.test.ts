import { describe, expect, it } from "vitest";
import { logEntry } from "../../src/cohort/log.ts";
import { spanOfEntry } from "../../src/forecast/learning/log-span.ts";
import { formatInstant } from "../../src/time/zone.ts";

const zone = "America/New_York";
const spanOf = (on: string, notYet?: string): string[] => {
  const { from, to } = spanOfEntry(
    logEntry({ stage: "pupa", on, ...(notYet !== undefined && { notYet }) }),
    zone,
  );
  return [from, to].map((instant) => formatInstant(instant, zone).slice(0, 16));
};

describe("spanOfEntry", () => {
  it.each([
    ["an ordinary day", "2026-07-04", "2026-07-03T12:00", "2026-07-05T00:00"],
    ["a day of 25 hours", "2026-11-01", "2026-10-31T12:00", "2026-11-02T00:00"],
    ["the day after it", "2026-11-02", "2026-11-01T12:00", "2026-11-03T00:00"],
    ["a day of 23 hours", "2026-03-08", "2026-03-07T12:00", "2026-03-09T00:00"],
  ])("runs from noon of the day before to the end of %s", (_, on, from, to) => {
    expect(spanOf(on)).toEqual([from, to]);
  });

  it.each([
    ["2026-07-04T09:00", undefined, "2026-07-03T09:00", "2026-07-04T09:00"],
    ["2026-07-04T09:00", "2026-07-02", "2026-07-02T12:00", "2026-07-04T09:00"],
    // The look without it was some time between midnight and nine: half past four stands for it.
    ["2026-07-04T09:00", "2026-07-04", "2026-07-04T04:30", "2026-07-04T09:00"],
    ["2026-07-04T18:00", "2026-07-04", "2026-07-04T09:00", "2026-07-04T18:00"],
    ["2026-07-04", "2026-07-04", "2026-07-04T12:00", "2026-07-05T00:00"],
    ["2026-11-02", "2026-11-01", "2026-11-01T12:00", "2026-11-03T00:00"],
    ["2026-07-04", "2026-07-04T07:00", "2026-07-04T07:00", "2026-07-05T00:00"],
  ])("of %s, not yet %s, runs from %s to %s", (on, notYet, from, to) => {
    expect(spanOf(on, notYet)).toEqual([from, to]);
  });
});
