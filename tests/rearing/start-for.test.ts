import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../src/errors.ts";
import { startFor } from "../../src/rearing/start/start-for.ts";
import type { DateTarget, RoomTarget } from "../../src/rearing/start/start-plan.ts";
import { cydiaPomonella } from "../../src/species/cydia-pomonella.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { addDays, dayNumber } from "../../src/time/civil-day.ts";
import { city } from "../support/city.ts";

const NEW_YORK = city("new-york");

const day = (change: Partial<DateTarget> = {}): DateTarget => ({
  lifeCycle: danausPlexippus,
  start: { stage: "egg", count: 12, age: "new" },
  day: "2026-06-12",
  temperatures: constantTemperature(24),
  ...change,
});

const room = (change: Partial<RoomTarget> = {}): RoomTarget => ({
  lifeCycle: danausPlexippus,
  start: { stage: "egg", count: 12, age: "new" },
  day: "2026-06-12",
  on: "2026-05-15",
  constant: { from: 18, to: 28 },
  ...change,
});

const MIXED_STAGES = danausPlexippus.stages.map((needs) => ({
  ...needs,
  lower: { ...needs.lower, value: needs.stage === "pupa" ? 10.3 : needs.stage === "egg" ? 12.4 : 11 },
}));

describe("startFor with days to choose from", () => {
  it("finds the day that leaves the textbook's time", () => {
    // 352 degree-days at 12.5 a day are 28.16 days.
    const plan = startFor(day());
    expect(plan.best?.on).toBe("2026-05-15");
    expect(plan.best?.window.expected?.slice(0, 10)).toBe("2026-06-12");
    expect(plan.absence).toBeNull();
  });

  it("ranks all days, the best first, and gives parts that add up to one", () => {
    const { ranked, best } = startFor(day());
    const chances = ranked.flatMap(({ odds }) => odds?.chance ?? []);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    expect(ranked[0]?.on).toBe(best?.on);
    expect(new Set(ranked.map(({ on }) => on)).size).toBe(ranked.length);
    for (const { odds } of ranked)
      expect((odds?.early ?? 0) + (odds?.each ?? 0) + (odds?.late ?? 0)).toBeCloseTo(1, 12);
  });

  it("goes back until a start would certainly be too early", () => {
    const { ranked } = startFor(day());
    const first = [...ranked].sort((a, b) => (a.on < b.on ? -1 : 1))[0];
    expect(first?.odds?.early).toBeGreaterThan(0.9995);
    expect(ranked.some(({ on }) => on === "2026-06-12")).toBe(true);
  });

  it("counts at least one and at least half as independent animals do", () => {
    const { best } = startFor(day());
    const { each = 0, one, half } = best?.odds ?? {};
    expect(one).toBeCloseTo(1 - (1 - each) ** 12, 12);
    expect(half).toBeLessThan(each);
    const single = startFor(day({ start: { stage: "egg", age: "new" } })).best?.odds;
    expect([single?.one, single?.half]).toEqual(
      [single?.each, single?.each].map((x) => expect.closeTo(x ?? 0, 12)),
    );
  });

  it("shares the weather among the animals: of many, one is less likely than if each had its own", () => {
    const temperatures = weatherEnsemble({
      observed: NEW_YORK,
      until: "2015-06-01",
      past: NEW_YORK,
      exclude: [2015],
    });
    const { odds } =
      startFor(day({ day: "2015-07-12", temperatures, start: { stage: "egg", count: 12 } })).best ?? {};
    expect(odds?.one).toBeLessThan(1 - (1 - (odds?.each ?? 0)) ** 12);
    expect(odds?.one).toBeGreaterThan(odds?.each ?? 1);
  });

  it("moves the best day with the wanted one", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 700 }),
        fc.integer({ min: 18, max: 29 }),
        (later, temperature) => {
          const at = (days: number) =>
            startFor(
              day({ day: addDays("2026-01-01", days), temperatures: constantTemperature(temperature) }),
            ).best?.on;
          expect(dayNumber(at(later + 1) ?? "") - dayNumber(at(later) ?? "")).toBe(1);
        },
      ),
      { numRuns: 12, seed: 5 },
    );
  });

  it("never lets a warmer place start earlier", () => {
    let last = "";
    for (const temperature of [16, 18, 20, 22, 24, 26, 28, 29]) {
      const { best } = startFor(day({ temperatures: constantTemperature(temperature) }));
      expect((best?.on ?? "") >= last).toBe(true);
      last = best?.on ?? "";
    }
  });

  it("spreads a day's chance over its hours", () => {
    const dates = { from: "2026-05-15", to: "2026-05-15" };
    const chanceAt = (hours?: readonly [string, string]) =>
      startFor(day({ dates, ...(hours !== undefined && { hours }) })).best?.odds.each ?? 0;
    const parts = [chanceAt(["00:00", "09:00"]), chanceAt(["09:00", "15:30"]), chanceAt(["15:30", "24:00"])];
    expect(parts.reduce((sum, one) => sum + one, 0)).toBeCloseTo(chanceAt(), 12);
    const noted = startFor(day({ hours: ["09:00", "15:00"] })).notes.map(({ code }) => code);
    expect(noted).toContain("hours-of-their-own");
  });

  it("takes a time that clocks skip for what they would have shown", () => {
    const skipped = { day: "2026-03-08", zone: "America/New_York", hours: ["02:30", "12:00"] } as const;
    expect(startFor(day(skipped)).best).not.toBeNull();
  });

  it("plans on past years alone for a year of which nothing is known", () => {
    const { best, notes, ranked } = startFor(
      day({
        day: "2028-07-12",
        temperatures: undefined,
        pastYears: NEW_YORK,
        zone: "America/New_York",
      } as never),
    );
    expect(best?.on.slice(0, 7)).toBe("2028-06");
    expect(best?.window.late).not.toBeNull();
    expect(notes.map(({ code }) => code)).toContain("weather-ensemble");
    expect(ranked.length).toBeGreaterThan(20);
  });

  it("does not take the wanted season itself for its past", () => {
    const plan = startFor({
      lifeCycle: danausPlexippus,
      start: { stage: "egg", age: "new" },
      day: "2015-07-12",
      dates: { from: "2015-05-20" },
      pastYears: NEW_YORK,
    });
    const about = plan.notes.find(({ code }) => code === "weather-ensemble")?.message;
    expect(about).toContain("(2012, 2013, 2014)");
  });

  it("dates other milestones, and other stages to start in", () => {
    const hatch = startFor(day({ milestone: "instar-1" })).best;
    // 45 degree-days at 12.5 a day: 3.6 days.
    expect(hatch?.on).toBe("2026-06-08");
    const pupa = startFor(day({ start: { stage: "pupa", age: "new" }, milestone: "darkening" })).best;
    expect(pupa?.on).toBe("2026-06-03");
    expect(startFor(day({ lifeCycle: cydiaPomonella, milestone: "larva" })).best).not.toBeNull();
  });

  it("has no best start, and a reason, where none hits", () => {
    const late = startFor(day({ dates: { from: "2026-06-08" } }));
    expect([late.best, late.absence?.reason]).toEqual([null, "out-of-reach"]);
    expect(late.absence?.message).toContain("start earlier");
    const early = startFor(day({ dates: { from: "2026-03-01", to: "2026-03-20" } }));
    expect(early.absence?.message).toContain("start later");
    const nothing = startFor(day({ temperatures: NEW_YORK, day: "2016-03-01" }));
    expect(nothing.absence?.reason).toBe("no-temperatures");
    expect(nothing.ranked[0]?.odds).toBeNull();
    const ending = startFor(
      day({ temperatures: NEW_YORK, day: "2016-03-01", dates: { from: "2015-12-01", to: "2015-12-20" } }),
    );
    expect(ending.absence?.message).toMatch(/end at 2016-01-01/);
  });

  it.each<[string, Partial<DateTarget>, string]>([
    [
      "neither temperatures nor past years",
      { temperatures: undefined } as never,
      "neither temperatures nor pastYears",
    ],
    ["both", { pastYears: NEW_YORK }, "both given"],
    ["dates backwards", { dates: { from: "2026-06-10", to: "2026-06-01" } }, "must run forwards"],
    ["dates after the day", { dates: { to: "2026-06-13" } }, "end on 2026-06-12 or before"],
    ["too many dates", { dates: { from: "2020-01-01" } }, "at most 400 days"],
    ["hours backwards", { hours: ["15:00", "09:00"] }, "first time must be before the second"],
    ["hours that are none", { hours: ["9am", "10:00"] }, 'hours.0 is "9am"'],
    ["an aim that is none", { aim: "all" as never }, "aim is"],
    ["a day that does not exist", { day: "2026-02-29" }, "does not exist"],
    ["an adult to start with", { start: { stage: "adult" } }, "the adult is the end"],
    ["a held temperature that harms", { temperatures: constantTemperature(31) }, "is 31 °C"],
    [
      "one hidden in a series",
      { temperatures: joinTemperatures(NEW_YORK, constantTemperature(35)) },
      "York & Oberhauser 2002",
    ],
    ["a limit that is raised", { hottest: 32 }, "not raise it"],
  ])("refuses %s", (_, change, says) => {
    expect(() => startFor(day(change))).toThrow(InputError);
    expect(() => startFor(day(change))).toThrow(says);
  });

  it("is plain data", () => {
    const plan = startFor(day());
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
  });
});

