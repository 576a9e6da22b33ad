import { describe, expect, it } from "vitest";
import { forecast } from "../../src/forecast/forecast.ts";
import { dayPlan } from "../../src/rearing/plan/day-plan.ts";
import { startFor } from "../../src/rearing/start/start-for.ts";
import { readTemperatures } from "../../src/read/index.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { tasksOf } from "../../notebooks/page/class-wording.ts";
import { pageWords } from "../../notebooks/page/page-words.ts";
import { inventedDays, inventedForecast } from "../support/invented-season.ts";
import { refusalOf } from "../support/refusal.ts";

const start = { stage: "egg", count: 12 } as const;
const foundOn = (on: string): (() => unknown) => {
  const temperatures = inventedDays("2026-05-01", 60);
  return () => forecast({ lifeCycle: danausPlexippus, found: { stage: "egg", on }, temperatures });
};
const wantedOn = (day: string) => () =>
  startFor({
    lifeCycle: danausPlexippus,
    start,
    day,
    dates: { from: "2026-05-20", to: day },
    temperatures: constantTemperature(24),
  });

describe("what is refused, in words for a page", () => {
  it.each([
    [
      "a table without a header",
      () => readTemperatures("hello"),
      /Add a header row such as date,min °C,max °C\.$/,
    ],
    [
      "extremes exchanged",
      () => readTemperatures("date,min,max\n2026-06-01,50,40"),
      /above the maximum of 40 °C; correct it\.$/,
    ],
    [
      "°F that nobody named",
      () => readTemperatures("date,min,max\n2026-06-01,58,88"),
      /choose °F as the unit if it is Fahrenheit/,
    ],
    [
      "dates of two readings",
      () => readTemperatures("date,min,max\n03/04/2026,8,20"),
      /write the dates as year-month-day/,
    ],
    ["an empty date", foundOn(""), /^A date is missing or not complete/],
    [
      "a day without temperatures",
      foundOn("1999-01-01"),
      /^1999-01-01 lies outside the temperatures, which run from 2026-05-01 to 2026-06-29; choose/,
    ],
    ["a wanted day before the eggs", wantedOn("2026-05-01"), /^The eggs can be had from 2026-05-20 on/],
  ] as const)("%s", (_, refused, expected) => {
    const words = pageWords(refusalOf(refused));
    expect(words).toMatch(expected);
    expect(words).not.toMatch(/exchangeSwapped|dateOrder|columns which|unit [CF]\b|found\.on/);
  });
});

it("tells the tasks of a day by its parts, each named once", () => {
  const { days } = dayPlan([{ name: "A", lifeCycle: danausPlexippus, forecast: inventedForecast() }]);
  const text = days.map(tasksOf).find((one) => one.includes("Release")) ?? "";
  expect(text).toMatch(/^Morning: Watch .* Midday: Release .* Evening: Hold/);
  expect(text.match(/Morning:/g)).toHaveLength(1);
});
