import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type LogEntry } from "../../src/cohort/log.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { learn } from "../../src/forecast/learning/learn.ts";
import type { Outlook } from "../../src/plot/index.ts";
import { readLog } from "../../src/read/index.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { weatherEnsemble } from "../../src/temperature/weather-ensemble.ts";
import { newYork } from "./season.ts";

/** The invented log of the second notebook. */
export const slowLog = readLog(
  readFileSync(join(import.meta.dirname, "../../fixtures/logs/invented-slow-season.csv"), "utf8"),
).entries;

/** What was seen: without the dead. */
export const slowSeen = slowLog.filter(({ fate }) => fate === undefined);

/** What an evening of the second notebook's invented season expects. */
export function outlookOn(day: string, log: readonly LogEntry[] = slowLog): Outlook {
  if (newYork.kind !== "daily") throw new Error("the fixture has daily extremes");
  const input = {
    lifeCycle: findSpecies("monarch"),
    found: { stage: "egg" as const, on: "2013-06-05" },
    temperatures: weatherEnsemble({ observed: newYork, until: day, past: newYork, exclude: [2013] }),
    zone: "America/New_York",
  };
  const options = { paceVariation: 0.1 };
  const known = log.filter(({ on }) => on.slice(0, 10) <= day);
  const learned = learn(input, known, options);
  return {
    day,
    learned,
    forecast: forecast({ ...input, learned }),
    withoutLog: forecast({ ...input, learned: learn(input, [], options) }),
  };
}
