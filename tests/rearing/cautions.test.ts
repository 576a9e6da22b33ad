import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/rearing/cautions.ts";
import { releaseRuledOut } from "../../src/rearing/release/release-hours.ts";
import { SPECIES, findSpecies } from "../../src/species/catalogue.ts";
import { refusalOf } from "../support/refusal.ts";

const idsFor = (species: string) => cautionsFor(findSpecies(species)).map(({ id }) => id);

describe.each(SPECIES.map((lifeCycle) => ({ id: lifeCycle.species, lifeCycle })))(
  "cautionsFor($id)",
  ({ lifeCycle }) => {
    const cautions = cautionsFor(lifeCycle);
    const ids = cautions.map(({ id }) => id);

    it("puts the law first", () => {
      expect(ids[0]).toBe("local-law");
      expect(cautions[0]?.text).toContain("local authority");
    });

    it("always warns of disease, parasites, crowding, transport and heat", () => {
      expect(ids).toEqual(
        expect.arrayContaining(["hygiene", "parasites", "few-animals", "same-region", "heat"]),
      );
    });

    it("follows what is known of handling the species", () => {
      expect(ids.includes("sap-and-eyes")).toBe(lifeCycle.handling.includes("harmful-sap"));
      expect(ids.includes("never-release")).toBe(lifeCycle.handling.includes("never-release"));
      expect(ids.includes("not-native")).toBe(lifeCycle.handling.includes("not-native-in-places"));
    });

    it("speaks of releasing healthy adults only where releasing is not ruled out", () => {
      const ruledOut = ids.includes("never-release") || ids.includes("not-native");
      expect(ids.includes("sick-adults")).toBe(!ruledOut);
    });

    it("has each caution once, in short plain sentences", () => {
      expect(new Set(ids).size).toBe(ids.length);
      for (const { title, text } of cautions) {
        expect(title.length).toBeLessThanOrEqual(40);
        expect(text.length).toBeLessThanOrEqual(300);
        expect(text).toMatch(/^[A-Z].*\.$/);
        expect(text).not.toMatch(/\n/);
      }
    });

    it("never grants anything", () => {
      for (const { text } of cautions)
        expect(text).not.toMatch(/\b(you may|is allowed|is legal|no permit is needed|is permitted)\b/i);
    });
  },
);

describe("cautionsFor", () => {
  it("sends a monarch keeper with sap in the eye to an eye clinic", () => {
    // Case Rep. Ophthalmol. Med. 2014:829469; Yang & Beal 2021, Cornea 40:1607.
    const sap = cautionsFor(findSpecies("monarch")).find(({ id }) => id === "sap-and-eyes");
    expect(sap?.text).toMatch(/gloves/);
    expect(sap?.text).toMatch(/wash your hands/);
    expect(sap?.text).toMatch(/eye clinic/);
  });

  it("keeps pests closed in", () => {
    for (const species of ["cydia-pomonella", "spodoptera-frugiperda", "harmonia-axyridis"])
      expect(idsFor(species)).toContain("never-release");
  });
});

describe("a misspelt or missing handling", () => {
  const pest = findSpecies("pieris-rapae");

  it.each([[["never-relase"]], [undefined], [null]])("%j is refused and silences no caution", (handling) => {
    const misspelt = { ...pest, handling: handling as never };
    expect(refusalOf(() => cautionsFor(misspelt)).path[0]).toBe("handling");
    expect(refusalOf(() => releaseRuledOut(misspelt)).path[0]).toBe("handling");
  });
});
