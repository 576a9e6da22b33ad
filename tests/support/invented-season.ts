import { type Forecast, forecast } from "../../src/index.ts";
import type { ForecastInput } from "../../src/forecast/forecast.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import type { DailyTemperatures } from "../../src/temperature/series.ts";
import { addDays } from "../../src/time/civil-day.ts";

/** Invented daily extremes, °C, with a warm July as north of the tropics; no such place exists. */
export function inventedDays(start: string, count: number, coolerBy = 0): DailyTemperatures {
  const mean = (day: string): number => {
    const [month, date] = [Number(day.slice(5, 7)), Number(day.slice(8, 10))];
    return 13 - coolerBy + 11 * Math.cos(((month - 7.5 + date / 31) / 12) * 2 * Math.PI);
  };
  const means = Array.from({ length: count }, (_, i) => mean(addDays(start, i)) + ((i * 7) % 5) - 2);
  return dailyTemperatures(
    start,
    means.map((one) => one - 6),
    means.map((one) => one + 6),
  );
}

/** A forecast of monarch eggs on invented days, with anything changed. */
export function inventedForecast(change: Partial<ForecastInput> = {}): Forecast {
  return forecast({
    lifeCycle: danausPlexippus,
    found: { stage: "egg", on: "2026-06-08", count: 12 },
    temperatures: inventedDays("2026-05-01", 200),
    zone: "America/New_York",
    ...change,
  });
}