describe("startFor with a room to set", () => {
  it("finds the temperature, to better than the grid, that centres the distribution on the day", () => {
    const { best, ranked } = startFor(room());
    // From noon on 15 May to noon on 12 June are 28 days: 352 / 28 above the threshold.
    expect(best?.temperature).toBeCloseTo(11.5 + 352 / 28, 1);
    expect(best?.odds.early).toBeCloseTo(best?.odds.late ?? 0, 1);
    for (const { odds } of ranked) expect(odds?.chance ?? 0).toBeLessThanOrEqual(best?.odds.chance ?? 0);
  });

  it("says what a degree less or more would leave", () => {
    const { best } = startFor(room());
    expect(best?.ifCooler).toBeLessThan(best?.odds.chance ?? 0);
    expect(best?.ifWarmer).toBeLessThan(best?.odds.chance ?? 0);
    const exact = startFor(
      room({ constant: { from: (best?.temperature ?? 0) - 1, to: (best?.temperature ?? 0) - 1 } }),
    );
    expect(exact.best?.odds.chance).toBeCloseTo(best?.ifCooler ?? 0, 9);
  });

  it("stays within the range", () => {
    const { ranked, best } = startFor(room({ constant: { from: 21.1, to: 23.05 } }));
    expect(best?.temperature).toBe(23.05);
    const all = ranked.map(({ temperature }) => temperature);
    expect([Math.min(...all), Math.max(...all)]).toEqual([21.1, 23.05]);
  });

  it.each<[string, Partial<RoomTarget>, string]>([
    ["heat that harms, with its source", { constant: { from: 20, to: 29.5 } }, "York & Oberhauser 2002"],
    [
      "it, and says what kills",
      { constant: { from: 20, to: 29.5 } },
      "above 33 °C (91.4 °F) it is assumed to kill",
    ],
    ["heat above a lower limit", { constant: { from: 20, to: 26 }, hottest: 25 }, "is what you ruled out"],
    ["a limit that is raised", { hottest: 30 }, "not raise it"],
    ["a range backwards", { constant: { from: 26, to: 20 } }, "from the coolest to the warmest"],
    ["no number", { constant: { from: Number.NaN, to: 20 } }, "constant.from"],
    ["heat for other species", { lifeCycle: cydiaPomonella, constant: { from: 20, to: 35 } }, "can harm"],
  ])("refuses %s", (_, change, says) => {
    expect(() => startFor(room(change))).toThrow(InputError);
    expect(() => startFor(room(change))).toThrow(says);
  });

  it("has no best room, and a reason, where none hits or nothing develops", () => {
    const cold = startFor(room({ constant: { from: 2, to: 11 } }));
    expect([cold.best, cold.absence?.reason]).toEqual([null, "too-cold"]);
    expect(cold.absence?.message).toContain("11.5");
    // Its egg develops above 12.4 °C, its pupa above 10.3 °C: the stages on the way count, and no others.
    const mixed = { ...danausPlexippus, stages: MIXED_STAGES };
    const of = (stage: "egg" | "pupa", to: number) =>
      startFor(room({ lifeCycle: mixed, start: { stage, age: "new" }, constant: { from: 10, to } })).absence;
    expect(of("egg", 12)?.reason).toBe("too-cold");
    expect(of("egg", 12)?.message).toContain("12.4 °C is the highest lower threshold");
    expect(of("pupa", 12)?.reason).not.toBe("too-cold");
    expect(of("pupa", 10.3)?.message).toContain("10.3 °C is the highest");
    const late = startFor(room({ on: "2026-06-10" }));
    expect([late.best, late.absence?.reason]).toEqual([null, "out-of-reach"]);
    expect(late.absence?.message).toContain("warmer room, within what is safe");
  });
});
