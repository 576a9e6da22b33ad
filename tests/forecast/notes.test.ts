import { describe, expect, it } from "vitest";
import { logEntry } from "../../src/cohort/log.ts";
import { type ForecastInput, forecast } from "../../src/forecast/forecast.ts";
import { learn } from "../../src/forecast/learning/learn.ts";
import type { LifeCycle, Mark, Sourced, StageNeeds } from "../../src/species/life-cycle.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";

// An invented animal of three stages: 20, 60 and 40 degree-days above 10 °C, so that ten degrees a day above the
// threshold take it 2, 6 and 4 days.
const sourced = (value: number, mark: Mark = "read"): Sourced => ({ value, mark, source: "invented" });
const needs = (
  stage: StageNeeds["stage"],
  degreeDays: number,
  change: Partial<StageNeeds> = {},
): StageNeeds => ({
  stage,
  degreeDays: sourced(degreeDays),
  lower: sourced(10),
  upper: sourced(30),
  cutoff: "horizontal",
  cv: sourced(0.05),
  tested: null,
  ...change,
});
const animal = (change: Partial<LifeCycle> = {}): LifeCycle => ({
  species: "invented-animal",
  latinName: "Animal inventum",
  commonName: "invented animal",
  host: null,
  region: null,
  stages: [needs("egg", 20), needs("larva", 60), needs("pupa", 40)],
  hang: null,
  darkening: null,
  stageCorrelation: sourced(0.4),
  handling: [],
  remarks: [],
  ...change,
});
const input = (change: Partial<ForecastInput> = {}): ForecastInput => ({
  lifeCycle: animal(),
  found: { stage: "egg", on: "2026-06-01T00:00", age: "new" },
  temperatures: dailyTemperatures("2026-06-01", Array(60).fill(15), Array(60).fill(25)),
  zone: "America/New_York",
  ...change,
});
const notes = (change: Partial<ForecastInput> = {}): (readonly [string, string])[] =>
  forecast(input(change)).notes.map(({ code, message }) => [code, message]);

