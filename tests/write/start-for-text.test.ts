import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/rearing/cautions.ts";
import { startFor } from "../../src/rearing/start/start-for.ts";
import { SPECIES } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { startForText } from "../../src/write/pages/start-for-text.ts";
import { percentText } from "../../src/rearing/chance-text.ts";
import { expectPlainPage } from "./plain-text.ts";

const start = { stage: "egg", count: 12, age: "new" } as const;
const temperatures = constantTemperature(24);
const cautions = cautionsFor(danausPlexippus);

const days = startFor({ lifeCycle: danausPlexippus, start, day: "2026-06-12", temperatures });
const room = startFor({
  lifeCycle: danausPlexippus,
  start,
  day: "2026-06-12",
  on: "2026-05-15T08:00",
  constant: { from: 20, to: 28 },
});

describe("startForText", () => {
  it("prints the best day, its chances, the others in the order of the calendar, and the cautions", () => {
    const text = startForText(days, { cautions });
    expectPlainPage(text);
    expect(text).toContain("12 eggs, to emerge on Fri 12 Jun 2026.");
    expect(text).toContain("BEST: start on Fri 15 May 2026");
    expect(text).toMatch(/\* at least one of the 12 emerges in time +96 %/);
    expect(text).toMatch(/a given one of them emerges in time +24 %/);
    expect(text).toContain(`THE 14 BEST OF ${days.ranked.length} STARTS`);
    const rows = [...text.matchAll(/^ {2}\w{3} +(\d+) May 2026 /gm)].map((match) => Number(match[1]));
    expect(rows).toEqual([...rows].sort((a, b) => a - b));
    expect(text).toContain("TAKE CARE");
    expect(text.replace(/\s+/g, " ")).toContain("taken as certain");
  });

  it("prints the room in either unit, and what a degree more or less does", () => {
    const text = startForText(room, { cautions });
    expectPlainPage(text);
    expect(text).toContain("12 eggs from Fri 15 May 2026 08:00 on, to emerge on Fri 12 Jun 2026.");
    const flat = text.replace(/\s+/g, " ");
    expect(flat).toContain("Were the room 1 °C cooler than meant");
    expect(flat).toContain(
      "No room above 29 °C is advised: held heat above it is harmful, above 33 °C it is assumed to kill",
    );
    const fahrenheit = startForText(room, { unit: "F" });
    expectPlainPage(fahrenheit);
    expect(fahrenheit).toMatch(/keep the room at 7[45]\.\d °F/);
    expect(fahrenheit.split("GOOD TO KNOW")[0]).not.toContain("°C");
  });

  it("of one animal speaks of one chance", () => {
    const one = startFor({
      lifeCycle: danausPlexippus,
      start: { stage: "pupa" },
      day: "2026-06-12",
      temperatures,
    });
    const text = startForText(one);
    expectPlainPage(text);
    expect(text).toMatch(/it emerges in time +\d+ %/);
    expect(text).toMatch(/start +chance +early +late/);
  });

  it("says why none can be advised", () => {
    const none = startFor({
      lifeCycle: danausPlexippus,
      start,
      day: "2026-06-12",
      temperatures: constantTemperature(8),
      dates: { from: "2026-05-01" },
    });
    const text = startForText(none, { cautions });
    expectPlainPage(text);
    expect(text).toContain("No start can be advised.");
  });

  it.each(SPECIES)("$species fits the page", (lifeCycle) => {
    for (const milestone of ["adult", "pupa"] as const) {
      const plan = startFor({
        lifeCycle,
        start,
        milestone,
        day: "2026-06-12",
        temperatures,
        hours: ["06:00", "14:00"],
      });
      expectPlainPage(startForText(plan, { cautions: cautionsFor(lifeCycle) }));
    }
  });
});

describe("percentText", () => {
  it.each([
    [0, "0 %"],
    [1e-6, "<1 %"],
    [0.005, "1 %"],
    [0.4951, "50 %"],
    [0.9949, "99 %"],
    [0.9999, ">99 %"],
    [1, "100 %"],
  ])("%d is %s", (chance, text) => {
    expect(percentText(chance)).toBe(text);
  });
});
