import { type InputPath } from "../errors.ts";
import { given, givenList } from "../given.ts";
import type { TemperatureSeries } from "./series.ts";

/**
 * Refuses what is no series of temperatures: callers without types may hand over anything.
 * @throws {InputError} `invalid-option`, naming the path.
 */
export function knownSeries(series: TemperatureSeries, path: InputPath): void {
  const expected =
    "a series of temperatures, as dailyTemperatures, temperatureReadings, constantTemperature or joinTemperatures make one";
  given(series, path, expected, "kind");
  const needed: Readonly<Record<string, readonly string[]>> = {
    daily: ["start", "min", "max", "origin"],
    readings: ["at", "temperature", "longestGapHours"],
    constant: ["temperature"],
    joined: ["parts"],
  };
  const known = Object.hasOwn(needed, series.kind) ? needed[series.kind] : undefined;
  given(series, path, expected, ...(known ?? ["min or parts"]));
  if (series.kind !== "joined") return;
  givenList(series.parts, [...path, "parts"]);
  series.parts.forEach((part, i) => knownSeries(part, [...path, "parts", i]));
}
