import { describe, expect, test } from "vitest";
import { readLog } from "../../src/read/log/log-csv.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes, messageOf } from "./fixture.ts";

const HEADER = "stage,seen on,time,count,cohort,fate,not yet,note,corrects,written";
const log = (...rows: string[]): string => [HEADER, ...rows].join("\n");

const SEEN = [
  "hatched,2026-06-11,,4,A,,,,,2026-06-11T18:00:00Z",
  "pupated,2026-06-25,18:30,3,A,,2026-06-24,one hangs,,2026-06-25T20:00:00Z",
];

describe("corrections", () => {
  test("a row stands in the place of the one it corrects and keeps what it leaves empty", () => {
    const { entries, superseded, notes } = readLog(
      log(...SEEN, "L2,2026-06-13,,4,A,,,,,", ",,,2,,,,,3,2026-06-26T08:00:00Z"),
    );
    expect(entries.map(({ stage, row }) => [stage, row])).toEqual([
      ["instar-1", 2],
      ["pupa", 5],
      ["instar-2", 4],
    ]);
    expect(entries[1]).toEqual({
      stage: "pupa",
      on: "2026-06-25T18:30:00",
      count: 2,
      cohort: "A",
      note: "one hangs",
      row: 5,
      notYet: "2026-06-24",
    });
    expect(superseded).toEqual([
      {
        row: 3,
        by: 5,
        how: "corrected",
        was: ["pupated", "2026-06-25", "18:30", "3", "A", "2026-06-24", "one hangs"],
      },
    ]);
    expect(messageOf(notes, "log-superseded")).toBe("Superseded: row 3 (corrected by row 5).");
  });

  test("(none) drops what was there; anywhere else it is a text", () => {
    const { entries } = readLog(
      log(...SEEN, ",,(none),,(none),,(none),(none),3,", "egg,2026-06-01,,1,,,,(none),,"),
    );
    expect(entries[1]).toEqual({
      stage: "pupa",
      on: "2026-06-25",
      count: 3,
      cohort: null,
      note: null,
      row: 4,
    });
    expect(entries[2]?.note).toBe("(none)");
  });

  test("two people who correct one row both have their way, whichever row they name", () => {
    for (const third of ["3", "4", "row 3", "Row 4"]) {
      const { entries, superseded } = readLog(log(...SEEN, ",,,2,,,,,3,", `,,,,,,,all well,${third},`));
      expect(entries[1]).toMatchObject({ count: 2, note: "all well", row: 5 });
      expect(superseded.map(({ row, by }) => [row, by])).toEqual([
        [3, 4],
        [4, 5],
      ]);
    }
  });

  test("a row is taken back, and comes back when it is corrected after that", () => {
    const back = [...SEEN, "retracted,,,,,,,wrong cage,2,"];
    const { entries, superseded } = readLog(log(...back));
    expect(entries.map(({ row }) => row)).toEqual([3]);
    expect(superseded[0]).toMatchObject({ row: 2, by: 4, how: "retracted" });
    const again = readLog(log(...back, ",,,5,,,,,2,"));
    expect(again.entries[0]).toMatchObject({ stage: "instar-1", count: 5, note: null, row: 5 });
    expect(again.superseded.map(({ row, by, how }) => [row, by, how])).toEqual([
      [2, 4, "retracted"],
      [4, 5, "corrected"],
    ]);
  });

  test("all may be taken back", () => {
    const { entries } = readLog(log(SEEN[0] ?? "", "Retracted,,,,,,,,2,"));
    expect(entries).toEqual([]);
  });

  test("a row that could not be read is mended by a correction", () => {
    const bad = "pupatd,2026-06-31,,few,,,,,,";
    expect(refusalOf(() => readLog(log(bad))).path).toEqual(["row", 2, "seen on"]);
    expect(readLog(log(bad, "pupated,2026-06-30,,3,,,,,2,")).entries).toMatchObject([
      { stage: "pupa", on: "2026-06-30", count: 3 },
    ]);
  });

  test("a time beside the day or within it: the newer counts", () => {
    const within = "pupated,2026-06-25 18:30,,3,,,,,,";
    const on = (row: string, ...more: string[]) => readLog(log(row, ...more)).entries[0]?.on;
    expect(on(within, ",,07:00,,,,,,2,")).toBe("2026-06-25T07:00:00");
    expect(on(SEEN[1] ?? "", ",2026-06-26T09:15,,,,,,,2,")).toBe("2026-06-26T09:15:00");
    expect(on(SEEN[1] ?? "", ",2026-06-26,,,,,,,2,")).toBe("2026-06-26T18:30:00");
    expect(on(within, ",2026-06-26,,,,,,,2,")).toBe("2026-06-26");
    expect(refusalOf(() => on(within, ",2026-06-26 07:00,08:00,,,,,,2,")).message).toContain("keep one");
  });

  test.each(["1", "3", "9", "0", "-2", "1.5", "first", "2 3"])("a correction of %j is refused", (target) => {
    const error = refusalOf(() => readLog(log(SEEN[0] ?? "", `,,,2,,,,,${target},`)));
    expect(error).toMatchObject({ code: "invalid-log", path: ["row", 3, "corrects"], value: target });
    expect(error.message).toContain("a row above it");
  });

  test("a correction is held to what every row is held to", () => {
    expect(refusalOf(() => readLog(log(...SEEN, ",,,0,,,,,3,"))).path).toEqual(["row", 4, "count"]);
    expect(refusalOf(() => readLog(log(...SEEN, ",2026-06-20,,,,,,,3,"))).message).toContain("not yet");
    expect(refusalOf(() => readLog("stage,seen on\nretracted,2026-06-11")).code).toBe("unknown-stage");
  });

  test("rows older than a column may end before it, but not before stage, day and count", () => {
    const { entries } = readLog("stage,seen on,count,corrects,written\nhatched,2026-06-11,4\n,,3,2,");
    expect(entries).toMatchObject([{ count: 3, row: 3 }]);
    expect(refusalOf(() => readLog("stage,seen on,count,note\nhatched,2026-06-11")).code).toBe(
      "malformed-file",
    );
  });

  test("the examples of a template are no animals, and that is said", () => {
    const { entries, notes } = readLog(
      log('hatched,2026-06-11,,4,,,,"EXAMPLE: delete this row.",,', ...SEEN),
    );
    expect(entries.map(({ row }) => row)).toEqual([3, 4]);
    expect(messageOf(notes, "log-examples")).toContain("row 2");
  });

  test("a long list of superseded rows stays short", () => {
    const rows = Array.from({ length: 30 }, (_, i) => `,,,${i + 1},,,,,2,`);
    const { notes, superseded } = readLog(log(SEEN[0] ?? "", ...rows));
    expect(superseded).toHaveLength(30);
    expect(messageOf(notes, "log-superseded")).toMatch(/row 9 \(corrected by row 10\) and 22 more\.$/);
  });
});

