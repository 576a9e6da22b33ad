import { describe, expect, it } from "vitest";
import { type Timeline, timelineOf } from "../../src/diurnal/timeline.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import type { TemperatureSeries } from "../../src/temperature/series.ts";
import { DAY_MS, startOfDay } from "../../src/time/zone.ts";
import { refusalOf } from "../support/refusal.ts";

const HOUR = 3_600_000;
const limits = { lower: 10, upper: 30 };

function timeline(series: TemperatureSeries, day: string, zone: string | null = null, hours = 0): Timeline {
  return timelineOf(series, {
    method: "single-sine",
    zone,
    from: startOfDay(day, zone) + hours * HOUR,
    limits,
  });
}

function contiguous({ arcs }: Timeline): boolean {
  return arcs.every((arc, i) => i === 0 || arc.from === arcs[i - 1]?.to);
}

describe("timelineOf", () => {
  it("lays days end to end, on days of 23 and 25 hours too", () => {
    for (const [start, hours] of [
      ["2026-03-07", 71],
      ["2026-10-31", 73],
    ] as const) {
      const line = timeline(dailyTemperatures(start, [1, 2, 3], [11, 12, 13]), start, "America/New_York");
      expect(contiguous(line)).toBe(true);
      expect((line.to - line.from) / HOUR).toBe(hours);
    }
  });

  it("ends at the first missing day and says that it is a gap", () => {
    const line = timeline(
      dailyTemperatures("2026-05-01", [8, 9, Number.NaN, 7], [20, 21, Number.NaN, 19]),
      "2026-05-01",
    );
    expect([(line.to - line.from) / DAY_MS, line.endedBy]).toEqual([2, "gap"]);
  });

  it("starts within a day", () => {
    const line = timeline(dailyTemperatures("2026-05-01", [8], [20]), "2026-05-01", null, 20);
    expect([line.arcs.length, (line.to - line.from) / HOUR]).toEqual([1, 4]);
  });

  it("joins readings by straight lines and does not bridge a long gap", () => {
    const at = [0, 1, 2, 12, 13].map((hour) => startOfDay("2026-05-01", null) + hour * HOUR);
    const line = timeline(temperatureReadings(at, [10, 12, 11, 20, 21], { clock: "local" }), "2026-05-01");
    expect([line.arcs.length, (line.to - line.from) / HOUR, line.endedBy]).toEqual([2, 2, "gap"]);
    const bridged = timeline(
      temperatureReadings(at, [10, 12, 11, 20, 21], { clock: "local", longestGapHours: 10 }),
      "2026-05-01",
    );
    expect([bridged.arcs.length, bridged.endedBy]).toEqual([4, "series-ends"]);
  });

  it("takes the first series that covers a moment, to the minute", () => {
    const at = [0, 6, 10.5].map((hour) => startOfDay("2026-05-02", null) + hour * HOUR);
    const logger = temperatureReadings(at, [10, 14, 18], { clock: "local" });
    const forecastDays = dailyTemperatures("2026-05-01", [5, 6, 7], [15, 16, 17], "forecast");
    const line = timeline(joinTemperatures(logger, forecastDays, constantTemperature(20)), "2026-05-01");
    expect(contiguous(line)).toBe(true);
    const spans = line.arcs.reduce<[string, number][]>((all, { origin, from, to }) => {
      const last = all.at(-1);
      if (last?.[0] === origin) last[1] += (to - from) / HOUR;
      else all.push([origin, (to - from) / HOUR]);
      return all;
    }, []);
    expect(spans.slice(0, 3)).toEqual([
      ["forecast", 24],
      ["observed", 10.5],
      ["forecast", 13.5 + 24],
    ]);
    expect(spans[3]?.[0]).toBe("assumed");
  });

  it("fills each of several holes from one long part", () => {
    const holes = dailyTemperatures(
      "2026-05-01",
      [8, Number.NaN, 9, Number.NaN, 7],
      [20, Number.NaN, 21, Number.NaN, 19],
    );
    const line = timeline(
      joinTemperatures(holes, constantTemperature(15, { to: "2026-05-05" })),
      "2026-05-01",
    );
    expect(contiguous(line)).toBe(true);
    expect((line.to - line.from) / DAY_MS).toBe(5);
    const assumed = line.arcs.filter(({ origin }) => origin === "assumed");
    expect(assumed.map(({ from, to }) => (to - from) / DAY_MS)).toEqual([1, 1]);
  });

  it("takes the two instants of an hour lived twice as one after the other", () => {
    const zone = "America/New_York";
    const series = dailyTemperatures("2026-11-01", [10], [10]);
    expect((timeline(series, "2026-11-01", zone).to - startOfDay("2026-11-01", zone)) / HOUR).toBe(25);
  });

  it.each([
    ["2026-04-30", "start-outside-series", "run from 2026-05-01 to 2026-05-03"],
    ["2026-05-09", "start-outside-series", "run from 2026-05-01 to 2026-05-03"],
    ["2026-05-02", "missing-temperature", "no temperature for it before 2026-05-03"],
  ])("refuses to start on %s", (day, code, text) => {
    const series = dailyTemperatures("2026-05-01", [8, Number.NaN, 9], [20, Number.NaN, 21]);
    const refusal = refusalOf(() => timeline(series, day));
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(text);
  });

  it("refuses readings in UTC without a zone, and local readings at a time the zone skipped", () => {
    const at = [0, 1, 2, 3].map((hour) => startOfDay("2026-03-08", null) + hour * HOUR);
    expect(refusalOf(() => timeline(temperatureReadings(at, [1, 2, 3, 4]), "2026-03-08")).code).toBe(
      "zone-needed",
    );
    const local = temperatureReadings(at, [1, 2, 3, 4], { clock: "local" });
    expect(refusalOf(() => timeline(local, "2026-03-08", "America/New_York")).message).toContain("skipped");
  });
});
