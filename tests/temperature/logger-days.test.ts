import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { thermalClock } from "../../src/clock/thermal-clock.ts";
import { timelineOf } from "../../src/diurnal/timeline.ts";
import { linearResponse } from "../../src/response/linear.ts";
import { loggerDays } from "../../src/temperature/logger-days.ts";
import { temperatureReadings } from "../../src/temperature/readings.ts";
import { dayNumber } from "../../src/time/civil-day.ts";
import { startOfDay } from "../../src/time/zone.ts";
import { degrees } from "../support/arbitraries.ts";
import { refusalOf } from "../support/refusal.ts";

const HOUR = 3_600_000;
const START = dayNumber("2026-07-01") * 24 * HOUR;

describe("loggerDays", () => {
  test("days that are covered from midnight to midnight, also where readings miss the midnights", () => {
    const hours = Array.from({ length: 60 }, (_, i) => i + 0.5);
    const days = loggerDays(
      temperatureReadings(
        hours.map((hour) => START + hour * HOUR),
        hours.map((hour) => hour),
        { clock: "local" },
      ),
      null,
    );
    // Half an hour of 1 July is missing; 3 July ends at 11:30.
    expect(days).toEqual([{ day: "2026-07-02", min: 24, max: 48, mean: 36 }]);
  });

  test("a gap takes out the days that it touches", () => {
    const hours = [0, 6, 12, 18, 24, 30, 41, 48, 54, 60, 66, 72];
    const readings = (longestGapHours: number) =>
      temperatureReadings(
        hours.map((hour) => START + hour * HOUR),
        hours.map(() => 20),
        { clock: "local", longestGapHours },
      );
    expect(loggerDays(readings(6), null).map(({ day }) => day)).toEqual(["2026-07-01", "2026-07-03"]);
    expect(loggerDays(readings(12), null)).toHaveLength(3);
    expect(loggerDays(readings(1), null)).toEqual([]);
  });

  test("days of a zone, those on which clocks change included", () => {
    const hours = Array.from({ length: 24 * 5 }, (_, i) => i);
    const from = Date.UTC(2026, 9, 30);
    const readings = temperatureReadings(
      hours.map((hour) => from + hour * HOUR),
      hours.map((hour) => hour),
    );
    const days = loggerDays(readings, "America/New_York");
    expect(days.map(({ day }) => day)).toEqual(["2026-10-30", "2026-10-31", "2026-11-01", "2026-11-02"]);
    // 25 hours on 1 November.
    expect(days.map(({ min, max }) => max - min)).toEqual([24, 24, 25, 24]);
    expect(refusalOf(() => loggerDays(readings, null)).code).toBe("zone-needed");
  });

  test("means agree with the clock that runs on the same readings", () => {
    const temperatures = fc.array(degrees(-5, 35), { minLength: 60, maxLength: 90 });
    fc.assert(
      fc.property(temperatures, (values) => {
        const readings = temperatureReadings(
          values.map((_, i) => START + i * HOUR),
          values,
        );
        const timeline = timelineOf(readings, {
          method: "average",
          zone: "UTC",
          from: START,
          limits: { lower: -50, upper: Infinity },
        });
        const clock = thermalClock(timeline, linearResponse({ lower: -50 }));
        const days = loggerDays(readings, "UTC");
        expect(days.length).toBeGreaterThanOrEqual(2);
        for (const { day, mean } of days) {
          const [begin, end] = [startOfDay(day, "UTC"), startOfDay(dayNumber(day) + 1, "UTC")];
          expect(mean).toBeCloseTo(clock.amountAt(end) - clock.amountAt(begin) - 50, 8);
        }
      }),
    );
  });
});
