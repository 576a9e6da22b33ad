import {
  SPECIES,
  THRESHOLD_METHODS,
  accumulateDegreeDays,
  briere1,
  chanceBetween,
  compareMethods,
  compareRateModels,
  constantTemperature,
  dayLength,
  dayPlan,
  estimateThreshold,
  expectedAdults,
  findSpecies,
  forecast,
  hourlyWeather,
  learn,
  logEntry,
  normalsOf,
  normalTemperatures,
  normalsEnsemble,
  releaseHours,
  season,
  startFor,
  weatherEnsemble,
} from "../../src/index.ts";
import {
  describeStageWindows,
  degreeDayRows,
  stageWindowRows,
  temperatureRows,
} from "../../src/plot/index.ts";
import { readHourlyWeather, readLog, readTemperatures } from "../../src/read/index.ts";
import {
  calendarIcs,
  calendarText,
  forecastCsv,
  logCsv,
  planPage,
  planText,
  releaseText,
  seasonText,
  speciesText,
  startForText,
} from "../../src/write/index.ts";
import { inventedDays } from "../support/invented-season.ts";

/** A wide set of results as one text each: the same on every machine, in every zone and language, or it is a fault. */
export function results(): Readonly<Record<string, string>> {
  const monarch = findSpecies("monarch");
  const zone = "America/New_York";
  const days = inventedDays("2026-05-01", 160);
  const years = inventedDays("2021-01-01", 4 * 365 + 1);
  const found = { stage: "egg", on: "2026-06-08", count: 12 } as const;
  const input = { lifeCycle: monarch, found, temperatures: days, zone };
  const one = forecast(input);
  const log = [
    logEntry({ stage: "instar-1", on: "2026-06-12", count: 9 }),
    logEntry({ stage: "instar-5", on: "2026-06-24", count: 3, note: "größer; =schöner" }),
  ];
  const ensemble = weatherEnsemble({ observed: days, until: "2026-06-20", past: years, days: 90 });
  const normals = normalsOf(years);
  const learned = learn(input, log);
  const weather = hourlyWeather({
    at: Array.from({ length: 48 }, (_, i) => Date.UTC(2026, 6, 5, 4) + i * 3_600_000),
    temperature: Array.from({ length: 48 }, (_, i) => 20 + 5 * Math.sin(i / 4)),
    wind: Array.from({ length: 48 }, () => 2),
    rainChance: Array.from({ length: 48 }, () => 5),
  });
  const place = { latitude: 40.7, longitude: -74 };
  const plan = dayPlan([{ name: "İstanbul ß", lifeCycle: monarch, forecast: one }], {
    supplies: [{ leaves: 60 }],
  });
  const trials = [15, 18, 21, 25, 28, 31, 33].map((temperature, i) => ({
    temperature,
    days: [40, 28.2, 21.5, 16.1, 13.9, 13.1, 14.8][i] ?? 1,
  }));
  const outlook = season({
    lifeCycle: monarch,
    temperatures: years,
    hemisphere: "north",
    firstEggs: "05-20",
    place,
    zone,
  });
  const start = startFor({
    lifeCycle: monarch,
    start: { stage: "pupa", count: 12, age: "new" },
    day: "2026-06-12",
    temperatures: constantTemperature(24),
    zone,
  });
  const texts: Record<string, unknown> = {
    species: SPECIES.map((lifeCycle) => [
      speciesText(lifeCycle),
      forecast({
        lifeCycle,
        found: { stage: lifeCycle.stages[0]?.stage ?? "egg", on: "2026-05-20" },
        temperatures: days,
        zone: "Australia/Lord_Howe",
      }),
    ]),
    "weather of past years": forecast({ ...input, temperatures: ensemble }),
    "normals with variation": forecast({
      ...input,
      temperatures: normalsEnsemble({
        observed: days,
        until: "2026-06-20",
        normals: normalTemperatures(normals, "2026-06-01", "2026-09-30"),
        standardDeviation: 3,
        autocorrelation: 0.6,
      }),
    }),
    learned: [learned, forecast({ ...input, learned })],
    chance: chanceBetween(input, "pupa", Date.UTC(2026, 5, 24), Date.UTC(2026, 5, 26)),
    methods: compareMethods(
      days,
      { lower: 11.5, upper: 33 },
      { from: "2026-05-10", to: "2026-06-10", zone, place },
    ),
    accumulated: accumulateDegreeDays(days, { lower: 10, upper: 30, method: "double-sine" }),
    "day lengths": Array.from({ length: 12 }, (_, i) =>
      dayLength(`2026-${String(i + 1).padStart(2, "0")}-21`, 52.5),
    ),
    thresholds: THRESHOLD_METHODS.map((method) => estimateThreshold(trials.slice(0, 5), { method })),
    "rate models": compareRateModels(trials, [briere1]).map(({ model, parameters }) => [model, parameters]),
    adults: expectedAdults(12, [{ survived: 22, of: 29 }]),
    plan,
    "plan as text": planText(plan),
    "plan as page": planPage(plan),
    calendar: [calendarText(one), calendarIcs(one, { madeAt: "2026-06-08T17:30:00Z" })],
    tables: [forecastCsv(one), logCsv(log)],
    release: releaseText(
      releaseHours([{ at: "2026-07-05T07:00" }], weather, { lifeCycle: monarch, place, zone }),
    ),
    season: [outlook, seasonText(outlook)],
    start: [start, startForText(start)],
    "read anew": [
      readTemperatures("date;min °C;max °C\n1.5.2026;8,5;24\n2.5.2026;9;22,25", { dateOrder: "day-first" }),
      readTemperatures("time,temp °F\n3/8/2026 1:30 AM,60\n3/8/2026 3:30 AM,62", {
        zone,
        dateOrder: "month-first",
      }),
      readLog("stage,seen on\npupated,2026-07-04"),
      readHourlyWeather("time,temp °F,wind mph,rain %\n2026-07-05T12:00-04:00,77,5,10"),
    ],
    rows: [
      temperatureRows(days, { from: "2026-05-03", to: "2026-05-20", zone }),
      degreeDayRows(one),
      describeStageWindows(stageWindowRows(one, log)),
    ],
  };
  return Object.fromEntries(
    Object.entries(texts).map(([name, value]) => [
      name,
      typeof value === "string"
        ? value
        : JSON.stringify(value, (_, part: unknown) => (part instanceof Float64Array ? [...part] : part)),
    ]),
  );
}

/** A number for a text, the same for the same text: FNV-1a over UTF-16 units, two halves of 32 bits. */
export function digestOf(text: string): string {
  let [a, b] = [0x811c9dc5, 0x1b873593];
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    a = Math.imul(a ^ unit, 0x01000193);
    b = Math.imul(b ^ unit, 0x85ebca6b);
  }
  return [a, b].map((half) => (half >>> 0).toString(16).padStart(8, "0")).join("");
}

/** Digests of all results. */
export function digests(): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(results()).map(([name, text]) => [name, digestOf(text)]));
}
