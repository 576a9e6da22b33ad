import { describe, expect, it } from "vitest";
import { chanceBetween } from "../../src/forecast/chance.ts";
import { type ForecastInput, forecast } from "../../src/forecast/forecast.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { startOfDay } from "../../src/time/zone.ts";
import { city } from "../support/city.ts";
import { refusalOf, refusalParts } from "../support/refusal.ts";

const input: ForecastInput = {
  lifeCycle: danausPlexippus,
  found: { stage: "egg", on: "2015-06-08" },
  temperatures: city("new-york"),
};

/** An argument as a caller without types may give it. */
function loose(json: string): never {
  return JSON.parse(json) as never;
}

describe("the shares of a window", () => {
  it.each([
    [[0, 0.5, 0.9]],
    [[-0.1, 0.5, 0.9]],
    [[0.5, 0.5, 0.9]],
    [[0.1, 0.9, 0.9]],
    [[0.1, 0.95, 0.9]],
    [[0.1, 0.5, 1]],
    [[0.1, 0.5, 1.5]],
  ])("are refused as %j", (shares) => {
    expect(refusalParts(() => forecast({ ...input, shares: shares as never }))).toEqual([
      "invalid-option",
      "shares",
      shares,
      `shares is ${shares.join(", ")}; it must be three rising shares between 0 and 1, such as 0.1, 0.5, 0.9.`,
    ]);
  });

  it("are refused where they are no list", () => {
    expect(refusalParts(() => forecast({ ...input, shares: loose("7") }))).toEqual([
      "invalid-option",
      "shares",
      7,
      "shares is 7; it must be a list of three shares.",
    ]);
  });
});

describe("chanceBetween", () => {
  const day = startOfDay("2015-07-05", null);

  it("names the instant or the milestone that is none", () => {
    expect(refusalParts(() => chanceBetween(input, "adult", Number.NaN, day))).toEqual([
      "invalid-number",
      "from",
      Number.NaN,
      "from is NaN; it must be a time in milliseconds.",
    ]);
    expect(refusalParts(() => chanceBetween(input, "adult", day, Infinity))).toEqual([
      "invalid-number",
      "to",
      Infinity,
      "to is Infinity; it must be a time in milliseconds.",
    ]);
    expect(refusalParts(() => chanceBetween(input, "adult", day, day - 1)).slice(0, 3)).toEqual([
      "invalid-option",
      "to",
      day - 1,
    ]);
    for (const to of [day + 1, startOfDay("2015-06-01", null)]) {
      expect(refusalParts(() => chanceBetween(input, loose('"wings"'), to - 1, to))).toEqual([
        "unknown-stage",
        "milestone",
        "wings",
        'milestone is "wings", which does not lie ahead of the animals by the constants of Danaus plexippus; use one of instar-1, instar-2, instar-3, instar-4, instar-5, prepupa, pupa, darkening, adult.',
      ]);
    }
  });

  it("is sure of nothing before the find", () => {
    const found = startOfDay("2015-06-08", null);
    const before = { before: 0, within: 0, after: 1, ways: [{ weight: 1, within: 0 }] };
    expect(chanceBetween(input, "instar-1", found - 10, found)).toEqual({ chance: before, absence: null });
  });

  it("knows no chance beyond the temperatures, in one of the years either", () => {
    const short = dailyTemperatures(
      "2015-06-08",
      Array(20).fill(15) as number[],
      Array(20).fill(25) as number[],
    );
    const asked = { ...input, temperatures: short };
    expect(chanceBetween(asked, "adult", day, day + 1).absence?.reason).toBe("series-ends");
    const inside = startOfDay("2015-06-20", null);
    expect(chanceBetween(asked, "adult", inside, inside + 1).absence).toBeNull();
    const years = weatherEnsemble({
      observed: short,
      until: "2015-06-27",
      past: city("new-york"),
      exclude: [2015],
      days: 30,
    });
    const late = startOfDay("2015-08-20", null);
    expect(chanceBetween({ ...input, temperatures: years }, "adult", day, day + 1).absence).toBeNull();
    expect(chanceBetween({ ...input, temperatures: years }, "adult", late, late + 1).chance).toBeNull();
  });
});

it("names a member of an ensemble that is no series", () => {
  const ensemble = weatherEnsemble({
    observed: city("new-york"),
    until: "2015-06-20",
    past: city("new-york"),
    exclude: [2015],
  });
  const spoilt = { ...ensemble, groups: [{ ...ensemble.groups[0], members: [{ kind: "weekly" }] }] };
  expect(refusalOf(() => forecast({ ...input, temperatures: spoilt as never })).code).toBe("invalid-option");
});
