import { describe, expect, it } from "vitest";
import { type ReleaseOptions, releaseHours } from "../../src/rearing/release/release-hours.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { releaseText } from "../../src/write/pages/release-text.ts";
import { fairWeather, withoutHours } from "../support/fair-weather.ts";
import { inventedForecast } from "../support/invented-season.ts";
import { expectPlainPage } from "./plain-text.ts";

const OPTIONS: ReleaseOptions = {
  lifeCycle: danausPlexippus,
  place: { latitude: 40.7, longitude: -74 },
  zone: "America/New_York",
};
const MIDNIGHT = "2026-07-05T04:00Z";
const SEEN = [{ at: "2026-07-05T07:00" }];
const flat = (text: string): string => text.replace(/\s+/g, " ");

describe("releaseText", () => {
  it("shows the law, the fit hours by rank, and what is against the others", () => {
    const text = releaseText(releaseHours(SEEN, fairWeather(MIDNIGHT, 48), OPTIONS));
    expectPlainPage(text);
    expect(text.indexOf("Ask your local authority")).toBeLessThan(text.indexOf("fit hour"));
    expect(text).toContain("SEEN: emerged on Sun 5 Jul 2026 at 07:00");
    expect(text).toMatch(/^ {2}1 +Sun {2}5 Jul 11:00-12:00 +24 °C +2 m\/s +0 mm, 5 % +20 % +8\.\d h$/m);
    expect(text).toContain("Sun  5 Jul 07:00-11:00 too soon".replace("  ", " "));
    expect(flat(text)).toContain("17:00-20:00 little sun left");
    for (const heading of ["WHAT COUNTS AS FIT", "TAKE CARE", "GOOD TO KNOW"])
      expect(text).toContain(heading);
    expect(flat(text)).toContain("calm: at most 5 m/s [common practice, no source]");
    expect(flat(text)).toContain("Masters, Malcolm & Brower 1988");
  });

  it("shows the units that the user knows", () => {
    const text = releaseText(releaseHours(SEEN, fairWeather(MIDNIGHT, 48), OPTIONS), {
      unit: "F",
      windUnit: "mph",
    });
    expectPlainPage(text);
    expect(text).toMatch(/75\.2 °F +4\.5 mph/);
    expect(text).toContain("warm: at least 59 °F");
    expect(text).toContain("calm: at most 11.2 mph");
    expect(text.split("WHAT COUNTS AS FIT")[0]).not.toContain("°C");
  });

  it("says what to do when nothing fits, and what the next day brings", () => {
    const weather = fairWeather(MIDNIGHT, 96, (i) => (i < 36 ? { wind: 9 } : {}));
    const text = releaseText(releaseHours(SEEN, weather, OPTIONS));
    expectPlainPage(text);
    for (const words of [
      "No hour fits: each is refused",
      "The day after:",
      "What to do:",
      "Keep the adult in its cage",
      "dim, cool and still",
      "Offer food once its first day is over",
      "its best hour begins at 2026-07-06 12:00",
    ])
      expect(flat(text)).toContain(words);
  });

  it("shows gaps as hours without weather", () => {
    const weather = withoutHours(fairWeather(MIDNIGHT, 48), [12, 13]);
    const text = releaseText(releaseHours(SEEN, weather, OPTIONS));
    expectPlainPage(text);
    expect(text).toMatch(/Sun 5 Jul 12:00-1[34]:00 not judged: no weather|not judged: .*no weather/);
    expect(text).toContain("11:00-12:00 not judged: rain soon after not known");
  });

  it("says so when the weather or the forecast does not reach so far", () => {
    const window = { early: "2026-07-05T07:00", expected: "2026-07-20T07:00", late: null };
    const text = releaseText(releaseHours(window, fairWeather(MIDNIGHT, 48), OPTIONS));
    expectPlainPage(text);
    expect(flat(text)).toContain("EXPECTED: emerges on Mon 20 Jul 2026 at 07:00");
    expect(flat(text)).toContain("The weather ends at 2026-07-07 00:00, before this time");
    expect(text).toContain("LATE: emergence not known");
  });

  it("fits the page with a forecast, names and long numbers", () => {
    const weather = fairWeather("2026-07-01T00:00Z", 900, (i) => ({
      temperature: 12.345 + (i % 17),
      wind: 0.123 + (i % 6),
      rain: null,
      rainChance: (i * 7) % 31,
      cloud: i % 3 === 0 ? null : 99.99,
    }));
    expectPlainPage(releaseText(releaseHours(inventedForecast(), weather, OPTIONS), { windUnit: "km/h" }));
    const named = [{ at: "2026-07-05T07:00", animal: "the one with the long name ".repeat(6).trim() }];
    expectPlainPage(releaseText(releaseHours(named, weather, OPTIONS)));
  });

  it("under the midnight sun has sun all day", () => {
    const options = { ...OPTIONS, place: { latitude: 70, longitude: 25 }, zone: "Europe/Oslo" };
    const text = releaseText(
      releaseHours([{ at: "2026-06-21T18:00" }], fairWeather("2026-06-21T12:00Z", 60), options),
    );
    expectPlainPage(text);
    expect(text).toContain("all day");
  });

  it("has no hours for a pest, nor where nobody is healthy", () => {
    const weather = fairWeather(MIDNIGHT, 48);
    const pest = releaseText(
      releaseHours(SEEN, weather, { ...OPTIONS, lifeCycle: findSpecies("pieris-rapae") }),
    );
    expectPlainPage(pest);
    expect(pest).toContain("NO RELEASE");
    expect(pest).not.toContain("fit hour");
    expect(pest).toContain("Ask your local authority");
    const sick = releaseText(releaseHours(SEEN, weather, { ...OPTIONS, unfit: 1 }));
    expectPlainPage(sick);
    expect(flat(sick)).toContain("No healthy adult is left to release.");
    expect(flat(sick)).toContain("Kept apart: 1. Adults that are crumpled");
  });
});