describe("earlier states", () => {
  const whole = log(
    ...SEEN,
    ",,,2,,,,,3,2026-06-26T08:00:00Z",
    "retracted,,,,,,,,2,2026-06-27T08:00:00+02:00",
  );
  const rowsAt = (asOf: string): (number | null)[] => readLog(whole, { asOf }).entries.map(({ row }) => row);

  test("down to a row", () => {
    expect(readLog(whole, { throughRow: 1 }).entries).toEqual([]);
    expect(readLog(whole, { throughRow: 2 }).entries).toHaveLength(1);
    expect(readLog(whole, { throughRow: 3 }).entries[1]).toMatchObject({ count: 3, row: 3 });
    expect(readLog(whole, { throughRow: 4 }).superseded).toHaveLength(1);
    expect(readLog(whole, { throughRow: 5 })).toEqual(readLog(whole));
    expect(refusalOf(() => readLog(whole, { throughRow: 6 })).message).toContain("ends with row 5");
    expect(refusalOf(() => readLog(whole, { throughRow: 0 })).code).toBe("invalid-option");
  });

  test("as of a moment or the end of a day, in UTC", () => {
    expect(rowsAt("2026-06-10")).toEqual([]);
    expect(rowsAt("2026-06-11T17:59:59Z")).toEqual([]);
    expect(rowsAt("2026-06-11T18:00:00Z")).toEqual([2]);
    expect(rowsAt("2026-06-25")).toEqual([2, 3]);
    expect(rowsAt("2026-06-26")).toEqual([2, 4]);
    expect(rowsAt("2026-06-27T05:59:59Z")).toEqual([2, 4]);
    expect(rowsAt("2026-06-27T06:00")).toEqual([4]);
    expect(refusalOf(() => rowsAt("yesterday")).code).toBe("invalid-day");
  });

  test("a row without a stamp counts as written after the one above it, and that is said", () => {
    const text = log(...SEEN, "L2,2026-06-13,,4,A,,,,,", "L3,2026-06-15,,4,A,,,,,last week");
    expect(readLog(text, { asOf: "2026-06-25" }).entries).toHaveLength(4);
    expect(readLog(text, { asOf: "2026-06-24" }).entries).toHaveLength(1);
    expect(messageOf(readLog(text, { asOf: "2026-06-24" }).notes, "written-unknown")).toContain(
      "rows 4 to 5",
    );
    // Of a state that nobody asks for, only what cannot be read is worth a word.
    expect(messageOf(readLog(text).notes, "written-unknown")).toContain("row 5");
    expect(codes(readLog(log(...SEEN)).notes)).not.toContain("written-unknown");
  });

  test("a clock that runs behind does not move a row above those before it", () => {
    const text = log(...SEEN, ",,,2,,,,,3,2019-01-01T00:00:00Z");
    expect(readLog(text, { asOf: "2026-06-24" }).entries.map(({ row }) => row)).toEqual([2]);
    expect(readLog(text, { asOf: "2026-06-25" }).entries.map(({ row }) => row)).toEqual([2, 4]);
  });

  test("stamps as a spreadsheet leaves them are still read", () => {
    const text = log("hatched,2026-06-11,,4,,,,,,2026-06-11 18:00:00");
    expect(readLog(text, { asOf: "2026-06-11T17:00Z" }).entries).toEqual([]);
    expect(readLog(text, { asOf: "2026-06-11T18:00Z" }).entries).toHaveLength(1);
  });
});
