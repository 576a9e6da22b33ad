import { describe, expect, it } from "vitest";
import { sigmaOf } from "../../src/cohort/requirement.ts";
import { USUAL_PACE, scenariosOf, waysTo } from "../../src/forecast/arrivals/scenario.ts";
import { weatherOf } from "../../src/forecast/clocks/weather.ts";
import { type ForecastInput, forecast } from "../../src/forecast/forecast.ts";
import { startOf } from "../../src/forecast/question/forecast-input.ts";
import type { Learned } from "../../src/forecast/question/learned.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";

const input = (change: Partial<ForecastInput> = {}): ForecastInput => ({
  lifeCycle: danausPlexippus,
  found: { stage: "egg", on: "2026-06-01T00:00", age: "new" },
  temperatures: constantTemperature(24),
  ...change,
});
const found = (stage: "egg" | "instar-5" | "prepupa", age: NonNullable<ForecastInput["found"]["age"]>) =>
  input({ found: { stage, on: "2026-06-01T00:00", age } });
const degreeDays = (asked: ForecastInput): Record<string, number> =>
  Object.fromEntries(forecast(asked).stages.map((one) => [one.stage, one.degreeDays]));

// Thermal constants of the bundled monarch: 45, 32.3, 27.8, 24.5, 35.7, 66.6 (of which 15 % hanging), 120.1 °C·day.
describe("what the middle animal needs", () => {
  it("adds up from the age that it was found at", () => {
    const needed = degreeDays(found("egg", "new"));
    expect(needed["instar-1"]).toBeCloseTo(45, 9);
    expect(needed["instar-2"]).toBeCloseTo(77.3, 9);
    expect(needed["prepupa"]).toBeCloseTo(165.3 + 0.85 * 66.6, 9);
    expect(needed["pupa"]).toBeCloseTo(231.9, 9);
    expect(needed["adult"]).toBeCloseTo(352, 9);
    const half = degreeDays(found("egg", "unknown"));
    expect(half["instar-1"]).toBeCloseTo(22.5, 9);
    expect(half["adult"]).toBeCloseTo(352 - 22.5, 9);
    const range = degreeDays(found("egg", { from: 0.2, to: 0.4 }));
    expect(range["adult"]).toBeCloseTo(352 - 0.3 * 45, 9);
  });

  it("is what is left of the stage, before the hang and in it", () => {
    const larva = degreeDays(found("instar-5", "unknown"));
    expect(larva["prepupa"]).toBeCloseTo((0.85 * 66.6) / 2, 9);
    expect(larva["pupa"]).toBeCloseTo(66.6 - (0.85 * 66.6) / 2, 9);
    const hanging = degreeDays(found("prepupa", 0.5));
    expect(hanging["pupa"]).toBeCloseTo(0.075 * 66.6, 9);
  });
});

