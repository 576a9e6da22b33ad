import { readFileSync } from "node:fs";
import { checkLifeCycle, checkLog, findSpecies, forecast } from "../../src/index.ts";
import * as read from "../../src/read/index.ts";
import { calendarText, forecastCsv, logCsv } from "../../src/write/index.ts";
import { inventedDays } from "../support/invented-season.ts";
import { attempt, keeps, named, parsed, sameSeries, whole } from "./file-laws.ts";

/** A kind of file: right ones to begin with, how they are read, and what must hold of what was read. */
export interface FileKind {
  readonly name: string;
  readonly files: readonly string[];
  /** Throws an Error that is no InputError where a law is broken. */
  readonly read: (file: string | Uint8Array) => void;
}

const fixture = (name: string): string =>
  readFileSync(new URL(`../../fixtures/${name}`, import.meta.url), "utf8");
const firstLines = (text: string, count: number): string => text.split("\n").slice(0, count).join("\n");

const NEW_YORK = firstLines(fixture("temperatures/new-york-2012-2015.csv"), 25);
const LOG = fixture("logs/invented-slow-season.csv");
const KEPT_LOG =
  "stage,seen on,count,note,corrects,written\nhatched,2026-06-11,4,,,2026-06-11T18:00:00Z\npupated,2026-06-25,3,,,2026-06-25T18:00:00Z\n,,2,,3,2026-06-26T18:00:00Z\nretracted,,,,2,2026-06-27T18:00:00Z\nadult,2026-07-04,2,,,2026-07-04T18:00:00Z\n";
const DAYS_JSON = JSON.stringify({
  unit: "C",
  days: [
    { date: "2026-05-01", min: 8, max: 24 },
    { date: "2026-05-02", min: 9, max: null },
    { date: "2026-05-04", min: 7.5, max: 20 },
  ],
});
const READINGS_JSON = JSON.stringify({
  unit: "F",
  readings: [
    { at: "2026-05-01T06:00", temperature: 60 },
    { at: "2026-05-01T07:00", temperature: 62 },
    { at: "2026-05-01T15:00", temperature: 71.5 },
  ],
});
const COHORTS =
  "name,species,found,on,count,age,cages\nporch,monarch,egg,2026-06-08,12,new,1\nshed,pieris-rapae,instar-3,2026-06-10 08:30,4,0.5,2\n";
const COHORTS_JSON = JSON.stringify([
  { name: "porch", species: "monarch", found: "egg", on: "2026-06-08", count: 12 },
  { name: "shed", species: "pieris-rapae", found: "instar-3", on: "2026-06-10", age: 0.5 },
]);
const HOURS_JSON = JSON.stringify({
  unit: "C",
  windUnit: "m/s",
  hours: Array.from({ length: 5 }, (_, i) => ({
    at: `2026-07-05T1${i}:00Z`,
    temperature: 20 + i,
    wind: 2,
    rain: 0,
    rainChance: 10,
    cloud: null,
  })),
});
const FORECAST = JSON.stringify(
  forecast({
    lifeCycle: findSpecies("monarch"),
    found: { stage: "egg", on: "2026-06-08", count: 12 },
    temperatures: inventedDays("2026-06-01", 40),
    zone: "America/New_York",
  }),
);
const ENTRIES = JSON.stringify(read.readLog(LOG).entries.slice(0, 6));
const ZONE = { zone: "America/New_York" };

/** Every kind of file that is read. */
export const FILE_KINDS: readonly FileKind[] = [
  {
    name: "temperatures as days",
    files: [NEW_YORK, fixture("read/garden-days.csv")],
    read(file) {
      for (const options of [
        {},
        { unit: "F" } as const,
        { dateOrder: "day-first", exchangeSwapped: true } as const,
      ])
        attempt(() => sameSeries(read.readTemperatures(file, options), file));
    },
  },
  {
    name: "temperatures as readings",
    files: [fixture("read/shelf-logger.csv"), firstLines(fixture("loggers/invented-porch.csv"), 15)],
    read(file) {
      for (const options of [{}, ZONE, { dateOrder: "month-first" } as const])
        attempt(() => sameSeries(read.readTemperatures(file, options), file));
    },
  },
  {
    name: "GHCN-Daily",
    files: [firstLines(fixture("read/station-month.csv"), 20), fixture("read/station-month.dly")],
    read(file) {
      attempt(() => sameSeries(read.readTemperatures(file), file));
      attempt(() => sameSeries(read.readGhcnCsv(file), file));
      attempt(() => sameSeries(read.readGhcnDly(file), file));
    },
  },
  {
    name: "temperatures as JSON",
    files: [DAYS_JSON, READINGS_JSON, '{"unit":"C","constant":24,"from":"2026-05-01"}'],
    read(file) {
      attempt(() => sameSeries(read.readTemperatures(file, { format: "json" }), file));
    },
  },
  {
    name: "logs",
    files: [LOG, fixture("read/cage-log.csv"), KEPT_LOG],
    read(file) {
      attempt(() => {
        const { entries, superseded, notes } = read.readLog(file);
        whole(entries, notes);
        checkLog(entries);
        // A row that takes another back is itself in no entry.
        const takenBack = new Set(superseded.filter(({ how }) => how === "retracted").map(({ by }) => by));
        const least = entries.length + superseded.length + named(notes, "log-examples");
        keeps(file, [least, least + takenBack.size], notes);
        // What was read can be written and read again.
        const again = read.readLog(logCsv(entries)).entries;
        if (entries.length > 0 && again.length !== entries.length)
          throw new Error("a log that was written lost rows");
      });
    },
  },
  {
    name: "log entries as JSON",
    files: [ENTRIES],
    read(file) {
      const value = parsed(file);
      attempt(() => whole(read.readLogEntries(value), []));
    },
  },
  {
    name: "cohorts",
    files: [COHORTS, COHORTS_JSON],
    read(file) {
      attempt(() => {
        const { cohorts, notes } = read.readCohorts(file);
        whole(cohorts, notes);
        keeps(file, cohorts.length, notes);
      });
    },
  },
  {
    name: "trials",
    files: [fixture("trials/invented-trials.csv"), fixture("trials/gastrophysa-viridula.csv")],
    read(file) {
      attempt(() => {
        const { trials, notes } = read.readTrials(file);
        whole(trials, notes);
        keeps(file, trials.length, notes);
      });
    },
  },
  {
    name: "hourly weather",
    files: [firstLines(fixture("weather/invented-week.csv"), 12), HOURS_JSON],
    read(file) {
      attempt(() => {
        const { weather, notes } = read.readHourlyWeather(file, ZONE);
        whole(weather, notes);
        keeps(file, weather.at.length + named(notes, "duplicate-rows"), notes);
      });
    },
  },
  {
    name: "life cycles",
    files: [fixture("read/own-species.json")],
    read(file) {
      const value = parsed(file);
      attempt(() => {
        const lifeCycle = read.readLifeCycle(value);
        whole(lifeCycle, []);
        checkLifeCycle(lifeCycle);
      });
    },
  },
  {
    name: "forecasts as JSON",
    files: [FORECAST],
    read(file) {
      const value = parsed(file);
      attempt(() => {
        const shown = read.readForecast(value);
        whole(shown, []);
        attempt(() => whole([calendarText(shown), forecastCsv(shown)], []));
      });
    },
  },
];
