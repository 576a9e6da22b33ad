import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { logEntry } from "../../src/cohort/log.ts";
import { InputError } from "../../src/errors.ts";
import { chanceBetween } from "../../src/forecast/chance.ts";
import { type ForecastInput, forecast } from "../../src/forecast/forecast.ts";
import { learn } from "../../src/forecast/learning/learn.ts";
import { cydiaPomonella } from "../../src/species/cydia-pomonella.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { DAY_MS, startOfDay } from "../../src/time/zone.ts";
import { city } from "../support/city.ts";
import { refusalOf } from "../support/refusal.ts";

const NEW_YORK = city("new-york");
const ZONE = "America/New_York";

const input = (change: Partial<ForecastInput> = {}): ForecastInput => ({
  lifeCycle: danausPlexippus,
  found: { stage: "egg", on: "2015-06-08" },
  temperatures: NEW_YORK,
  zone: ZONE,
  ...change,
});

function within(asked: ForecastInput, from: number, to: number) {
  const { chance } = chanceBetween(asked, "adult", from, to);
  if (chance === null) throw new Error("the temperatures cover it");
  return chance;
}

it("refuses a time that runs backwards", () => {
  const error = refusalOf(() => chanceBetween(input(), "adult", 2, 1));
  expect([error.code, error.path, error.message]).toEqual([
    "invalid-option",
    ["to"],
    "to is 1, before from, 2; it must not be earlier.",
  ]);
});

const INPUTS: readonly (readonly [string, ForecastInput])[] = [
  ["known temperatures", input()],
  ["a known age", input({ found: { stage: "egg", on: "2015-06-08", age: "new" } })],
  ["stages with thresholds of their own", input({ lifeCycle: cydiaPomonella })],
  [
    "past years",
    input({
      temperatures: weatherEnsemble({
        observed: NEW_YORK,
        until: "2015-06-20",
        past: NEW_YORK,
        exclude: [2015],
      }),
    }),
  ],
];

