import { describe, expect, it } from "vitest";
import { estimateThreshold, thresholdOfLine } from "../../src/evaluate/threshold/estimate-threshold.ts";
import { developmentClock } from "../../src/clock/development-clock.ts";
import { timelineOf } from "../../src/diurnal/timeline.ts";
import { constantTemperature } from "../../src/temperature/constant.ts";
import { DAY_MS, startOfDay } from "../../src/time/zone.ts";
import { published, publishedDisagreements } from "../support/published.ts";

const { rows, durations, constants } = published("thresholds");
const trialsOf = (data: readonly (readonly [number, number])[]) =>
  data.map(([temperature, days]) => ({ temperature, days }));

describe("printed thresholds, estimated", () => {
  it.each(rows.filter(({ from }) => from === "data"))(
    "$id: $what, base $lower and $degreeDays from its days ($source)",
    ({ data, lower, degreeDays, tolerance }) => {
      const estimate = estimateThreshold(trialsOf(data ?? []));
      expect(Math.abs(estimate.lower - Number(lower))).toBeLessThanOrEqual(tolerance.lower);
      expect(Math.abs(estimate.thermalConstant - Number(degreeDays))).toBeLessThanOrEqual(
        tolerance.degreeDays,
      );
    },
  );

  it.each(rows.filter(({ slope }) => slope !== null))(
    "$id: $what, base $lower and $degreeDays from its coefficients ($source)",
    ({ intercept, slope, lower, degreeDays, tolerance }) => {
      const found = thresholdOfLine({ intercept: Number(intercept), slope: Number(slope) });
      expect(Math.abs(found.lower - Number(lower))).toBeLessThanOrEqual(tolerance.lower);
      expect(Math.abs(found.thermalConstant - Number(degreeDays))).toBeLessThanOrEqual(tolerance.degreeDays);
    },
  );

  // Rounded coefficients or means: what we make of the data is stated beside what is printed.
  it.each([
    ["B40", "haplogonatopus-means", 3],
    ["B38", "oregon-handout", 3],
  ] as const)("%s gives what %s in the list of disagreements says it gives", (row, entry, lowerDigits) => {
    const data = rows.find(({ id }) => id === row)?.data ?? [];
    const ours = publishedDisagreements().entries.find(({ id }) => id === entry)?.ours ?? "";
    const { lower, thermalConstant } = estimateThreshold(trialsOf(data));
    const [lowerText = "", constantText = ""] = ours.split(" and ");
    expect(lower.toFixed(lowerDigits)).toBe(lowerText);
    expect(thermalConstant.toFixed(constantText.split(".")[1]?.length)).toBe(constantText);
  });

  it("gives the derived reduced major axes of two printed sets (a regression, not an outside check)", () => {
    const of = (id: string) =>
      estimateThreshold(trialsOf(rows.find((row) => row.id === id)?.data ?? []), {
        method: "reduced-major-axis",
      });
    expect(of("B37").lower).toBeCloseTo(7.796, 3);
    expect(of("B37").thermalConstant).toBeCloseTo(290.95, 2);
    expect(of("B38").lower).toBeCloseTo(40.953, 3);
    expect(of("B38").thermalConstant).toBeCloseTo(367.973, 3);
  });
});

describe("printed durations, on a clock", () => {
  const clockOf = (temperature: number, lower: number, constant: number) => {
    const from = startOfDay("2026-05-01", null);
    const timeline = timelineOf(constantTemperature(temperature, { from: "2026-05-01", to: "2026-12-31" }), {
      method: "single-sine",
      zone: null,
      from,
      limits: { lower, upper: Infinity },
    });
    return { from, clock: developmentClock(timeline, (t) => Math.max(0, t - lower) / constant) };
  };

  it.each(durations)(
    "$id: $what, $printed d at $temperature °C",
    ({ lower, degreeDays, temperature, printed, tolerance }) => {
      const { from, clock } = clockOf(temperature, lower, degreeDays);
      expect(Math.abs(((clock.when(1) ?? Number.NaN) - from) / DAY_MS - Number(printed))).toBeLessThanOrEqual(
        tolerance,
      );
    },
  );

  it.each(constants)(
    "$id: $what, $days d to $printed",
    ({ lower, temperature, days, printed, tolerance }) => {
      const { from, clock } = clockOf(temperature, lower, 1);
      expect(Math.abs(clock.amountAt(from + days * DAY_MS) - Number(printed))).toBeLessThanOrEqual(tolerance);
    },
  );
});
