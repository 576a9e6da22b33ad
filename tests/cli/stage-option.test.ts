import { describe, expect, it } from "vitest";
import { FOUND, moltline, refused } from "./in-memory.ts";

const HERE = "forecast --temperatures new-york.csv --unit C --on 2015-06-08 --json";
const stageOf = async (species: string, found: string): Promise<unknown> => {
  const { code, out, err } = await moltline([...HERE.split(" "), "--species", species, "--found", found]);
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out).found.stage;
};

describe("stages as options name them", () => {
  it.each([
    ["monarch", "caterpillar hatched", null],
    ["monarch", "hatched", "instar-1"],
    ["cydia-pomonella", "hatches", "larva"],
    ["monarch", "L3", "instar-3"],
    ["monarch", "Third Instar", "instar-3"],
    ["monarch", "chrysalis", "pupa"],
    ["monarch", "instar-5", "instar-5"],
  ])("%s found as %s", async (species, found, stage) => {
    if (stage === null) {
      const words = [...HERE.split(" "), "--species", species, "--found", found];
      expect(await refused(words)).toContain(`--found is "${found}"; `);
    } else expect(await stageOf(species, found)).toBe(stage);
  });

  it("offers what a log may say too", async () => {
    const words = (stage: string): string => `${HERE} --species monarch --found ${stage}`;
    expect(await refused(words("hatchd"))).toContain("did you mean hatch or hatched");
    expect(await refused(words("xyzzyxyzzyxyzzy"))).toContain("it must be one of egg, ");
  });

  it("takes every word of hatching for a milestone", async () => {
    const wanted = `start-for --day 2015-06-20 --constant 25 ${FOUND.replace("--on 2015-06-08 ", "")} --json`;
    for (const word of ["hatches", "hatch", "hatched", "hatching"]) {
      const { out, err } = await moltline(`${wanted} --milestone ${word}`);
      expect(JSON.parse(out || `"${err}"`)).toMatchObject({ milestone: "instar-1" });
    }
  });
});
