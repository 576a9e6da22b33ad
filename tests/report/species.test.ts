import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { SPECIES } from "../../src/species/catalogue.ts";
import * as species from "../../src/species/index.ts";
import { inCamelCase, sourcesTables, speciesPage } from "./species.ts";

const read = (page: string): string => readFileSync(new URL(`../../docs/${page}`, import.meta.url), "utf8");

describe("npm run report:species", () => {
  it("has written docs/species.md as the species are", async () => {
    expect(read("species.md")).toBe(await speciesPage());
  });

  it("has written the tables of docs/explanation/sources.md", async () => {
    const [, tables] =
      /<!-- npm run report:species -->\n\n([\s\S]*?)\n<!-- end of the generated tables -->/.exec(
        read("explanation/sources.md"),
      ) ?? [];
    expect(tables).toBe(await sourcesTables());
  });

  it("names each species as it is exported", () => {
    for (const one of SPECIES)
      expect(Object.entries(species)).toContainEqual([inCamelCase(one.species), one]);
  });

  it("names each source and each remark of each species", async () => {
    // Emphasis and line breaks are the formatter's.
    const page = (await speciesPage()).replace(/[*_\\]/g, "");
    for (const { stages, remarks } of SPECIES) {
      const sources = stages.flatMap(({ degreeDays, lower, upper, cv, tested }) =>
        [degreeDays, lower, upper, cv, tested].flatMap((one) => one?.source ?? []),
      );
      for (const text of [...sources, ...remarks]) expect(page).toContain(text.replace(/[*_\\]/g, ""));
    }
  });
});
