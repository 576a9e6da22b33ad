import { knownSeries } from "./known-series.ts";
import { InputError } from "../errors.ts";
import type { JoinedTemperatures, TemperatureSeries } from "./series.ts";

/**
 * Several series as one, such as the logger so far, then a forecast, then the normals of past years. At
 * each moment the first of them that covers it counts, to the minute, not to the day.
 * @param series In order of precedence.
 * @throws {InputError} `no-temperatures` when there is none.
 */
export function joinTemperatures(...series: readonly TemperatureSeries[]): JoinedTemperatures {
  series.forEach((one, i) => {
    knownSeries(one, ["series", i]);
  });
  const parts = series.flatMap((one) => (one.kind === "joined" ? one.parts : [one]));
  if (parts.length === 0) {
    throw new InputError("no-temperatures", "there is no series to join; give at least one.", {
      path: ["series"],
    });
  }
  return { kind: "joined", parts };
}
