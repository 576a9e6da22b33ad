import { describe, expect, it } from "vitest";
import { type LogEntry, logEntry } from "../../src/cohort/log.ts";
import { animalsMissing } from "../../src/forecast/learning/animals-missing.ts";
import { contradiction, notAhead } from "../../src/forecast/learning/kept-aside.ts";
import { chancesOf, startsFrom } from "../../src/forecast/learning/log-span.ts";
import { judged, priorGrid, refined, thinned, weighted } from "../../src/forecast/learning/pace-grid.ts";
import { lifePath } from "../../src/forecast/question/life-path.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { DAY_MS } from "../../src/time/zone.ts";
import { evenClock } from "./even-clock.ts";

const { milestones } = lifePath(danausPlexippus, "egg", "new");
const stages = milestones.filter(({ kind }) => kind === "stage");
const milestone = (id: string) => {
  const found = stages.find((one) => one.id === id);
  if (found === undefined) throw new Error(id);
  return found;
};
const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

describe("animalsMissing", () => {
  const seen = (stage: LogEntry["stage"], count: number): LogEntry =>
    logEntry({ stage, on: "2026-06-12", count });
  const gone = (stage: LogEntry["stage"], count: number, fate: "died" | "lost" = "died"): LogEntry =>
    logEntry({ stage, on: "2026-06-12", count, fate });
  const log = [seen("instar-1", 3), seen("instar-1", 4), seen("instar-2", 2)];

  it.each([
    ["of ten found", log, "instar-1", 10, { begun: 7, missing: 3 }],
    ["in a later stage, of all found", log, "instar-2", 10, { begun: 2, missing: 8 }],
    ["of a stage that nobody logged", log, "instar-3", 10, { begun: 0, missing: 10 }],
    ["of a find whose number is not known", log, "instar-1", undefined, { begun: 7, missing: 0 }],
    ["of fewer found than logged", log, "instar-1", 5, { begun: 7, missing: 0 }],
    [
      "but for those that died or got lost before",
      [...log, gone("egg", 1), gone("egg", 1, "lost")],
      "instar-1",
      10,
      { begun: 7, missing: 1 },
    ],
    [
      "those that died in the stage itself being there",
      [...log, gone("instar-1", 2)],
      "instar-1",
      10,
      { begun: 7, missing: 3 },
    ],
    [
      "none where a later stage has more",
      [...log, seen("pupa", 8)],
      "instar-1",
      10,
      { begun: 7, missing: 0 },
    ],
    [
      "some where a later stage has as many",
      [...log, seen("pupa", 7)],
      "instar-1",
      10,
      { begun: 7, missing: 3 },
    ],
    [
      "whatever an earlier stage has",
      [...log, seen("instar-2", 2)],
      "instar-2",
      10,
      { begun: 4, missing: 6 },
    ],
  ] as const)("%s", (_, entries, id, count, expected) => {
    expect(animalsMissing(entries, stages, milestone(id), count)).toEqual(expected);
  });
});

describe("the reasons to keep an entry aside", () => {
  const ahead = new Set(stages.map(({ id }) => id));
  const at = (day: number): number => Date.parse("2026-06-01") + day * DAY_MS;

  it.each([
    [logEntry({ stage: "pupa", on: "2026-06-20" }), null],
    [
      logEntry({ stage: "pupa", on: "2026-06-20", fate: "died" }),
      "pupa, 2026-06-20: a death says nothing of the pace; the entry counts for survival only.",
    ],
    [
      logEntry({ stage: "pupa", on: "2026-06-20", fate: "lost" }),
      "pupa, 2026-06-20: a loss says nothing of the pace; the entry counts for survival only.",
    ],
    [
      logEntry({ stage: "egg", on: "2026-06-20" }),
      "egg, 2026-06-20: the animals were found as egg, so this stage is not ahead of them.",
    ],
  ])("of what is not ahead, case %#", (entry, expected) => {
    expect(notAhead(entry, ahead, "egg")).toBe(expected);
  });

  const said = (
    to: number,
    row: number | null,
    from: "instar-2" | null,
    starts: readonly number[],
  ): string => {
    const entry = logEntry({ stage: "instar-4", on: "2026-06-10", ...(row !== null && { row }) });
    const learned = from === null ? null : { stage: from, moments: [] };
    const moments = starts.map((day) => ({ at: at(day), weight: 1 }));
    return contradiction({ entry, span: { from: at(to) - 1, to: at(to) } }, moments, learned, at(2), null);
  };

  it("before the find, or before the stage seen last", () => {
    const end = "one of the two dates must be wrong. The entry is kept aside.";
    expect(said(1, 7, null, [2])).toBe(
      `fourth instar, 2026-06-10 (row 7): this is before the find (2026-06-03); ${end}`,
    );
    expect(said(2, null, "instar-2", [5])).toBe(
      `fourth instar, 2026-06-10: this is before the find (2026-06-03); ${end}`,
    );
    expect(said(5, null, "instar-2", [6, 5])).toBe(
      `fourth instar, 2026-06-10: this is before the second instar (2026-06-06); ${end}`,
    );
  });

  it("too soon after it", () => {
    const end = "even at an unusual pace. Check the dates and the temperatures. The entry is kept aside.";
    expect(said(3.5, null, null, [2])).toBe(
      `fourth instar, 2026-06-10: at these temperatures no animal goes from the find (2026-06-03) to this stage in 1.5 days, ${end}`,
    );
    expect(said(9, 3, "instar-2", [6, 8])).toBe(
      `fourth instar, 2026-06-10 (row 3): at these temperatures no animal goes from the second instar (2026-06-07) to this stage in 3.0 days, ${end}`,
    );
  });
});

