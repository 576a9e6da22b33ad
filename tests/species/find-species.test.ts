import { describe, expect, it } from "vitest";
import { SPECIES, findSpecies } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { refusalOf } from "../support/refusal.ts";

const refusal = (id: string) => refusalOf(() => findSpecies(id));

describe("findSpecies", () => {
  it.each(SPECIES.map((lifeCycle) => [lifeCycle.species, lifeCycle] as const))(
    "finds %s by its id",
    (id, lifeCycle) => {
      expect(findSpecies(id)).toBe(lifeCycle);
      expect(findSpecies(` ${id.toUpperCase()} `)).toBe(lifeCycle);
      expect(findSpecies(lifeCycle.latinName.toUpperCase()).latinName).toBe(lifeCycle.latinName);
      expect(findSpecies(lifeCycle.commonName.toUpperCase())).toBe(lifeCycle);
    },
  );

  it("means the default set by a name that two sets share", () => {
    expect(findSpecies("Danaus plexippus")).toBe(danausPlexippus);
  });

  it.each([
    ["danaus plexipus", "Danaus plexippus"],
    ["danaus-plexipus", "danaus-plexippus"],
    ["monarc", "monarch"],
    ["codlin moth", "codling moth"],
  ])("offers a near name for %s", (typed, offered) => {
    const error = refusal(typed);
    expect(error.code).toBe("unknown-species");
    expect(error.path).toEqual(["species"]);
    expect(error.value).toBe(typed);
    expect(error.message).toContain(`"${typed}"`);
    expect(error.message).toContain(offered);
  });

  it("lists all ids where nothing is near", () => {
    const { message } = refusal("zzzzzzzzzzzzzzzzzzzzzzzzzzzzzz");
    for (const { species } of SPECIES) expect(message).toContain(species);
  });

  it("refuses an empty name", () => {
    expect(refusal("").code).toBe("unknown-species");
  });
});
