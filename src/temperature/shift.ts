import { finite } from "../errors.ts";
import { dailyTemperatures } from "./daily.ts";
import { knownSeries } from "./known-series.ts";
import type { DailyTemperatures, TemperatureSeries } from "./series.ts";

/**
 * A series that is warmer throughout by a number of degrees (colder when negative).
 * @param by Difference, °C.
 * @example
 * shiftedTemperatures(constantTemperature(20), 1.5) // → { kind: "constant", temperature: 21.5, from: null, to: null }
 */
export function shiftedTemperatures(series: TemperatureSeries, by: number): TemperatureSeries {
  knownSeries(series, ["series"]);
  finite(by, ["by"], "a difference in °C");
  switch (series.kind) {
    case "daily":
      return shiftedDaily(series, () => by);
    case "readings":
      return { ...series, temperature: series.temperature.map((one) => one + by) };
    case "constant":
      return { ...series, temperature: series.temperature + by };
    case "joined":
      return {
        kind: "joined",
        parts: series.parts.map((part) => {
          const shifted = shiftedTemperatures(part, by);
          return shifted.kind === "joined" ? part : shifted;
        }),
      };
  }
}

/** Daily extremes with each day made warmer by a number of degrees of its own. */
export function shiftedDaily(series: DailyTemperatures, by: (index: number) => number): DailyTemperatures {
  return dailyTemperatures(
    series.start,
    series.min.map((one, i) => one + by(i)),
    series.max.map((one, i) => one + by(i)),
    series.origin,
  );
}
