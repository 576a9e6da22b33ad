import { describe, expect, it } from "vitest";
import { logEntry } from "../../src/cohort/log.ts";
import { SUN_METHODS } from "../../src/diurnal/method.ts";
import { learn } from "../../src/forecast/learning/learn.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { inventedDays, inventedForecast } from "../support/invented-season.ts";
import { refusalOf } from "../support/refusal.ts";

const place = { latitude: 43, longitude: -75 };

describe("a forecast by a method that follows the sun", () => {
  it("dates every stage, within a day of the single sine, and says where the hours come from", () => {
    const sine = inventedForecast();
    for (const method of SUN_METHODS) {
      const result = inventedForecast({ method, place });
      expect(result.method).toBe(method);
      result.stages.forEach(({ begins }, i) => {
        const other = sine.stages[i]?.begins.expected ?? "";
        expect(Math.abs(Date.parse(begins.expected ?? "") - Date.parse(other))).toBeLessThan(86_400_000);
      });
      expect(result.stages.map(({ begins }) => begins)).not.toEqual(sine.stages.map(({ begins }) => begins));
      const code = method === "sunrise-sine" ? "common-practice" : "constant-from-memory";
      expect(result.notes.at(-1)?.code).toBe(code);
      expect(JSON.parse(JSON.stringify(result))).toEqual(result);
    }
  });

  it("needs a place and a zone where temperatures are daily, and neither where they are not", () => {
    const method = "sunrise-sine";
    expect(refusalOf(() => inventedForecast({ method })).code).toBe("place-needed");
    expect(refusalOf(() => inventedForecast({ method, place, zone: null })).code).toBe("zone-needed");
    const held = inventedForecast({ method, zone: null, temperatures: constantTemperature(25) });
    expect(held.stages.at(-1)?.begins.expected).not.toBeNull();
  });

  it("refuses a place that is none even where none is needed", () => {
    const far = { latitude: 43, longitude: 275 };
    expect(refusalOf(() => inventedForecast({ place: far })).message).toContain("place.longitude is 275");
  });

  it("is what a log is learned from, too", () => {
    const input = {
      lifeCycle: danausPlexippus,
      found: { stage: "egg" as const, on: "2026-06-08", count: 12 },
      temperatures: inventedDays("2026-05-01", 200),
      zone: "America/New_York",
      method: "sunrise-exponential" as const,
    };
    const log = [logEntry({ stage: "pupa", on: "2026-06-30" })];
    expect(refusalOf(() => learn(input, log)).code).toBe("place-needed");
    expect(learn({ ...input, place }, log).used).toHaveLength(1);
  });
});
