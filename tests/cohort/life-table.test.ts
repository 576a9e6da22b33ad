import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { binomialInterval } from "../../src/cohort/binomial-interval.ts";
import { type StageCounts, lifeTable } from "../../src/cohort/life-table.ts";
import { STAGE_IDS } from "../../src/species/life-cycle.ts";
import { refusalOf } from "../support/refusal.ts";

/** Counts of a cohort in which nobody is lost: entered and died, stage by stage. */
const followed = fc
  .tuple(
    fc.integer({ min: 2, max: 500 }),
    fc.array(fc.double({ min: 0, max: 0.9, noNaN: true }), { minLength: 1, maxLength: 8 }),
  )
  .map(([start, deaths]) => {
    let entered = start;
    return deaths.map((share, i): StageCounts => {
      const died = Math.min(entered - 1, Math.floor(share * entered));
      const row = { stage: STAGE_IDS[i] ?? "adult", entered, died };
      entered -= died;
      return row;
    });
  });

describe("lifeTable", () => {
  // Cutler & Ederer 1958, J. Chronic Dis. 8:699-712, the worked example of the life table method: five yearly
  // intervals (from memory). Its intervals stand for stages here; survival to the end of each is printed with
  // two digits, the standard error of the last with three. Half the last digit is the tolerance.
  test("Cutler and Ederer's example", () => {
    const printed = [0.6, 0.54, 0.5, 0.44, 0.44];
    const intervals = [
      [126, 47, 19],
      [60, 5, 17],
      [38, 2, 15],
      [21, 2, 9],
      [10, 0, 6],
    ];
    const rows = lifeTable(
      intervals.map(([entered = 0, died = 0, censored = 0], i) => ({
        stage: STAGE_IDS[i] ?? "adult",
        entered,
        died,
        censored,
      })),
    );
    rows.forEach(({ cumulative }, i) => {
      expect(Math.abs((cumulative ?? 0) - (printed[i] ?? 0))).toBeLessThanOrEqual(0.005);
    });
    expect(rows.map(({ atRisk }) => atRisk)).toEqual([116.5, 51.5, 30.5, 16.5, 7]);
    expect(Math.abs((rows[4]?.cumulativeError ?? 0) - 0.06)).toBeLessThanOrEqual(0.0005);
  });

  test("without losses it is counting, and the bounds are those of the counts", () => {
    fc.assert(
      fc.property(followed, (counts) => {
        const start = counts[0]?.entered ?? 0;
        for (const row of lifeTable(counts)) {
          const left = row.entered - row.died;
          expect(row.cumulative).toBeCloseTo(left / start, 12);
          const exact = binomialInterval(left, start);
          expect(row.cumulativeInterval?.lower).toBeCloseTo(exact.lower, 8);
          expect(row.cumulativeInterval?.upper).toBeCloseTo(exact.upper, 8);
          expect(row.survivalInterval).toEqual(binomialInterval(left, row.entered));
          expect(row.cumulativeError).toBeCloseTo(
            Math.sqrt(((left / start) * (1 - left / start)) / start),
            10,
          );
          expect([row.joined, row.reason]).toEqual([0, null]);
        }
      }),
    );
  });

  test("losses lower the number at risk by half, and the bounds hold the estimate", () => {
    const [row] = lifeTable([{ stage: "pupa", entered: 20, died: 3, censored: 4 }]);
    expect(row).toMatchObject({ atRisk: 18, survival: 1 - 3 / 18 });
    expect(row?.cumulativeInterval?.lower).toBeLessThan(1 - 3 / 18);
    expect(row?.cumulativeInterval?.upper).toBeGreaterThan(1 - 3 / 18);
  });

  test("none died, and all died", () => {
    const [egg, larva] = lifeTable([
      { stage: "egg", entered: 12, died: 0 },
      { stage: "larva", entered: 12, died: 12 },
    ]);
    expect(egg).toMatchObject({ cumulative: 1, cumulativeError: 0 });
    expect(egg?.cumulativeInterval).toEqual(binomialInterval(12, 12));
    expect(larva).toMatchObject({ survival: 0, cumulative: 0, cumulativeError: null });
    expect(larva?.cumulativeInterval).toEqual(binomialInterval(0, 12));
    expect(larva?.reason).toContain("All animals died");
  });

  test("animals join, and a stage without an end is not known, nor is what follows", () => {
    const rows = lifeTable([
      { stage: "egg", entered: 10, died: 1 },
      { stage: "larva", entered: 14, died: 2 },
      { stage: "pupa", entered: 12, died: 0, censored: 12 },
      { stage: "adult", entered: 4, died: 1 },
    ]);
    expect(rows.map(({ joined }) => joined)).toEqual([0, 5, 0, 4]);
    expect(rows[1]?.cumulative).toBeCloseTo(0.9 * (12 / 14), 12);
    expect(rows[2]).toMatchObject({ survival: null, cumulative: null, cumulativeInterval: null });
    expect(rows[2]?.reason).toContain("followed to its end");
    expect(rows[3]).toMatchObject({ survival: 0.75, cumulative: null });
    expect(lifeTable([{ stage: "egg", entered: 0, died: 0 }])[0]?.reason).toContain("No animal entered");
  });

  test("is plain data", () => {
    const rows = lifeTable([{ stage: "egg", entered: 10, died: 10 }]);
    expect(JSON.parse(JSON.stringify(rows))).toEqual(rows);
  });

  test.each<[readonly StageCounts[], string, readonly (string | number)[]]>([
    [[], "invalid-option", ["counts"]],
    [[{ stage: "egg", entered: 2.5, died: 0 }], "invalid-number", ["counts", 0, "entered"]],
    [[{ stage: "egg", entered: 2, died: -1 }], "invalid-number", ["counts", 0, "died"]],
    [[{ stage: "egg", entered: 2, died: 0, censored: NaN }], "invalid-number", ["counts", 0, "censored"]],
    [[{ stage: "egg", entered: 2, died: 2, censored: 1 }], "invalid-number", ["counts", 0, "entered"]],
    [
      [
        { stage: "egg", entered: 9, died: 1 },
        { stage: "larva", entered: 7, died: 0 },
      ],
      "invalid-number",
      ["counts", 1, "entered"],
    ],
    [
      [
        { stage: "egg", entered: 9, died: 1 },
        { stage: "egg", entered: 8, died: 0 },
      ],
      "invalid-option",
      ["counts", 1, "stage"],
    ],
  ])("refuses %j", (counts, code, path) => {
    expect(refusalOf(() => lifeTable(counts))).toMatchObject({ code, path });
  });
});
