import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lifeTableFromLog } from "../../src/cohort/life-table-from-log.ts";
import { type LogEntry, logEntry } from "../../src/cohort/log.ts";
import type { StageId } from "../../src/species/life-cycle.ts";
import { refusalOf } from "../support/refusal.ts";

const STAGES: readonly StageId[] = ["egg", "larva", "pupa", "adult"];
const on = "2026-07-04";
const seen = (stage: StageId, count = 1): LogEntry => logEntry({ stage, on, count });
const died = (stage: StageId, count = 1): LogEntry => logEntry({ stage, on, count, fate: "died" });
const lost = (stage: StageId, count = 1): LogEntry => logEntry({ stage, on, count, fate: "lost" });

describe("lifeTableFromLog", () => {
  test("a log in which every animal is accounted for", () => {
    const { rows, reached, unaccounted, remarks } = lifeTableFromLog(
      [
        seen("egg", 12),
        seen("larva", 6),
        seen("larva", 4),
        died("egg", 2),
        died("larva"),
        lost("larva"),
        seen("pupa", 8),
        died("pupa"),
        seen("adult", 7),
      ],
      { stages: STAGES },
    );
    expect(rows.map((row) => [row.stage, row.entered, row.died, row.censored])).toEqual([
      ["egg", 12, 2, 0],
      ["larva", 10, 1, 1],
      ["pupa", 8, 1, 0],
    ]);
    expect(rows.at(-1)?.cumulative).toBeCloseTo((10 / 12) * (1 - 1 / 9.5) * (7 / 8), 12);
    expect([reached, unaccounted, remarks]).toEqual([7, [], []]);
  });

  test("a stage that nobody wrote down was gone through all the same", () => {
    const { rows } = lifeTableFromLog([seen("egg", 10), died("pupa"), seen("adult", 8)], { stages: STAGES });
    expect(rows.map(({ entered }) => entered)).toEqual([10, 9, 9]);
    expect(rows[1]).toMatchObject({ died: 0, censored: 0, survival: 1 });
  });

  test("missing animals are named, and the caller says what became of them", () => {
    const log = [seen("egg", 12), seen("larva", 9)];
    const open = lifeTableFromLog(log, { stages: ["egg", "larva"] });
    expect(open.rows[0]).toMatchObject({ died: 0, censored: 3, survival: 1 });
    expect(open.unaccounted).toEqual([{ stage: "egg", count: 3 }]);
    expect(open.remarks[0]).toContain("3 in egg");
    const closed = lifeTableFromLog(log, { stages: ["egg", "larva"], unaccounted: "died" });
    expect(closed.rows[0]).toMatchObject({ died: 3, censored: 0, survival: 0.75 });
    expect(closed.remarks[0]).toContain("taken as dead");
  });

  test("the number at the start can be given, and must not be less than the log tells", () => {
    expect(
      lifeTableFromLog([seen("larva", 9)], { stages: ["egg", "larva"], count: 12 }).rows[0]?.entered,
    ).toBe(12);
    const error = refusalOf(() =>
      lifeTableFromLog([seen("larva", 9)], { stages: ["egg", "larva"], count: 8 }),
    );
    expect(error).toMatchObject({ code: "invalid-log", path: ["count"] });
  });

  test("a hang belongs to the larva before it, unless it is a stage of its own", () => {
    const log = [seen("larva", 5), seen("prepupa", 5), died("prepupa"), seen("pupa", 4)];
    const folded = lifeTableFromLog(log, { stages: ["larva", "pupa"] });
    expect(folded.rows[0]).toMatchObject({ stage: "larva", entered: 5, died: 1, survival: 0.8 });
    const apart = lifeTableFromLog(log, { stages: ["larva", "prepupa", "pupa"] });
    expect(apart.rows.map((row) => [row.stage, row.died])).toEqual([
      ["larva", 0],
      ["prepupa", 1],
    ]);
  });

  test("animals that were seen to hang had been larvae, though nobody wrote that down", () => {
    const stages: readonly StageId[] = ["larva", "pupa"];
    const missing = lifeTableFromLog([seen("prepupa", 9), seen("pupa", 7)], { stages });
    expect(missing.rows[0]).toMatchObject({ entered: 9, died: 0, censored: 2 });
    expect(missing.unaccounted).toEqual([{ stage: "larva", count: 2 }]);
    const closed = lifeTableFromLog(
      [seen("larva", 9), died("larva"), seen("prepupa", 9), died("prepupa"), seen("pupa", 7)],
      { stages, unaccounted: "died" },
    );
    expect(closed.rows[0]).toMatchObject({ entered: 10, died: 3, survival: 0.7 });
  });

  test("animals that go through their lives one by one are counted back", () => {
    const lives = fc.array(
      fc.record({
        last: fc.integer({ min: 0, max: 3 }),
        fate: fc.constantFrom("died" as const, "lost" as const),
      }),
      { minLength: 1, maxLength: 40 },
    );
    fc.assert(
      fc.property(lives, fc.boolean(), (cohort, writesBegins) => {
        const log = cohort.flatMap(({ last, fate }) => [
          ...(writesBegins || last === 3 ? STAGES.slice(0, last + 1).map((stage) => seen(stage)) : []),
          ...(last < 3 ? [logEntry({ stage: STAGES[last] ?? "egg", on, fate })] : []),
        ]);
        const { rows, reached, unaccounted } = lifeTableFromLog(log, { stages: STAGES });
        expect(unaccounted).toEqual([]);
        expect(reached).toBe(cohort.filter(({ last }) => last === 3).length);
        rows.forEach((row, i) => {
          expect(row.entered).toBe(cohort.filter(({ last }) => last >= i).length);
          expect(row.died).toBe(cohort.filter(({ last, fate }) => last === i && fate === "died").length);
          expect(row.censored).toBe(cohort.filter(({ last, fate }) => last === i && fate === "lost").length);
        });
      }),
    );
  });

  test("refuses stages that are none, and entries outside them", () => {
    expect(refusalOf(() => lifeTableFromLog([], { stages: ["egg"] })).code).toBe("invalid-option");
    expect(refusalOf(() => lifeTableFromLog([], { stages: STAGES, count: 1.5 })).path).toEqual(["count"]);
    expect(refusalOf(() => lifeTableFromLog([seen("instar-2")], { stages: STAGES }))).toMatchObject({
      code: "unknown-stage",
      path: ["log", 0, "stage"],
    });
    expect(
      // @ts-expect-error a word that a program without types could pass
      refusalOf(() => lifeTableFromLog([], { stages: STAGES, unaccounted: "alive" })).path,
    ).toEqual(["unaccounted"]);
  });
});
