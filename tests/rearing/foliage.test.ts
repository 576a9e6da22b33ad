import { describe, expect, it } from "vitest";
import { dayPlan } from "../../src/rearing/plan/day-plan.ts";
import { foliageFromTotal, foliageNeedsFor } from "../../src/rearing/plan/foliage-needs.ts";
import type { PlanOptions } from "../../src/rearing/plan/plan-options.ts";
import { sourced } from "../../src/species/sourced.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { inventedForecast } from "../support/invented-season.ts";
import { refusalOf } from "../support/refusal.ts";

const forecast = inventedForecast();
const season = (options: PlanOptions = {}, change = {}) =>
  dayPlan([{ name: "porch", lifeCycle: danausPlexippus, forecast, ...change }], options).foliage[0];

describe("foliageNeedsFor", () => {
  // An anecdotal account read: about 6 to 8 large leaves of common milkweed a larva; about 80 % of it in the last
  // instar is from memory. Both are rules of thumb: common practice, no source.
  it("gives a monarch larva 6 to 8 leaves in all, four fifths of them in the last instar", () => {
    const leaves = Object.values(foliageNeedsFor(danausPlexippus)?.leaves ?? {});
    const total = leaves.reduce((sum, { value }) => sum + value, 0);
    expect(total).toBeGreaterThanOrEqual(6);
    expect(total).toBeLessThanOrEqual(8);
    expect((foliageNeedsFor(danausPlexippus)?.leaves["instar-5"]?.value ?? 0) / total).toBeCloseTo(0.8, 9);
    expect(new Set(leaves.map(({ mark }) => mark))).toEqual(new Set(["common practice, no source"]));
  });

  it("holds for every set of constants of the species, and for no other species", () => {
    expect(foliageNeedsFor(findSpecies("danaus-plexippus-refitted-pupa"))?.food).toBe("milkweed");
    expect(foliageNeedsFor(findSpecies("pieris-rapae"))).toBeNull();
  });

  it("prefers the caller's own numbers, all of them", () => {
    const own = foliageFromTotal(danausPlexippus, 10, { food: "swamp milkweed" });
    expect(foliageNeedsFor(danausPlexippus, [own])).toBe(own);
    const one = sourced("read", "own weighing")(3);
    const partial = { latinName: "danaus plexippus", food: "milkweed", leaves: { "instar-5": one } };
    expect(refusalOf(() => foliageNeedsFor(danausPlexippus, [partial])).message).toContain(
      "needs.0.leaves.instar-1.value is undefined",
    );
    expect(refusalOf(() => foliageFromTotal(danausPlexippus, 0)).message).toContain("leavesPerLarva is 0");
  });

  it("leaves a larva without instars its whole total", () => {
    const moth = findSpecies("cydia-pomonella");
    expect(foliageFromTotal(moth, 4).leaves.larva?.value).toBe(4);
  });
});

describe("the season of a food", () => {
  it("comes to what all larvae eat from the egg on", () => {
    expect(season()?.total).toBeCloseTo(12 * 7, 6);
    expect(season()?.days.at(-1)?.eaten).toBe(season()?.total);
  });

  it("comes to less for larvae that were found halfway", () => {
    const later = inventedForecast({ found: { stage: "instar-5", on: "2026-06-20", count: 10 } });
    // Anywhere in the stage: on average half of the 5.6 leaves are still to come.
    expect(season({}, { forecast: later })?.total).toBeCloseTo((10 * 5.6) / 2, 6);
  });

  it("has its peak in the last instar, and its parts never below the expected", () => {
    const foliage = season();
    const window = forecast.stages.find(({ stage }) => stage === "instar-5")?.begins;
    expect((foliage?.peak ?? "") > (window?.early?.slice(0, 10) ?? "")).toBe(true);
    for (const { expected, most } of foliage?.days ?? []) expect(most).toBeGreaterThanOrEqual(expected);
    expect(foliage?.withMargin).toBe((foliage?.total ?? 0) + (foliage?.margin ?? 0));
  });

  it("counts stems", () => {
    expect(season({ leavesPerStem: 10 })?.stems).toBe(Math.ceil((season()?.withMargin ?? 0) / 10));
    expect(season()?.stems).toBeNull();
  });

  it("says on which day a supply does not last", () => {
    const foliage = season({ supplies: [{ leaves: 40 }] });
    const before = foliage?.days.findLast(({ eaten }) => eaten <= 40)?.day ?? "";
    expect(foliage?.runsOut).toBe(foliage?.days.find(({ day }) => day > before)?.day);
    expect((foliage?.runsOutEarly ?? "") <= (foliage?.runsOut ?? "")).toBe(true);
    for (const { left, eaten } of foliage?.days ?? []) expect(left).toBe(Math.max(0, 40 - eaten));
  });

  it("lasts with what comes in time, and with the margin also for early animals", () => {
    const late = { leaves: 200, on: "2026-06-28" };
    expect(season({ supplies: [{ leaves: 40 }, late] })?.runsOut).not.toBeNull();
    expect(season({ supplies: [{ leaves: 40 }, { ...late, on: "2026-06-15" }] })?.runsOut).toBeNull();
    const enough = season({ supplies: [{ leaves: season()?.withMargin ?? 0 }] });
    expect([enough?.runsOut, enough?.runsOutEarly]).toEqual([null, null]);
    const scarce = season({ supplies: [{ leaves: 84 }] });
    expect(scarce?.runsOut).toBeNull();
  });

  it("tells a shortage among what does not fit together", () => {
    const conflicts = (leaves: number) =>
      dayPlan([{ name: "porch", lifeCycle: danausPlexippus, forecast }], { supplies: [{ leaves }] })
        .conflicts;
    const short = conflicts(60).find(({ code }) => code === "foliage-short");
    expect(short?.message).toMatch(
      /^The milkweed runs out on 2026-06-\d\d\. 24 leaves in all are missing\.$/,
    );
    expect(conflicts(200).map(({ code }) => code)).not.toContain("foliage-short");
  });

  it("keeps foods apart", () => {
    const white = findSpecies("pieris-rapae");
    const other = inventedForecast({ lifeCycle: white, found: { stage: "egg", on: "2026-06-10", count: 4 } });
    const cohorts = [
      { name: "a", lifeCycle: danausPlexippus, forecast },
      { name: "b", lifeCycle: white, forecast: other },
    ];
    const needs = [foliageFromTotal(white, 2, { food: "cabbage" })];
    const { foliage } = dayPlan(cohorts, { needs, supplies: [{ food: "cabbage", leaves: 3 }] });
    expect(foliage.map(({ food, cohorts: names, supplied }) => [food, names, supplied])).toEqual([
      ["cabbage", ["b"], 3],
      ["milkweed", ["a"], null],
    ]);
    expect(refusalOf(() => dayPlan(cohorts, { needs, supplies: [{ leaves: 3 }] })).message).toContain(
      'it must be one of "cabbage", "milkweed"',
    );
  });
});
