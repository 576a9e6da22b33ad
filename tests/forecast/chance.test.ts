import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../src/errors.ts";
import { chanceBetween } from "../../src/forecast/chance.ts";
import { type ForecastInput, forecast } from "../../src/forecast/forecast.ts";
import { cydiaPomonella } from "../../src/species/cydia-pomonella.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { startOfDay } from "../../src/time/zone.ts";
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
});
