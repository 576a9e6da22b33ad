import { describe, expect, it } from "vitest";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { joinTemperatures } from "../../src/temperature/join.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import { shiftedTemperatures } from "../../src/temperature/shift.ts";

describe("shiftedTemperatures", () => {
  it("warms every kind of series and leaves its days and origins alone", () => {
    const daily = dailyTemperatures("2026-05-01", [1, Number.NaN], [9, Number.NaN], "filled");
    const readings = temperatureReadings([0, 1], [5, 6]);
    const joined = shiftedTemperatures(joinTemperatures(daily, readings, constantTemperature(20)), 2);
    if (joined.kind !== "joined") throw new Error("a joined series stays joined");
    const [first, second, third] = joined.parts;
    expect(first).toMatchObject({ kind: "daily", start: "2026-05-01", origin: ["filled", "filled"] });
    expect(first?.kind === "daily" && [...first.min, ...first.max]).toEqual([3, Number.NaN, 11, Number.NaN]);
    expect(second?.kind === "readings" && [...second.temperature]).toEqual([7, 8]);
    expect(third).toMatchObject({ kind: "constant", temperature: 22 });
    expect([...daily.min]).toEqual([1, Number.NaN]);
  });
});
