import { describe, expect, test } from "vitest";
import { type LogEntry, checkLog, logEntry } from "../../src/cohort/log.ts";
import { refusalOf } from "../support/refusal.ts";

describe("logEntry", () => {
  test("fills in what is left out", () => {
    expect(logEntry({ stage: "pupa", on: "2026-07-04" })).toEqual({
      stage: "pupa",
      on: "2026-07-04",
      count: 1,
      cohort: null,
      note: null,
      row: null,
    });
  });

  test.each(["2026-07-04T13:05", "2026-07-04T13:05:00-04:00", "2026-07-04T13:05Z"])(
    "takes the time %s",
    (on) => {
      expect(logEntry({ stage: "pupa", on }).on).toBe(on);
    },
  );
});

describe("checkLog", () => {
  const good = logEntry({ stage: "pupa", on: "2026-07-04", count: 3 });

  test("passes a good log as it is, also an empty one", () => {
    const log = [good];
    expect(checkLog(log)).toBe(log);
    expect(checkLog([])).toEqual([]);
  });

  test.each<[Partial<Record<keyof LogEntry, unknown>>, string, string]>([
    [{ stage: "pupae" }, "unknown-stage", "stage"],
    [{ on: "4 July 2026" }, "invalid-day", "on"],
    [{ on: "2026-02-30" }, "invalid-day", "on"],
    [{ on: "2026-07-04T25:00" }, "invalid-instant", "on"],
    [{ count: 0 }, "invalid-log", "count"],
    [{ count: 1.5 }, "invalid-log", "count"],
    [{ cohort: "" }, "invalid-log", "cohort"],
    [{ note: 5 }, "invalid-log", "note"],
    [{ row: 0 }, "invalid-log", "row"],
  ])("refuses %j", (change, code, field) => {
    // @ts-expect-error values that a program without types could pass
    const entry: LogEntry = { ...good, ...change };
    expect(refusalOf(() => checkLog([good, entry]))).toMatchObject({ code, path: ["log", 1, field] });
  });
});

describe("notYet as a day", () => {
  const at = (on: string, notYet: string) => logEntry({ stage: "pupa", on, notYet });

  test("is compared with the day that was written, whatever its offset", () => {
    expect(at("2026-07-05T05:00+10:00", "2026-07-05").notYet).toBe("2026-07-05");
    expect(refusalOf(() => at("2026-07-04T23:00-04:00", "2026-07-05")).path).toEqual(["notYet"]);
  });

  test("leaves no time for a look before midnight of the same day", () => {
    expect(refusalOf(() => at("2026-07-05T00:00", "2026-07-05")).path).toEqual(["notYet"]);
    expect(at("2026-07-05T00:00", "2026-07-04").notYet).toBe("2026-07-04");
  });
});