describe("notes of a forecast", () => {
  it("are none where nothing is in doubt", () => {
    expect(notes()).toEqual([]);
  });

  it("name the constants by their marks, those of stages to come, each threshold once", () => {
    const lifeCycle = animal({
      stages: [
        needs("egg", 20, { degreeDays: sourced(20, "derived"), lower: sourced(9, "from memory") }),
        needs("larva", 60, {
          degreeDays: sourced(60, "derived"),
          lower: sourced(10, "from memory"),
          upper: sourced(31, "from memory"),
          cv: sourced(0.05, "common practice, no source"),
        }),
        needs("pupa", 40, {
          degreeDays: sourced(40, "derived"),
          lower: sourced(10, "from memory"),
          upper: sourced(33, "from memory"),
          cv: sourced(0.05, "common practice, no source"),
        }),
      ],
      hang: sourced(0.1, "common practice, no source"),
      darkening: sourced(0.2, "common practice, no source"),
      stageCorrelation: sourced(0.4, "common practice, no source"),
    });
    const larva = { stage: "larva", on: "2026-06-01T00:00", age: "new" } as const;
    expect(notes({ lifeCycle, found: larva })).toEqual([
      [
        "constant-from-memory",
        "From memory, not yet looked up in print: lower threshold 10 °C; upper threshold 31 °C and 33 °C.",
      ],
      ["derived-constant", "Derived here from published figures: degree-days of larva and pupa."],
      [
        "common-practice",
        "Common practice, no source: how much animals differ in larva and pupa; how far an animal is equally slow in all stages; length of the hang; length of the darkening.",
      ],
    ]);
    const egg = { stage: "egg", on: "2026-06-01T00:00", age: "new" } as const;
    expect(notes({ lifeCycle, found: egg })[1]?.[1]).toBe(
      "Derived here from published figures: degree-days of egg, larva and pupa.",
    );
  });

  it("say what is not known of the find", () => {
    expect(notes({ found: { stage: "larva", on: "2026-06-01", age: { from: 0.254, to: 0.506 } } })).toEqual([
      [
        "unknown-age",
        "The age within the stage it was found in (larva) is not known: anything from 25 to 51 % of the stage done is taken as equally likely, and the windows carry it.",
      ],
      ["time-of-day-assumed", "The find has a day but no time; it is counted from noon of that day."],
    ]);
    expect(notes({ zone: null })).toEqual([
      [
        "local-clock",
        "No time zone was given: times are those of the clock that the temperatures were kept by, every day has 24 hours.",
      ],
    ]);
  });

  it("count the days that rest on something else than readings, as far as the dates need them", () => {
    const five = dailyTemperatures("2026-06-01", Array(5).fill(15), Array(5).fill(25));
    const joined = joinTemperatures(five, constantTemperature(20, { from: "2026-06-06" }));
    const late = Date.parse(forecast(input({ temperatures: joined })).stages.at(-1)?.begins.late ?? "");
    const days = Math.ceil((late - Date.parse("2026-06-01T00:00-04:00")) / 86_400_000);
    const last = new Date(Date.parse("2026-06-01") + (days - 1) * 86_400_000).toISOString().slice(0, 10);
    expect(notes({ temperatures: joined })).toEqual([
      [
        "temperatures-assumed",
        `${days - 5} of ${days} days (2026-06-06 to ${last}) rest on a temperature that is assumed to be held.`,
      ],
    ]);
  });

  it.each([
    ["filled", "days-filled", "rest on temperatures filled into gaps."],
    ["estimated", "temperatures-estimated", "are estimated for the room from a station."],
    ["forecast", "temperatures-forecast", "rest on a weather forecast."],
    ["past-year", "temperatures-past-years", "rest on the same season of past years."],
    ["normal", "temperatures-normal", "rest on the normal temperatures of past years, not on this year's."],
    ["assumed", "temperatures-assumed", "rest on a temperature that is assumed to be held."],
  ] as const)("tell of days that are %s", (origin, code, text) => {
    const origins = Array.from({ length: 60 }, (_, i) => (i === 2 || i === 4 ? origin : "observed"));
    const temperatures = dailyTemperatures("2026-06-01", Array(60).fill(15), Array(60).fill(25), origins);
    const [only, ...others] = notes({ temperatures });
    expect(others).toEqual([]);
    expect(only?.[0]).toBe(code);
    expect(only?.[1]).toMatch(/^2 of \d+ days \(2026-06-03 to 2026-06-05\) /);
    expect(only?.[1].endsWith(`) ${text}`)).toBe(true);
  });

  it("say how cold it gets before the last date, and not after it", () => {
    const min = Array<number>(60).fill(15);
    min[7] = -1.26;
    const cold = [
      "frost",
      "Temperatures fall to -1.3 °C before the last of these dates. Cold that kills is not reckoned with.",
    ];
    expect(notes({ temperatures: dailyTemperatures("2026-06-01", min, Array(60).fill(25)) })).toEqual([cold]);
    min[7] = 15;
    min[40] = -3;
    expect(notes({ temperatures: dailyTemperatures("2026-06-01", min, Array(60).fill(25)) })).toEqual([]);
    min[40] = 15;
    min[7] = 0;
    expect(notes({ temperatures: dailyTemperatures("2026-06-01", min, Array(60).fill(25)) })).toEqual([]);
  });

  it("say which days leave the temperatures that the constants were measured at", () => {
    const tested = { low: 18, high: 28, mark: "read", source: "invented" } as const;
    const lifeCycle = animal({
      stages: [
        needs("egg", 20, { tested: { ...tested, low: 30, high: 40 } }),
        needs("larva", 60, { tested }),
        needs("pupa", 40, { tested }),
      ],
    });
    const min = Array<number>(60).fill(15);
    const max = Array<number>(60).fill(25);
    [min[1], max[1]] = [8, 18];
    [min[3], max[3]] = [9, 19];
    [min[5], max[5]] = [25, 36];
    // Days after the last date count for nothing.
    [min[50], max[50]] = [0, 1];
    const larva = { stage: "larva", on: "2026-06-01T00:00", age: "new" } as const;
    const temperatures = dailyTemperatures("2026-06-01", min, max);
    const late = forecast(input({ lifeCycle, found: larva, temperatures })).stages.at(-1)?.begins.late ?? "";
    const days = Math.ceil((Date.parse(late) - Date.parse("2026-06-01T00:00-04:00")) / 86_400_000);
    // The means of single sines are the means of their extremes, but for the hours that the days are cut at.
    const [only, ...others] = notes({ lifeCycle, found: larva, temperatures });
    expect(others).toEqual([]);
    expect(only?.[0]).toBe("outside-tested-temperatures");
    expect(only?.[1]).toContain(`of ${days} days have a mean temperature outside 18 to 28 °C, where the`);
    expect(only?.[1]).toMatch(
      /^3 of .* measured \(invented\): lowest 1[34]\.\d, highest (29|30)\.\d °C\. Dates/,
    );
    expect(notes({ lifeCycle, found: larva })).toEqual([]);
  });

  it("say what a log taught, of one entry or more, with an offset where one was learned", () => {
    const one = [logEntry({ stage: "larva", on: "2026-06-03T12:00", notYet: "2026-06-03T06:00" })];
    const learned = learn(input(), one);
    const percent = (value: number): string => (value * 100).toFixed(0);
    const { low, middle, high } = learned.pace;
    expect(notes({ learned })).toEqual([
      [
        "learned-from-log",
        `From 1 entry of the log: these animals need ${percent(middle)} % of what the constants say (${percent(low)} to ${percent(high)} %). The forecast goes on from the larva that was seen.`,
      ],
    ]);
    const dead = logEntry({ stage: "pupa", on: "2026-06-09", fate: "died" });
    const two = [...one, logEntry({ stage: "pupa", on: "2026-06-10T12:00" }), dead];
    const both = learn(input(), two, { offsetDeviation: 1 });
    const [first, second] = notes({ learned: both });
    expect(first?.[1]).toMatch(
      /^From 2 entries .* Their temperature is (-?\d\.\d) °C above the one given \(-?\d\.\d to -?\d\.\d\)\. The/,
    );
    expect(second).toEqual([
      "log-kept-aside",
      "pupa, 2026-06-09: a death says nothing of the pace; the entry counts for survival only.",
    ]);
    const none = notes({ learned: learn(input(), []) });
    expect(none[0]?.[1]).toMatch(/^From 0 entries .* %\)\.$/);
  });

  it("name the last day without a next minimum only where it was used", () => {
    const short = dailyTemperatures("2026-06-01", Array(6).fill(15), Array(6).fill(25));
    const codes = (change: Partial<ForecastInput>): string[] => notes(change).map(([code]) => code);
    expect(codes({ method: "double-sine", temperatures: short })).toEqual([
      "series-ends-first",
      "last-day-without-next-minimum",
    ]);
    expect(notes({ method: "double-sine", temperatures: short })[1]?.[1]).toBe(
      "The last day has no next day's minimum; its own minimum was used for the second half.",
    );
    expect(codes({ method: "double-sine" })).toEqual([]);
    expect(codes({ method: "single-sine", temperatures: short })).toEqual(["series-ends-first"]);
  });

  it("say why there is no date: an end, a gap, or no warmth", () => {
    const short = dailyTemperatures("2026-06-01", Array(6).fill(15), Array(6).fill(25));
    expect(notes({ temperatures: short })).toEqual([
      [
        "series-ends-first",
        "The temperatures end at 2026-06-07 00:00; later ones are needed to see further. From the pupa on, dates are missing or incomplete. The highest temperature is 25.0 °C.",
      ],
    ]);
    const gap = dailyTemperatures("2026-06-01", [15, 15, 15, Number.NaN, 15], [25, 25, 26, Number.NaN, 25]);
    expect(notes({ temperatures: gap })[0]?.[1]).toBe(
      "There is a gap in the temperatures from 2026-06-04 00:00 on; fill it to see further. From the pupa on, dates are missing or incomplete. The highest temperature is 26.0 °C.",
    );
    const cold = dailyTemperatures("2026-06-01", Array(6).fill(1), Array(6).fill(9.96));
    expect(notes({ temperatures: cold })).toEqual([
      ["never-develops", "No development: the highest temperature is 10.0 °C and the lower threshold 10 °C."],
    ]);
    expect(notes({ temperatures: constantTemperature(10.001) })[0]?.[1]).toContain(
      "It is not reached within a hundred years at these temperatures.",
    );
  });
});
