import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/rearing/cautions.ts";
import { season } from "../../src/rearing/season/season.ts";
import { SPECIES } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { seasonText } from "../../src/write/pages/season-text.ts";
import { city } from "../support/city.ts";
import { expectPlainPage } from "./plain-text.ts";

const NEW_YORK = city("new-york");
const place = { latitude: 40.8, longitude: -74 };

describe("seasonText", () => {
  it("prints the broods, the last eggs and each season", () => {
    const outlook = season({ lifeCycle: danausPlexippus, temperatures: NEW_YORK, place, firstEggs: "05-20" });
    const text = seasonText(outlook, { cautions: cautionsFor(danausPlexippus) });
    expectPlainPage(text);
    expect(text).toContain("What 4 past seasons say (2012 to 2015, northern hemisphere).");
    expect(text).toMatch(/^ {2}1 +20 May +26 Jun +26 Jun +29 Jun +4 of 4 +40 to 100 % +15\.\d h$/m);
    // When to look: the first eggs of the second brood over the four seasons, as the outlook has them.
    const [, second] = outlook.broods;
    expect(second?.eggs).toEqual({ earliest: "07-03", middle: "07-03", latest: "07-06" });
    expect(text).toMatch(/^WHEN TO LOOK FOR EGGS$/m);
    expect(text).toMatch(/^ {2}2 +3 Jul +3 Jul +6 Jul$/m);
    expect(text.replace(/\s+/g, " ")).toMatch(
      /Eggs found after 27 Aug may be too late to be done out of doors/,
    );
    expect(text).toMatch(/^ {2}1 Sep +4 of 4 +100 % +40 to 100 %$/m);
    expect(text).toMatch(/^ {2}2015 +20 May +4 +9 Sep +24 Nov +23 Nov +23 Nov \(cold\)$/m);
    expect(text).toContain("TAKE CARE");
    expect(text.replace(/\s+/g, " ")).toContain("To be 90 % sure in a coming season of the same kind: by");
  });

  it("says so where nothing ends the season, nothing develops, or no eggs make it", () => {
    const of = (min: number, max: number) =>
      seasonText(
        season({
          lifeCycle: danausPlexippus,
          temperatures: dailyTemperatures("2021-01-01", Array(1095).fill(min), Array(1095).fill(max)),
        }),
      );
    for (const text of [of(16, 26), of(-5, 5)]) expectPlainPage(text);
    expect(of(16, 26)).toContain("Nothing ends the season here");
    expect(of(-5, 5).replace(/\s+/g, " ")).toContain("In none of the seasons do 90 % of the animals emerge");
    expect(of(-5, 5)).toContain("No brood");
    expect(of(-5, 5)).not.toContain("LOOK FOR EGGS");
    expect(of(16, 26)).not.toContain("too late");
  });

  it("shows the frost limit in either unit", () => {
    const outlook = season({ lifeCycle: danausPlexippus, temperatures: NEW_YORK, frostBelow: -2 });
    expect(seasonText(outlook, { unit: "F" })).toContain("a frost below 28.4 °F");
    expect(seasonText(outlook)).toContain("a frost below -2 °C");
  });

  it.each(SPECIES)("$species fits the page", (lifeCycle) => {
    const outlook = season({ lifeCycle, temperatures: NEW_YORK, place, preLayingDays: 3 });
    expectPlainPage(seasonText(outlook, { cautions: cautionsFor(lifeCycle) }));
  });
});
