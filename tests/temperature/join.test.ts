import { describe, expect, it } from "vitest";
import { forecast } from "../../src/forecast/forecast.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import type { TemperatureSeries } from "../../src/temperature/series.ts";
import { refusalOf } from "../support/refusal.ts";

const days = dailyTemperatures("2026-06-01", [12, 12], [28, 28]);
const room = constantTemperature(24);

const stagesOn = (temperatures: TemperatureSeries) =>
  forecast({
    lifeCycle: danausPlexippus,
    found: { stage: "egg", on: "2026-06-01T06:00", age: "new" },
    temperatures,
  }).stages.map(({ begins }) => begins);

describe("joinTemperatures", () => {
  it("keeps the order of precedence and flattens what is already joined", () => {
    const readings = temperatureReadings([0, 1], [1, 2]);
    expect(joinTemperatures(joinTemperatures(readings, days), room).parts).toEqual([readings, days, room]);
    expect(joinTemperatures(days).parts).toEqual([days]);
  });

  it("refuses nothing", () => {
    const refusal = refusalOf(() => joinTemperatures());
    expect([refusal.code, refusal.message]).toEqual([
      "no-temperatures",
      "there is no series to join; give at least one.",
    ]);
  });

  it("lets the first that covers a moment count, whatever is behind it", () => {
    expect(stagesOn(joinTemperatures(room, days))).toEqual(stagesOn(room));
    expect(stagesOn(joinTemperatures(days, room))).not.toEqual(stagesOn(room));
  });

  it("gives the dates of the whole series when it is split in two and joined again", () => {
    const [min, max] = [
      Array.from({ length: 60 }, (_, i) => 12 + (i % 5)),
      Array.from({ length: 60 }, (_, i) => 24 + (i % 7)),
    ];
    const whole = dailyTemperatures("2026-06-01", min, max);
    const split = joinTemperatures(
      dailyTemperatures("2026-06-01", min.slice(0, 17), max.slice(0, 17)),
      dailyTemperatures("2026-06-18", min.slice(17), max.slice(17)),
    );
    expect(stagesOn(split)).toEqual(stagesOn(whole));
  });

  it("fills the holes of the first with the second", () => {
    const holed = dailyTemperatures("2026-06-01", [24, Number.NaN, 24], [24, 24, 24]);
    expect(stagesOn(joinTemperatures(holed, room))).toEqual(stagesOn(room));
  });
});
