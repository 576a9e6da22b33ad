import { describe, expect, it } from "vitest";
import { foliageNeedsFor } from "../../src/rearing/plan/foliage-needs.ts";
import { heatLimit } from "../../src/rearing/start/heat-limit.ts";
import { autumnCueOf, preLayingOf } from "../../src/rearing/season/season-limits.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { isSpecies } from "../../src/species/is-species.ts";

const named = (latinName: string) => ({ ...danausPlexippus, latinName });

const SAME = [
  "Danaus plexippus",
  "danaus PLEXIPPUS",
  "  Danaus   plexippus ",
  "Danaus plexippus plexippus",
  "Danaus plexippus (Linnaeus, 1758)",
];
const OTHER = ["Danaus plexippusa", "Danaus", "Danaus chrysippus", "A Danaus plexippus", ""];

describe("isSpecies", () => {
  it.each(SAME)("is the monarch: %j", (name) => {
    expect(isSpecies(named(name), "Danaus plexippus")).toBe(true);
  });

  it.each(OTHER)("is not the monarch: %j", (name) => {
    expect(isSpecies(named(name), "Danaus plexippus")).toBe(false);
  });
});

describe("what is published on a species", () => {
  const knownOf = (latinName: string) => {
    const one = named(latinName);
    return [
      heatLimit(one).hottest,
      preLayingOf(one)?.value,
      autumnCueOf(one)?.mark,
      foliageNeedsFor(one)?.food,
    ];
  };

  it.each(SAME)("holds for %j", (name) => {
    expect(knownOf(name)).toEqual([29, 6.5, "read", "milkweed"]);
  });

  it.each(OTHER)("does not hold for %j", (name) => {
    expect(knownOf(name)).toEqual([30, undefined, undefined, undefined]);
  });
});
