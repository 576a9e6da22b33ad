import { describe, expect, test } from "vitest";
import { STAGE_WORDS, readLog } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes, fixture, messageOf } from "./fixture.ts";

const stageOf = (word: string, options = {}): string | undefined =>
  readLog(`stage,seen on,count\n${word},2026-06-05,1`, options).entries[0]?.stage;

describe("readLog", () => {
  test("a log in plain words", () => {
    const { entries, notes } = readLog(fixture("read/cage-log.csv"));
    expect(entries.map(({ stage, on }) => [stage, on])).toEqual([
      ["egg", "2026-06-01"],
      ["instar-1", "2026-06-05T09:30:00"],
      ["instar-2", "2026-06-08"],
      ["instar-3", "2026-06-10"],
      ["prepupa", "2026-06-18T18:00:00"],
      ["pupa", "2026-06-19T07:15:00"],
      ["adult", "2026-06-29"],
    ]);
    expect(entries[2]).toMatchObject({ count: 11, cohort: "cage A", note: "one small, kept", row: 4 });
    expect(entries[1]?.note).toBeNull();
    expect(messageOf(notes, "columns-recognised")).toContain('cohort from "animals"');
  });

  test.each([
    ["pupated", "pupa"],
    ["Hanging", "prepupa"],
    ["emerged", "adult"],
    ["eclosed", "adult"],
    ["2nd instar", "instar-2"],
    ["instar 2", "instar-2"],
    ["Instar_2", "instar-2"],
    ["L2", "instar-2"],
    ["second  instar", "instar-2"],
    ["instar-5", "instar-5"],
    ["pre-pupa", "prepupa"],
    ["larva", "larva"],
    ["caterpillar", "larva"],
    ["hatched", "instar-1"],
  ])("%j is %s", (word, stage) => {
    expect(stageOf(word)).toBe(stage);
  });

  test("what hatches is an option", () => {
    expect(stageOf("hatched", { firstLarvalStage: "larva" })).toBe("larva");
    expect(stageOf("L1", { firstLarvalStage: "larva" })).toBe("instar-1");
    expect(STAGE_WORDS.has("hatched")).toBe(false);
  });

  test.each(["pupatd", "", "constructor", "molted"])("%j is refused", (word) => {
    const error = refusalOf(() => readLog(`stage,seen on,count\n${word},2026-06-05,1`));
    expect(error).toMatchObject({ code: "unknown-stage", path: ["row", 2, "stage"] });
  });

  test("near words are offered", () => {
    expect(refusalOf(() => stageOf("pupatd")).message).toContain("pupated");
  });

  test("dates and times as in temperature files; offsets are kept", () => {
    const { entries } = readLog(
      "event;on;how many\npupated;13.06.2026 18:00;2\nemerged;2026-06-25T07:00-04:00;1\nemerged;2026-06-25T07:00Z;1",
    );
    expect(entries.map(({ on }) => on)).toEqual([
      "2026-06-13T18:00:00",
      "2026-06-25T07:00:00-04:00",
      "2026-06-25T07:00:00+00:00",
    ]);
    expect(refusalOf(() => readLog("stage,on\npupa,03/04/2026")).code).toBe("ambiguous-date");
    expect(readLog("stage,on\npupa,03/04/2026", { dateOrder: "day-first" }).entries[0]?.on).toBe(
      "2026-04-03",
    );
    expect(refusalOf(() => readLog("stage,on,time\npupa,2026-06-05,25:00")).path).toEqual(["row", 2, "time"]);
    expect(refusalOf(() => readLog("stage,on,time\npupa,2026-06-05 06:00,07:00")).message).toContain(
      "keep one",
    );
  });

  test.each(["0", "-1", "1.5", "few", ""])("a count of %j is refused", (count) => {
    const error = refusalOf(() => readLog(`stage,seen on,count\npupa,2026-06-05,${count}`));
    expect(error).toMatchObject({ code: "invalid-log", path: ["row", 2, "count"], value: count });
  });

  test("without counts each row is one animal, and that is noted", () => {
    const { entries, notes } = readLog("stage,seen on\npupa,2026-06-05");
    expect(entries[0]?.count).toBe(1);
    expect(codes(notes)).toContain("count-assumed");
  });

  test("a column of whole numbers called animals could be either thing", () => {
    expect(refusalOf(() => readLog("stage,seen on,animals\npupa,2026-06-05,3")).code).toBe(
      "ambiguous-column",
    );
    expect(
      readLog("stage,seen on,animals\npupa,2026-06-05,3", { columns: { count: "animals" } }).entries[0]
        ?.count,
    ).toBe(3);
    expect(readLog("stage,seen on,count,animals\npupa,2026-06-05,3,7").entries[0]?.cohort).toBe("7");
  });

  test("columns that are not there", () => {
    expect(refusalOf(() => readLog("what,when\npupa,2026-06-05")).code).toBe("unknown-column");
    expect(
      readLog("what,when\npupa,2026-06-05", { columns: { stage: "what", on: "when" } }).entries,
    ).toHaveLength(1);
  });

  test.each(["stage,seen on", "stage,seen on\n", "stage,seen on,animals\r\n\r\n"])(
    "a log that is only begun, %j, has no entries",
    (log) => {
      expect(readLog(log)).toMatchObject({ entries: [], superseded: [] });
    },
  );

  test.each(["site", "place", "Location"])("a column %j is a remark, whatever it says", (header) => {
    const { entries, notes } = readLog(
      `stage,seen on,count,${header}\npupa,2026-07-04,3,porch\nadult,2026-07-14,3,shed`,
    );
    expect(entries).toHaveLength(2);
    expect(messageOf(notes, "columns-ignored")).toBe(`Not used: "${header}".`);
  });
});
