import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { SeasonOfPlace } from "../../src/plot/index.ts";
import { readTemperatures } from "../../src/read/index.ts";
import { season } from "../../src/rearing/season/season.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { shiftedDaily } from "../../src/temperature/shift.ts";
import type { DailyTemperatures } from "../../src/temperature/series.ts";

const PLACES = {
  "New York": { file: "new-york", zone: "America/New_York", place: { latitude: 40.7, longitude: -74 } },
  Seattle: { file: "seattle", zone: "America/Los_Angeles", place: { latitude: 47.6, longitude: -122.3 } },
} as const;

/** The monarch's season of a place of the brood notebook, as the notebook begins. @param change What is done to the record. */
export function seasonAt(
  name: keyof typeof PLACES,
  change: (record: DailyTemperatures) => DailyTemperatures = (record) => record,
): SeasonOfPlace {
  const { file, zone, place } = PLACES[name];
  const path = join(import.meta.dirname, `../../fixtures/temperatures/${file}-2012-2015.csv`);
  const { series } = readTemperatures(readFileSync(path, "utf8"), { zone, unit: "C" });
  if (series.kind !== "daily") throw new Error("the record is one of days");
  const temperatures = change(series);
  const moved = temperatures.start !== series.start;
  const outlook = season({
    lifeCycle: danausPlexippus,
    temperatures,
    place: moved ? null : place,
    firstEggs: moved ? "11-18" : "05-20",
    share: 0.9,
  });
  return { name, place: moved ? null : place, outlook };
}

/** A record that is warmer by the same on each day. */
export function warmer(by: number): (record: DailyTemperatures) => DailyTemperatures {
  return (record) => shiftedDaily(record, () => by);
}
