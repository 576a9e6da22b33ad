import { describe, expect, test } from "vitest";
import { checkLifeCycle } from "../../src/species/check-life-cycle.ts";
import { SPECIES, danausPlexippus } from "../../src/species/index.ts";
import type { LifeCycle, Sourced, StageId, StageNeeds } from "../../src/species/life-cycle.ts";
import { refusalOf } from "../support/refusal.ts";

const invented = (value: number): Sourced => ({
  value,
  mark: "common practice, no source",
  source: "invented",
});

const egg: StageNeeds = {
  stage: "egg",
  degreeDays: invented(45),
  lower: invented(10),
  upper: invented(32),
  cutoff: "horizontal",
  cv: invented(0.1),
  tested: null,
};

const plain: LifeCycle = { ...danausPlexippus, hang: null, darkening: null, stages: [egg] };

function withStages(...stages: Exclude<StageId, "prepupa" | "adult">[]): LifeCycle {
  return { ...plain, stages: stages.map((stage) => ({ ...egg, stage })) };
}

describe("checkLifeCycle", () => {
  test.each(SPECIES.map((lifeCycle) => [lifeCycle.species, lifeCycle] as const))(
    "passes %s",
    (_, lifeCycle) => {
      expect(checkLifeCycle(lifeCycle)).toBe(lifeCycle);
    },
  );

  test.each([
    [["egg", "larva", "pupa"]],
    [["egg", "instar-1", "instar-2", "instar-3", "pupa"]],
    [["instar-3", "instar-4", "pupa"]],
    [["egg"]],
  ] as const)("passes the stages %j", (stages) => {
    expect(checkLifeCycle(withStages(...stages)).stages).toHaveLength(stages.length);
  });

  test.each([
    [["pupa", "egg"], 1],
    [["egg", "egg"], 1],
    [["egg", "larva", "instar-2"], 2],
    [["egg", "instar-1", "instar-3"], 2],
    [["egg", "instar-2"], 1],
  ] as const)("refuses the stages %j", (stages, at) => {
    const error = refusalOf(() => checkLifeCycle(withStages(...stages)));
    expect(error).toMatchObject({ code: "invalid-life-cycle", path: ["stages", at, "stage"] });
  });

  test.each<[string, Partial<StageNeeds>, string]>([
    ["a lower threshold at the upper one", { lower: invented(32) }, "stages.0.lower.value"],
    ["no heat needed", { degreeDays: invented(0) }, "stages.0.degreeDays.value"],
    ["a cv of 1", { cv: invented(1) }, "stages.0.cv.value"],
    ["a negative cv", { cv: invented(-0.1) }, "stages.0.cv.value"],
    ["NaN", { lower: invented(NaN) }, "stages.0.lower.value"],
    ["a cutoff without an upper threshold", { upper: null }, "stages.0.cutoff"],
    ["a number without a source", { cv: { ...invented(0.1), source: " " } }, "stages.0.cv.source"],
    ["an unknown cutoff", { cutoff: "horizntal" as never }, "stages.0.cutoff"],
    ["no cutoff", { cutoff: undefined as never }, "stages.0.cutoff"],
    ["an unknown mark", { cv: { ...invented(0.1), mark: "sure" as never } }, "stages.0.cv.mark"],
    [
      "an unknown mark of the tested range",
      { tested: { low: 15, high: 30, mark: "sure" as never, source: "invented" } },
      "stages.0.tested.mark",
    ],
    [
      "tested backwards",
      { tested: { low: 30, high: 15, mark: "read", source: "invented" } },
      "stages.0.tested.low",
    ],
  ])("refuses %s", (_, change, place) => {
    const error = refusalOf(() => checkLifeCycle({ ...plain, stages: [{ ...egg, ...change }] }));
    expect(error.code).toBe("invalid-life-cycle");
    expect(error.message.startsWith(`${place} is `)).toBe(true);
  });

  test.each<[string, Partial<LifeCycle>, readonly string[]]>([
    ["no stages", { stages: [] }, ["stages"]],
    ["an id with blanks", { species: "Danaus plexippus" }, ["species"]],
    ["a hang of everything", { hang: invented(1), stages: [{ ...egg, stage: "larva" }] }, ["hang", "value"]],
    ["a hang without a larva", { hang: invented(0.1) }, ["hang"]],
    ["darkening without a pupa", { darkening: invented(0.1) }, ["darkening"]],
    ["a correlation above 1", { stageCorrelation: invented(1.1) }, ["stageCorrelation", "value"]],
  ])("refuses %s", (_, change, path) => {
    expect(refusalOf(() => checkLifeCycle({ ...plain, ...change }))).toMatchObject({
      code: "invalid-life-cycle",
      path,
    });
  });

  test("refuses a misspelt handling", () => {
    const handling: readonly never[] = ["harmful-sap" as never, "never-relase" as never];
    expect(refusalOf(() => checkLifeCycle({ ...plain, handling }))).toMatchObject({
      code: "invalid-life-cycle",
      path: ["handling", 1],
    });
  });

  test.each([undefined, null, "never-release"])("refuses the handling %j", (handling) => {
    const error = refusalOf(() => checkLifeCycle({ ...plain, handling: handling as never }));
    expect(error.path).toEqual(["handling"]);
  });

  test("no upper threshold and no cutoff is a life cycle too", () => {
    expect(() =>
      checkLifeCycle({ ...plain, stages: [{ ...egg, upper: null, cutoff: "none" }] }),
    ).not.toThrow();
  });
});
