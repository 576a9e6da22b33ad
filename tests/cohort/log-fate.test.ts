import { describe, expect, test } from "vitest";
import { checkLog, fateOf, logEntry } from "../../src/cohort/log.ts";
import { refusalOf } from "../support/refusal.ts";

const seen = { stage: "pupa", on: "2026-07-04" } as const;

describe("fate of a log entry", () => {
  test("is seen unless it says otherwise", () => {
    expect(fateOf(logEntry(seen))).toBe("seen");
    expect(logEntry({ ...seen, fate: "seen" })).toEqual(logEntry(seen));
    expect(logEntry({ ...seen, fate: "died" }).fate).toBe("died");
  });

  test("is one of three", () => {
    const gone = { ...logEntry(seen), fate: "gone" };
    // @ts-expect-error a word that a program without types could pass
    const refusal = refusalOf(() => checkLog([gone]));
    expect(refusal).toMatchObject({ code: "invalid-log", path: ["log", 0, "fate"] });
    expect(refusal.message).toContain("seen, died, lost");
  });
});
