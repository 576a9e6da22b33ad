import { describe, expect, it } from "vitest";
import * as everything from "../../src/species/index.ts";
import { SPECIES } from "../../src/species/catalogue.ts";
import { checkLifeCycle } from "../../src/species/check-life-cycle.ts";
import { STAGE_IDS, type LifeCycle, type Sourced } from "../../src/species/life-cycle.ts";

function sourcedNumbers(lifeCycle: LifeCycle): readonly Sourced[] {
  return [
    ...lifeCycle.stages.flatMap(({ degreeDays, lower, upper, cv }) => [degreeDays, lower, upper, cv]),
    lifeCycle.hang,
    lifeCycle.darkening,
    lifeCycle.stageCorrelation,
  ].filter((one) => one !== null);
}

const larval = (stage: string): boolean => stage === "larva" || stage.startsWith("instar-");

describe.each(SPECIES.map((lifeCycle) => ({ id: lifeCycle.species, lifeCycle })))("$id", ({ lifeCycle }) => {
  const stages = lifeCycle.stages.map(({ stage }) => stage);

  it("is named after its Latin name", () => {
    expect(lifeCycle.species).toMatch(/^[a-z]+(-[a-z]+)+$/);
    expect(lifeCycle.species.startsWith(lifeCycle.latinName.toLowerCase().replace(" ", "-"))).toBe(true);
    expect(lifeCycle.commonName.trim()).not.toBe("");
  });

  it("runs from egg to pupa in the order of life, without a gap or a repeat", () => {
    expect(stages[0]).toBe("egg");
    expect(stages.at(-1)).toBe("pupa");
    expect(stages).toEqual(STAGE_IDS.filter((id) => stages.some((stage) => stage === id)));
    const instars = stages.filter((stage) => stage.startsWith("instar-"));
    expect(instars).toEqual(instars.map((_, i) => `instar-${i + 1}`));
    expect(stages.filter(larval).length).toBe(instars.length || 1);
  });

  it("has sensible constants", () => {
    for (const { stage, degreeDays, lower, upper, cv, cutoff, tested } of lifeCycle.stages) {
      expect(degreeDays.value, stage).toBeGreaterThan(0);
      expect(lower.value, stage).toBeGreaterThan(0);
      expect(lower.value, stage).toBeLessThan(20);
      if (upper) expect(upper.value, stage).toBeGreaterThan(lower.value);
      expect(cutoff === "none", stage).toBe(upper === null);
      expect(cv.value, stage).toBeGreaterThan(0);
      expect(cv.value, stage).toBeLessThan(0.3);
      if (tested) expect(tested.low, stage).toBeLessThan(tested.high);
    }
    for (const share of [lifeCycle.hang, lifeCycle.darkening]) {
      if (share) expect(share.value).toBeGreaterThan(0);
      if (share) expect(share.value).toBeLessThan(0.5);
    }
    expect(lifeCycle.stageCorrelation.value).toBeGreaterThanOrEqual(0);
    expect(lifeCycle.stageCorrelation.value).toBeLessThanOrEqual(1);
  });

  it("names a source for every number", () => {
    for (const { value, source } of sourcedNumbers(lifeCycle)) {
      expect(Number.isFinite(value)).toBe(true);
      expect(source.length).toBeGreaterThan(10);
    }
    for (const { tested } of lifeCycle.stages) if (tested) expect(tested.source).not.toBe("");
  });

  it("cites a year wherever it is not a rule of thumb", () => {
    for (const { mark, source } of sourcedNumbers(lifeCycle))
      if (mark !== "common practice, no source" && !source.includes("UC Publ. 3340"))
        expect(source).toMatch(/\b(19|20)\d\d\b/);
  });

  it("remarks in whole sentences", () => {
    for (const remark of lifeCycle.remarks) expect(remark).toMatch(/^[A-Z].*\.$/);
  });

  it("passes the check that a user's own species has to pass", () => {
    expect(() => checkLifeCycle(lifeCycle)).not.toThrow();
  });

  it("is plain data", () => {
    expect(JSON.parse(JSON.stringify(lifeCycle))).toEqual(lifeCycle);
  });

  it("is exported under its camel-case name", () => {
    const name = lifeCycle.species.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
    expect(Object.entries(everything)).toContainEqual([name, lifeCycle]);
  });
});

describe("the catalogue", () => {
  it("has each id once, in order", () => {
    const ids = SPECIES.map(({ species }) => species);
    expect(ids).toEqual([...new Set(ids)].sort());
  });
});
