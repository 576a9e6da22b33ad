import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { danausPlexippusRefittedPupa } from "../../src/species/danaus-plexippus-refitted-pupa.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { needsOf } from "../support/constant-temperature.ts";
import { published } from "../support/published.ts";
import {
  correlationTable,
  fitTable,
  incubatorTable,
  larvaPupaCorrelations,
  larvaPupaTable,
  spreadTable,
  wholeLifeTable,
} from "./evidence-tables.ts";
import {
  constantGiven,
  incubators,
  leaveOneOutError,
  outdoorError,
  relativeError,
  ways,
} from "./pupal-fit.ts";

// Rows: Ragonese et al. 2024 and DuBose et al. 2025, open data (fixtures/published/monarch-rearing.json).

const [refitted] = needsOf(danausPlexippusRefittedPupa, ["pupa"]);

describe("the refitted pupal constant", () => {
  it("comes out of its rows to the printed digit", () => {
    expect(constantGiven(11.5, incubators).degreeDays.toFixed(1)).toBe(refitted?.degreeDays.value.toFixed(1));
  });

  it("rests on a 30 °C row that is 121.0 degree-days over 11.5 °C", () => {
    const row = incubators.find(({ temperature }) => temperature === 30);
    expect(row?.days.toFixed(2)).toBe((121.0 / (30 - 11.5)).toFixed(2));
  });

  it("is the only thing that differs from the default monarch", () => {
    const others = (stages: typeof danausPlexippus.stages) => stages.filter(({ stage }) => stage !== "pupa");
    expect(others(danausPlexippusRefittedPupa.stages)).toEqual(others(danausPlexippus.stages));
  });
});

describe("why the published constants are the default", () => {
  const [publishedWay, refittedWay] = ways;
  if (!publishedWay || !refittedWay) throw new Error("two ways are needed");

  it("no fitted way predicts a left-out incubator better", () => {
    for (const way of ways.slice(1))
      expect(leaveOneOutError(way), way.name).toBeGreaterThan(leaveOneOutError(publishedWay));
  });

  it("at 26 °C, where summer rearing is, the refitted constant is more than 8 % too long", () => {
    const row = incubators.find(({ temperature }) => temperature === 26);
    if (!row) throw new Error("no incubator at 26 °C");
    expect(Math.abs(relativeError(publishedWay.fit(incubators), row))).toBeLessThan(0.08);
    expect(relativeError(refittedWay.fit(incubators), row)).toBeGreaterThan(0.08);
  });

  it("outdoors each is closer in one season", () => {
    const error = (way: typeof publishedWay, season: "summer" | "fall") =>
      Math.abs(outdoorError(way.fit(incubators), season)[0]);
    expect(error(refittedWay, "summer")).toBeLessThan(error(publishedWay, "summer"));
    expect(error(publishedWay, "fall")).toBeLessThan(error(refittedWay, "fall"));
  });

  it("above the base both outdoor sums fall with the base as fast as the day count allows", () => {
    // Guards the step that outdoorError takes beyond the two bases for which sums are known.
    for (const { season, days, degreeDays, degreeDaysAbove10 } of published("monarch-rearing").outdoor.pupa) {
      const pace = (degreeDaysAbove10 - degreeDays) / 1.5;
      expect(pace, season).toBeLessThan(days.mean * 1.02);
      if (season === "summer") expect(pace).toBeGreaterThan(days.mean * 0.98);
    }
  });
});

describe("docs/evidence.md", () => {
  const squeezed = (text: string): string => text.replace(/ +/g, " ");
  const evidence = squeezed(readFileSync(new URL("../../docs/evidence.md", import.meta.url), "utf8"));
  if (!refitted) throw new Error("no refitted pupa");
  const line = { lower: refitted.lower.value, degreeDays: refitted.degreeDays.value };

  it.each([
    ...fitTable(),
    ...incubatorTable(line),
    ...correlationTable(),
    ...larvaPupaTable(),
    ...spreadTable(),
    ...wholeLifeTable(),
  ])("has the line %s", (tableLine) => {
    expect(evidence).toContain(squeezed(tableLine));
  });

  it("may say that larval and pupal days of one animal go apart rather than together", () => {
    for (const { temperature, corrected } of larvaPupaCorrelations())
      if (corrected !== null) expect(corrected, `${temperature} °C`).toBeLessThan(0);
  });
});
