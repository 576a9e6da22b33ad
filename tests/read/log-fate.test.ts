import { describe, expect, test } from "vitest";
import { fateOf } from "../../src/cohort/log.ts";
import { readLog } from "../../src/read/log/log-csv.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes } from "./fixture.ts";

const read = (stage: string): [string, string] => {
  const [entry] = readLog(`stage,seen on,count\n${stage},2026-06-05,2`).entries;
  return [entry?.stage ?? "", entry === undefined ? "" : fateOf(entry)];
};
const withFate = (stage: string, fate: string): [string, string] => {
  const [entry] = readLog(`stage,seen on,count,fate\n${stage},2026-06-05,2,${fate}`).entries;
  return [entry?.stage ?? "", entry === undefined ? "" : fateOf(entry)];
};

describe("deaths and losses in a log", () => {
  test.each([
    ["died as pupa", "pupa", "died"],
    ["Dead L3", "instar-3", "died"],
    ["2nd instar: died", "instar-2", "died"],
    ["pupa (escaped)", "pupa", "lost"],
    ["moved as caterpillar", "larva", "lost"],
    ["lost in the 4th instar", "instar-4", "lost"],
    ["died hanging", "prepupa", "died"],
    ["pupa", "pupa", "seen"],
    ["seen pupa", "pupa", "seen"],
  ])("a stage of %j is %s, %s", (text, stage, fate) => {
    expect(read(text)).toEqual([stage, fate]);
  });

  test.each([
    ["pupa", "died", "pupa", "died"],
    ["pupa", "Escaped", "pupa", "lost"],
    ["pupa", "", "pupa", "seen"],
    ["pupated", "seen", "pupa", "seen"],
    ["died as egg", "dead", "egg", "died"],
    ["died as egg", "", "egg", "died"],
  ])("%j with the fate %j is %s, %s", (text, cell, stage, fate) => {
    expect(withFate(text, cell)).toEqual([stage, fate]);
  });

  test.each(["not dead", "none died", "no deaths, all alive", "died?", "dead or lost", "3 died"])(
    "a fate of %j is refused rather than guessed",
    (cell) => {
      expect(refusalOf(() => withFate("pupa", `"${cell}"`))).toMatchObject({
        code: "invalid-log",
        value: cell,
      });
    },
  );

  test.each([
    ["seen dead", "died"],
    ["Found dead", "died"],
    ["was killed", "died"],
    ["(escaped)", "lost"],
  ])("a fate of %j is %s", (cell, fate) => {
    expect(withFate("pupa", cell)).toEqual(["pupa", fate]);
  });

  test.each(["not dead pupa", "died and lost pupa"])("a stage of %j is refused", (stage) => {
    expect(refusalOf(() => read(stage)).code).toBe("unknown-stage");
  });

  test("the column may be called what, and is not needed", () => {
    const { entries, notes } = readLog("stage,what,seen on\negg,,2026-06-01\negg,moved,2026-06-02");
    expect(entries.map(fateOf)).toEqual(["seen", "lost"]);
    expect(codes(notes)).toContain("columns-recognised");
    expect(
      readLog("stage,end,seen on\negg,died,2026-06-01", { columns: { fate: "end" } }).entries[0]?.fate,
    ).toBe("died");
    expect("fate" in (readLog("stage,seen on\negg,2026-06-01").entries[0] ?? {})).toBe(false);
  });

  test("what cannot be is refused with its place", () => {
    expect(refusalOf(() => read("died"))).toMatchObject({ code: "unknown-stage", path: ["row", 2, "stage"] });
    expect(refusalOf(() => read("died")).message).toContain("died as pupa");
    expect(refusalOf(() => read("died as frog")).code).toBe("unknown-stage");
    expect(refusalOf(() => withFate("pupa", "gone"))).toMatchObject({
      code: "invalid-log",
      path: ["row", 2, "fate"],
      value: "gone",
    });
    expect(refusalOf(() => withFate("pupa escaped", "died")).message).toContain("keep one");
  });
});