describe("the ways to a milestone", () => {
  const waysOf = (asked: ForecastInput, alone?: boolean) => {
    const start = startOf(asked);
    const weather = weatherOf(asked.temperatures, asked.lifeCycle, start, Infinity);
    const { path, scenarios } =
      alone === undefined ? scenariosOf(asked, weather, start) : scenariosOf(asked, weather, start, alone);
    const ways = path.milestones.map((milestone) => waysTo(milestone, scenarios, asked.lifeCycle));
    return { path, ways, scenarios };
  };

  it("is one at the usual pace where nothing was learned and the weather is certain", () => {
    const { ways, path } = waysOf(input());
    expect(USUAL_PACE).toEqual([{ pace: 1, weight: 1 }]);
    for (const way of ways) {
      expect(way).toHaveLength(1);
      expect(way[0]).toMatchObject({ weight: 1, paces: [{ pace: 1, weight: 1 }] });
      expect(way[0]?.starts).toEqual([{ at: Date.parse("2026-06-01T00:00Z"), weight: 1 }]);
    }
    const last = path.milestones.length - 1;
    expect(ways[last]?.[0]?.legs.map(({ most }) => most)).toEqual(
      danausPlexippus.stages.map(({ degreeDays: needs }) => needs.value),
    );
    expect(ways[0]?.[0]?.legs).toHaveLength(1);
  });

  it("spread as correlated stages do: by hand for two of them", () => {
    const { ways, path } = waysOf(input());
    const [egg, first] = danausPlexippus.stages;
    const second = ways[path.milestones.findIndex(({ id }) => id === "instar-2")]?.[0];
    const [a, b] = [45 * (egg?.cv.value ?? 0), 32.3 * (first?.cv.value ?? 0)];
    const r = danausPlexippus.stageCorrelation.value;
    expect(second?.sigma).toBeCloseTo(sigmaOf(Math.sqrt(a * a + b * b + 2 * r * a * b) / 77.3), 12);
    expect(ways[0]?.[0]?.sigma).toBeCloseTo(sigmaOf(egg?.cv.value ?? 0), 12);
  });

  const learned: Learned = {
    pace: { low: 0.9, middle: 1, high: 1.1 },
    offset: null,
    nodes: [
      { pace: 0.9, offset: 0, weight: 0.1 },
      { pace: 1.1, offset: 0, weight: 0.3 },
      { pace: 1, offset: 2, weight: 0.6 },
    ],
    from: {
      stage: "instar-3",
      moments: [
        { at: "2026-06-09T06:00:00", weight: 0.25 },
        { at: "2026-06-09T18:00:00", weight: 0.75 },
      ],
    },
    used: [],
    aside: [],
    notes: [],
  };

  it("are one for each offset learned, with the paces and moments in it", () => {
    const { ways, path, scenarios } = waysOf(input({ learned }));
    expect(path.milestones[0]?.id).toBe("instar-4");
    expect(scenarios.map(({ weight }) => weight)).toEqual([0.4, 0.6]);
    expect(ways[0]?.[0]?.paces.map(({ pace }) => pace)).toEqual([0.9, 1.1]);
    expect(ways[0]?.[0]?.paces[1]?.weight).toBeCloseTo(0.75, 12);
    expect(ways[0]?.[1]?.paces).toEqual([{ pace: 1, offset: 2, weight: 1 }]);
    expect(ways[0]?.[0]?.starts).toEqual([
      { at: Date.parse("2026-06-09T06:00Z"), weight: 0.25 },
      { at: Date.parse("2026-06-09T18:00Z"), weight: 0.75 },
    ]);
    // At 24 °C and two degrees more the clocks run at 12.5 and 14.5 degree-days a day.
    const day = (k: number): number => {
      const clock = ways[0]?.[k]?.legs[0]?.clock;
      const at = Date.parse("2026-06-09T00:00Z");
      return (clock?.amountAt(at + 86_400_000) ?? 0) - (clock?.amountAt(at) ?? 0);
    };
    expect([day(0), day(1)]).toEqual([expect.closeTo(12.5, 6), expect.closeTo(14.5, 6)]);
  });

  it("are one for each pace and moment where they are to stand alone", () => {
    const { scenarios } = waysOf(input({ learned }), true);
    expect(scenarios.map(({ weight }) => Number(weight.toFixed(6)))).toEqual([
      0.025, 0.075, 0.075, 0.225, 0.15, 0.45,
    ]);
    for (const { paces, starts } of scenarios) {
      expect([paces.length, paces[0]?.weight, starts.length, starts[0]?.weight]).toEqual([1, 1, 1, 1]);
    }
    expect(waysOf(input({ learned }), false).scenarios).toHaveLength(2);
  });

  it("names the moment that was learned and is none", () => {
    const wrong = { ...learned, from: { stage: "instar-3", moments: [{ at: "soon", weight: 1 }] } } as const;
    expect(() => forecast(input({ learned: wrong }))).toThrow(/^learned\.from is "soon"/);
  });

  it("are the members themselves, alike in weight, where an ensemble has one or two", () => {
    const two = [constantTemperature(20), constantTemperature(26)];
    const groups = [
      { label: "one", weight: 0.25, members: two.slice(0, 1) },
      { label: "two", weight: 0.75, members: two },
    ];
    const temperatures = { kind: "ensemble", about: "invented", from: "2026-06-05", groups } as const;
    const asked = input({ temperatures });
    const weather = weatherOf(temperatures, danausPlexippus, startOf(asked), Infinity);
    expect(weather.map((group) => group.clocksAt(0).map(({ weight }) => weight))).toEqual([[1], [0.5, 0.5]]);
    expect(waysOf(asked).scenarios.map(({ weight }) => weight)).toEqual([0.25, 0.375, 0.375]);
    // Asked again it is the same, not made anew.
    expect(weather[1]?.clocksAt(0)).toBe(weather[1]?.clocksAt(0));
  });
});
