import { describe, expect, it } from "vitest";
import { exactInterval } from "../../src/cohort/binomial-interval.ts";
import { expectedAdults } from "../../src/cohort/expected-adults.ts";
import { type StageCounts, lifeTable } from "../../src/cohort/life-table.ts";
import { survivalThrough } from "../../src/cohort/survival-through.ts";

const through = (...counts: StageCounts[]) => survivalThrough(lifeTable(counts));

describe("survivalThrough", () => {
  it("is plain counting without losses, whichever stages the dead were in", () => {
    expect(
      through(
        { stage: "egg", entered: 29, died: 3 },
        { stage: "larva", entered: 26, died: 0 },
        { stage: "pupa", entered: 26, died: 4 },
      ),
    ).toEqual({ survived: 22, of: 29 });
  });

  it("does not lose animals to the number of stages", () => {
    const stages = (["egg", "instar-1", "instar-2", "instar-3", "instar-4", "instar-5", "pupa"] as const).map(
      (stage) => ({ stage, entered: 10, died: 0 }),
    );
    const all = survivalThrough(lifeTable(stages));
    expect(all).toEqual({ survived: 10, of: 10 });
    // Jeffreys' mean is (s + 1/2) / (n + 1).
    expect(expectedAdults(10, all ?? 0).mean).toBeCloseTo((10 * 10.5) / 11, 12);
  });

  it("gives the share and the bounds of the life table with losses", () => {
    const rows = lifeTable([
      { stage: "egg", entered: 40, died: 5, censored: 3 },
      { stage: "larva", entered: 32, died: 4, censored: 2 },
    ]);
    const last = rows.at(-1);
    const { survived, of } = survivalThrough(rows) ?? { survived: 0, of: 1 };
    expect(survived / of).toBeCloseTo(last?.cumulative ?? 0, 10);
    const bounds = exactInterval(survived, of, 0.95);
    expect(bounds.lower).toBeCloseTo(last?.cumulativeInterval?.lower ?? 0, 9);
    expect(bounds.upper).toBeCloseTo(last?.cumulativeInterval?.upper ?? 0, 9);
  });

  it("knows that nobody lives where all died, and nothing where nobody was followed", () => {
    expect(through({ stage: "egg", entered: 4, died: 4 }, { stage: "larva", entered: 0, died: 0 })).toEqual({
      survived: 0,
      of: 4,
    });
    expect(
      through({ stage: "egg", entered: 4, died: 0 }, { stage: "larva", entered: 4, died: 0, censored: 4 }),
    ).toBeNull();
    expect(survivalThrough([])).toBeNull();
  });
});
