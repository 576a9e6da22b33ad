import type { forecast } from "../../../src/index.ts";
import type { readTemperatures } from "../../../src/read/index.ts";
import type { danausPlexippus } from "../../../src/species/danaus-plexippus.ts";
import type { calendarText, forecastCsv } from "../../../src/write/index.ts";

/** What a consumer imports: something of each entry. */
export interface Library {
  readonly forecast: typeof forecast;
  readonly readTemperatures: typeof readTemperatures;
  readonly danausPlexippus: typeof danausPlexippus;
  readonly calendarText: typeof calendarText;
  readonly forecastCsv: typeof forecastCsv;
}

/** One forecast as JSON, as a table and as a calendar. Wherever it is made, it must be the same to the byte. */
export function answer(library: Library, csv: string): string {
  const { series } = library.readTemperatures(csv, { unit: "C" });
  const result = library.forecast({
    lifeCycle: library.danausPlexippus,
    found: { stage: "egg", on: "2015-06-08", count: 12 },
    temperatures: series,
    zone: "America/New_York",
  });
  return [JSON.stringify(result), library.forecastCsv(result), library.calendarText(result)].join("\n");
}