describe("chanceBetween", () => {
  it.each(INPUTS)("%s: the chances of all days add up to the share that arrives", (_, asked) => {
    const days = Array.from({ length: 90 }, (_, i) => addDays("2015-06-08", i));
    let sum = 0;
    for (const day of days)
      sum += within(asked, startOfDay(day, ZONE), startOfDay(addDays(day, 1), ZONE)).within;
    const whole = within(asked, startOfDay("2015-06-08", ZONE), startOfDay(addDays("2015-06-08", 90), ZONE));
    expect(sum).toBeCloseTo(whole.within, 9);
    expect(sum).toBeGreaterThan(0.99);
  });

  it.each(INPUTS)("%s: agrees with the windows of the forecast, which are its quantiles", (_, asked) => {
    const begins = forecast(asked).stages.at(-1)?.begins;
    const [early, late] = [Date.parse(begins?.early ?? ""), Date.parse(begins?.late ?? "")];
    const chance = within(asked, early, late);
    expect(chance.before).toBeCloseTo(0.1, 3);
    expect(chance.within).toBeCloseTo(0.8, 3);
    expect(chance.after).toBeCloseTo(0.1, 3);
  });

  it("adds up to one, over any stretch", () => {
    fc.assert(
      fc.property(fc.integer({ min: -5, max: 60 }), fc.integer({ min: 0, max: 40 }), (from, days) => {
        const start = startOfDay(addDays("2015-06-08", from), ZONE);
        const chance = within(input(), start, startOfDay(addDays("2015-06-08", from + days), ZONE));
        expect(chance.before + chance.within + chance.after).toBeCloseTo(1, 12);
        expect(Math.min(chance.before, chance.within, chance.after)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 30, seed: 11 },
    );
  });

  it("averages over the ways that the weather may go", () => {
    const asked = INPUTS.at(-1)?.[1] ?? input();
    const chance = within(asked, startOfDay("2015-07-12", ZONE), startOfDay("2015-07-13", ZONE));
    expect(chance.ways).toHaveLength(25);
    expect(chance.ways.reduce((sum, way) => sum + way.weight, 0)).toBeCloseTo(1, 12);
    const mean = chance.ways.reduce((sum, way) => sum + way.weight * way.within, 0);
    expect(mean).toBeCloseTo(chance.within, 12);
  });

  it("has no chance, and says why, where the temperatures end before", () => {
    const short = dailyTemperatures("2026-06-01", Array(10).fill(15), Array(10).fill(28));
    const asked = input({ temperatures: short, found: { stage: "egg", on: "2026-06-02" } });
    const [from, to] = [startOfDay("2026-06-25", ZONE), startOfDay("2026-06-26", ZONE)];
    const { chance, absence } = chanceBetween(asked, "adult", from, to);
    expect(chance).toBeNull();
    expect(absence?.reason).toBe("series-ends");
    expect(absence?.message).toContain("2026-06-11");
    // On the last day that they cover it is known.
    const last = startOfDay("2026-06-11", ZONE);
    expect(chanceBetween(asked, "instar-1", last - 86_400_000, last).absence).toBeNull();
  });

  it("stands still in the cold: the chance of any day is 0, not unknown", () => {
    const cold = input({ temperatures: constantTemperature(5) });
    const chance = within(cold, startOfDay("2015-07-12", ZONE), startOfDay("2015-07-13", ZONE));
    expect(chance).toMatchObject({ before: 0, within: 0, after: 1 });
  });

  it("is 0 for a stretch before the find", () => {
    const chance = within(input(), startOfDay("2015-06-01", ZONE), startOfDay("2015-06-02", ZONE));
    expect(chance).toMatchObject({ before: 0, within: 0, after: 1 });
  });

  it("refuses a milestone that does not lie ahead, naming those that do", () => {
    const pupa = input({ found: { stage: "pupa", on: "2015-06-08" } });
    const ask = () => chanceBetween(pupa, "instar-2", 0, 1);
    expect(ask).toThrow(InputError);
    expect(ask).toThrow('milestone is "instar-2"');
    expect(ask).toThrow("darkening, adult");
  });

  const monarchs = {
    lifeCycle: danausPlexippus,
    found: { stage: "egg", on: "2015-06-08", count: 9 },
  } as const;
  const log = [logEntry({ stage: "instar-2", on: "2015-06-14T12:00", notYet: "2015-06-14T06:00", count: 5 })];

  it("has a way for each pace and moment that a log left, apart from each other", () => {
    const plain = input(monarchs);
    const learned = learn(plain, log);
    const chance = within(
      { ...plain, learned },
      startOfDay("2015-07-04", ZONE),
      startOfDay("2015-07-06", ZONE),
    );
    expect(chance.ways).toHaveLength(learned.nodes.length * (learned.from?.moments.length ?? 0));
    expect(chance.ways.reduce((sum, way) => sum + way.weight, 0)).toBeCloseTo(1, 9);
    const mean = chance.ways.reduce((sum, way) => sum + way.weight * way.within, 0);
    expect(mean).toBeCloseTo(chance.within, 9);
    // Animals of one pace come together: in some ways more of them fall on these two days than in others.
    const shares = chance.ways.map((way) => way.within);
    expect(Math.max(...shares) - Math.min(...shares)).toBeGreaterThan(0.05);
  });

  it("of what was learned before the find is reckoned too, not taken as past", () => {
    // Seen to begin two days before the day that the question ends on, which is before the find was noted.
    const late = input({ ...monarchs, found: { stage: "egg", on: "2015-06-08" } });
    const learned = learn(late, log);
    const [from, to] = [startOfDay("2015-06-14", ZONE), startOfDay("2015-06-16", ZONE)];
    const next = chanceBetween({ ...late, learned }, "instar-3", from, to).chance;
    expect(next?.within).toBeGreaterThan(0.01);
    expect((next?.before ?? 0) + (next?.within ?? 0) + (next?.after ?? 0)).toBeCloseTo(1, 12);
  });

  it("is nothing up to the moment of the find itself", () => {
    const asked = input({ found: { stage: "egg", on: "2015-06-08T00:00" } });
    const start = startOfDay("2015-06-08", ZONE);
    expect(within(asked, start - 5, start)).toEqual({
      before: 0,
      within: 0,
      after: 1,
      ways: [{ weight: 1, within: 0 }],
    });
    expect(() => chanceBetween(asked, "egg", start - 5, start)).toThrow("does not lie ahead");
  });

  it("is known up to the last moment of the temperatures, and not a day further", () => {
    const short = dailyTemperatures("2026-06-01", Array(30).fill(15), Array(30).fill(28));
    const asked = input({ temperatures: short, found: { stage: "egg", on: "2026-06-02" } });
    const end = startOfDay("2026-07-01", ZONE);
    expect(chanceBetween(asked, "adult", end - 3 * DAY_MS, end).absence).toBeNull();
    expect(chanceBetween(asked, "adult", end, end + 1).absence?.reason).toBe("series-ends");
  });

  it("of an ensemble is known to the end of its days, and not beyond", () => {
    const ensemble = weatherEnsemble({
      observed: NEW_YORK,
      until: "2015-06-20",
      past: NEW_YORK,
      exclude: [2015],
      days: 40,
    });
    const asked = input({ temperatures: ensemble });
    const end = startOfDay("2015-07-31", ZONE);
    expect(chanceBetween(asked, "adult", end - 9 * DAY_MS, end).absence).toBeNull();
    expect(chanceBetween(asked, "adult", end, end + DAY_MS).absence?.reason).toBe("series-ends");
  });

  it("does not ask for temperatures of stages that are past, nor of those after the milestone", () => {
    // The egg of a codling moth runs on a clock of its own; a log saw the larva begin.
    const days = dailyTemperatures("2026-06-01", Array(20).fill(15), Array(20).fill(28));
    const asked = input({
      lifeCycle: cydiaPomonella,
      temperatures: days,
      found: { stage: "egg", on: "2026-06-01" },
    });
    const [first] = cydiaPomonella.stages.slice(1);
    const { chance } = chanceBetween(
      asked,
      first?.stage ?? "larva",
      startOfDay("2026-06-05", ZONE),
      startOfDay("2026-06-19", ZONE),
    );
    expect(chance?.within).toBeGreaterThan(0.5);
  });
});