describe("moments to start from", () => {
  it("are three of each span by Gauss, which is exact for polynomials of the fifth degree", () => {
    const span = (from: number, to: number) => ({ from, to });
    const kept = [
      { entry: logEntry({ stage: "pupa", on: "2026-06-20", count: 3 }), span: span(2, 4) },
      { entry: logEntry({ stage: "pupa", on: "2026-06-20", count: 1 }), span: span(10, 20) },
    ];
    const starts = startsFrom(kept);
    expect(starts).toHaveLength(6);
    for (let power = 0; power <= 5; power++) {
      // Mean of x^n over a span: (b^(n+1) - a^(n+1)) / ((n+1)(b - a)).
      const mean = (a: number, b: number): number =>
        (b ** (power + 1) - a ** (power + 1)) / ((power + 1) * (b - a));
      const expected = 0.75 * mean(2, 4) + 0.25 * mean(10, 20);
      expect(sum(starts.map(({ at, weight }) => weight * at ** power)) / expected).toBeCloseTo(1, 9);
    }
  });
});

it("the chance of a span is what is done by its end less what was done by its start", () => {
  const way = {
    legs: [{ clock: evenClock(10), least: 20, most: 60 }],
    sigma: 0,
    starts: [{ at: 0, weight: 1 }],
  };
  const [usual, slow] = chancesOf({ from: 3 * DAY_MS, to: 4 * DAY_MS }, way, [1, 2]);
  expect(usual).toBeCloseTo(0.25, 9);
  expect(slow).toBeCloseTo(0, 9);
  const [later] = chancesOf({ from: 3 * DAY_MS, to: Infinity }, way, [1]);
  expect(later).toBeCloseTo(0.75, 9);
});

