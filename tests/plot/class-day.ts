import { readFileSync } from "node:fs";
import { join } from "node:path";
import { forecast } from "../../src/forecast/forecast.ts";
import { readHourlyWeather } from "../../src/read/index.ts";
import { dayPlan } from "../../src/rearing/plan/day-plan.ts";
import { startFor } from "../../src/rearing/start/start-for.ts";
import type { DatePlan, RoomPlan } from "../../src/rearing/start/start-plan.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { addDays, dayNumber } from "../../src/time/civil-day.ts";
import { newYork } from "./season.ts";

if (newYork.kind !== "daily") throw new Error("the record is one of days");
const record = newYork;

/** The wanted day of the third notebook's invented class, and the first day on which it can have eggs. */
export const WANTED = "2015-07-03";
export const FROM = "2015-05-20";
export const ZONE = "America/New_York";

const eggs = (count: number) => ({ stage: "egg", count, age: "new" }) as const;

/** Other years than 2015 laid out from the first possible day on. */
export const pastWeather = weatherEnsemble({
  observed: dailyTemperatures(FROM, [0], [0]),
  until: addDays(FROM, -1),
  past: record,
  exclude: [2015],
  days: dayNumber(WANTED) - dayNumber(FROM) + 100,
});

const target = { lifeCycle: danausPlexippus, day: WANTED, zone: ZONE };

/** The plan on the porch. */
export const porchPlan = (count = 12): DatePlan =>
  startFor({ ...target, start: eggs(count), temperatures: pastWeather, dates: { from: FROM, to: WANTED } });

/** The plan for a room from the first possible day on. */
export const roomPlan = (count = 12): RoomPlan =>
  startFor({ ...target, start: eggs(count), on: FROM, constant: { from: 18, to: 28 } });

/** The forecast of a start on the porch. */
export const porchForecast = (on: string) =>
  forecast({
    lifeCycle: danausPlexippus,
    found: { ...eggs(12), on },
    temperatures: pastWeather,
    zone: ZONE,
  });

/** The day plan of a start on the porch. */
export const porchDays = (on: string, leaves = 80) =>
  dayPlan([{ name: "class", lifeCycle: danausPlexippus, forecast: porchForecast(on), cages: 2 }], {
    away: ["2015-06-20", "2015-06-21"],
    supplies: [{ leaves }],
  });

/** The invented week of hourly weather. */
export const hourlyWeek = readHourlyWeather(
  readFileSync(join(import.meta.dirname, "../../fixtures/weather/invented-week.csv"), "utf8"),
  { zone: ZONE },
).weather;
