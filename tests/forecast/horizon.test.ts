import { describe, expect, it } from "vitest";
import { startOf } from "../../src/forecast/question/forecast-input.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { roughHorizon } from "../../src/forecast/clocks/horizon.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { DAY_MS } from "../../src/time/zone.ts";
import { city } from "../support/city.ts";

const newYork = city("new-york");
const input = (on: string, temperatures: Parameters<typeof forecast>[0]["temperatures"]) =>
  ({ lifeCycle: danausPlexippus, found: { stage: "egg", on }, temperatures }) as const;
const horizonDays = (on: string, temperatures: Parameters<typeof forecast>[0]["temperatures"]): number => {
  const given = input(on, temperatures);
  const start = startOf(given);
  const until = roughHorizon(temperatures, danausPlexippus, start, undefined);
  return (until - start.instant) / DAY_MS;
};

describe("roughHorizon", () => {
  it("lies some weeks behind the last date in summer, and far off in autumn", () => {
    const late = forecast(input("2014-06-08", newYork)).stages.at(-1)?.begins.late ?? "";
    const needed = (Date.parse(`${late}Z`) - Date.parse("2014-06-08T12:00Z")) / DAY_MS;
    expect(horizonDays("2014-06-08", newYork)).toBeGreaterThan(needed + 14);
    expect(horizonDays("2014-06-08", newYork)).toBeLessThan(needed + 40);
    expect(horizonDays("2014-10-01", newYork)).toBeGreaterThan(200);
  });

  it("falls back on a usual season where days cannot be added up", () => {
    expect(horizonDays("2014-06-08", constantTemperature(25))).toBeGreaterThan(100);
  });

  it("is only where to look first: a guess that was too near changes no date", () => {
    // By daily means 40 °C above the threshold; by the horizontal cutoff at 33 °C about half of that.
    const days = 200;
    const hot = (min: number, max: number) =>
      dailyTemperatures("2014-06-01", Array<number>(days).fill(min), Array<number>(days).fill(max));
    const guessed = horizonDays("2014-06-01", hot(33, 70));
    const { stages, tables } = forecast(input("2014-06-01", hot(33, 70)));
    const held = forecast(input("2014-06-01", hot(33, 33)));
    expect(stages.map(({ begins }) => begins)).toEqual(held.stages.map(({ begins }) => begins));
    expect(tables[0]?.days.length).toBeGreaterThan(guessed);
  });

  it("nor does one that was nearer by far", () => {
    // A degree above the lower threshold is all that counts, so that 352 degree-days take 352 days; by daily means 17.
    const stages = danausPlexippus.stages.map((needs) => {
      return { ...needs, upper: { value: needs.lower.value + 1, mark: "read", source: "invented" } as const };
    });
    const slow = { ...danausPlexippus, stages };
    const temperatures = dailyTemperatures("2014-01-01", Array(900).fill(32), Array(900).fill(32));
    const found = { stage: "egg", on: "2014-01-01T00:00", age: "new" } as const;
    const result = forecast({ lifeCycle: slow, found, temperatures });
    expect(result.stages.at(-1)?.begins.expected).toBe("2014-12-19T00:00:00");
    expect(result.stages.every(({ absence }) => absence === null)).toBe(true);
    // Two weeks more than the latest date.
    const late = result.stages.at(-1)?.begins.late ?? "";
    const last = new Date(Date.parse(`${late}Z`) + 14 * DAY_MS).toISOString().slice(0, 10);
    expect(result.tables[0]?.days.at(-1)).toBe(last);
  });
});