describe("the grid of paces", () => {
  const belief = { sigma: 0.1, deviation: 0 };

  it("begins as a lognormal pace around 1, four standard deviations to each side", () => {
    const grid = priorGrid(belief);
    expect(grid).toHaveLength(61);
    expect(grid[0]?.pace).toBeCloseTo(Math.exp(-0.4), 12);
    expect(grid[60]?.pace).toBeCloseTo(Math.exp(0.4), 12);
    const nodes = weighted(grid);
    expect(sum(nodes.map(({ weight }) => weight))).toBeCloseTo(1, 12);
    // Mean and variance of the logarithm.
    expect(sum(nodes.map(({ pace, weight }) => weight * Math.log(pace)))).toBeCloseTo(0, 12);
    expect(sum(nodes.map(({ pace, weight }) => weight * Math.log(pace) ** 2))).toBeCloseTo(0.01, 4);
  });

  it("has 15 offsets, 2.5 standard deviations to each side, where one may be", () => {
    const nodes = weighted(priorGrid({ sigma: 0.1, deviation: 2 }));
    const offsets = [...new Set(nodes.map(({ offset }) => offset))];
    expect(offsets).toHaveLength(15);
    expect([offsets[0], offsets[7], offsets[14]]).toEqual([-5, 0, 5]);
    const at = (offset: number): number =>
      sum(nodes.flatMap((node) => (node.offset === offset ? [node.weight] : [])));
    expect(at(5) / at(0)).toBeCloseTo(Math.exp(-(2.5 ** 2) / 2), 9);
    expect(at(5)).toBeCloseTo(at(-5), 12);
  });

  it("multiplies the belief in each point by the chance for every animal", () => {
    const grid = priorGrid(belief).slice(0, 2);
    const next = judged(grid, [0.5, 0.25], 3) ?? [];
    expect((next[0]?.logWeight ?? 0) - (grid[0]?.logWeight ?? 0)).toBeCloseTo(3 * Math.log(0.5), 12);
    expect((next[1]?.logWeight ?? 0) - (grid[1]?.logWeight ?? 0)).toBeCloseTo(3 * Math.log(0.25), 12);
    expect(next.map(({ pace }) => pace)).toEqual(grid.map(({ pace }) => pace));
    expect(judged(grid, [0, -1e-18], 1)).toBeNull();
    expect(judged(grid, [0, 1e-300], 1)).not.toBeNull();
  });

  it("is made finer around a narrow belief, and left alone around a wide one", () => {
    const wide = priorGrid(belief);
    expect(refined(wide, belief)).toBeNull();
    const narrow = judged(
      wide,
      wide.map(({ pace }) => Math.exp(-(((Math.log(pace) - 0.1) / 0.01) ** 2) / 2)),
      1,
    );
    const finer = refined(narrow ?? [], belief) ?? [];
    expect(finer).toHaveLength(61);
    const logs = finer.map(({ pace }) => Math.log(pace));
    const step = 0.8 / 60;
    // 6.4 standard deviations to each side, and a step more.
    expect(Math.min(...logs)).toBeGreaterThan(0.1 - 0.064 - 2 * step);
    expect(Math.min(...logs)).toBeLessThan(0.1 - 0.064 + 0.01);
    expect(Math.max(...logs)).toBeLessThan(0.1 + 0.064 + 2 * step);
    expect(Math.max(...logs)).toBeGreaterThan(0.1 + 0.064 - 0.01);
    // It holds the belief before, not what was seen: 2 % less likely at 0.2 standard deviations than at 0.
    const [first] = finer;
    const z = (node: typeof first): number => Math.log(node?.pace ?? 1) / 0.1;
    expect((finer[60]?.logWeight ?? 0) - (first?.logWeight ?? 0)).toBeCloseTo(
      (z(first) ** 2 - z(finer[60]) ** 2) / 2,
      9,
    );
  });

  it("weighs offsets alike whose paces lie differently close", () => {
    const offsets = { sigma: 0.1, deviation: 1 };
    const grid = priorGrid(offsets);
    // Each offset leaves a belief of the same weight, at another place and of another width.
    const next = judged(
      grid,
      grid.map(({ pace, offset }) => {
        const width = offset < 0 ? 0.002 : 0.03;
        return Math.exp(-((Math.log(pace) / width) ** 2) / 2) / width;
      }),
      1,
    );
    const finer = refined(next ?? [], offsets) ?? [];
    const again =
      judged(
        finer,
        finer.map(({ pace, offset }) => {
          const width = offset < 0 ? 0.002 : 0.03;
          return Math.exp(-((Math.log(pace) / width) ** 2) / 2) / width;
        }),
        1,
      ) ?? [];
    const nodes = weighted(again);
    const below = sum(nodes.flatMap(({ offset, weight }) => (offset < 0 ? [weight] : [])));
    const above = sum(nodes.flatMap(({ offset, weight }) => (offset > 0 ? [weight] : [])));
    // The wide one loses a little to the belief before: 1 / √(1 + 0.3²).
    expect(above / below).toBeCloseTo(1 / Math.sqrt(1 + 0.09), 2);
  });

  it("is thinned without moving the mean of any offset, or losing weight", () => {
    const nodes = weighted(priorGrid({ sigma: 0.1, deviation: 1 }));
    const thin = thinned(nodes);
    expect(thin.length).toBeLessThan(40);
    expect(sum(thin.map(({ weight }) => weight))).toBeCloseTo(1, 12);
    for (const offset of new Set(nodes.map((node) => node.offset))) {
      const of = (some: typeof nodes): number[] => {
        const here = some.filter((node) => node.offset === offset);
        const weight = sum(here.map((node) => node.weight));
        return [weight, sum(here.map((node) => node.weight * node.pace)) / weight];
      };
      of(thin).forEach((one, i) => expect(one).toBeCloseTo(of(nodes)[i] ?? Number.NaN, 9));
    }
    for (const { weight } of thin.slice(0, -1)) expect(weight).toBeLessThan(0.12);
    const few = weighted(priorGrid(belief));
    expect(thinned(few).length).toBeGreaterThan(12);
    expect(thinned([{ pace: 1, offset: 0, weight: 1 }])).toEqual([{ pace: 1, offset: 0, weight: 1 }]);
    expect(
      thinned([
        { pace: 1, offset: 0, weight: 0 },
        { pace: 2, offset: 0, weight: 1 },
      ]),
    ).toEqual([{ pace: 2, offset: 0, weight: 1 }]);
  });
});
