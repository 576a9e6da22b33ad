import { HOUR_MS, type Instant } from "../../time/zone.ts";
import { type HourlyWeather } from "./hourly-weather.ts";
import type { WeatherOfHour } from "./release-hour.ts";

/** An hour of the weather, or of a gap in it. */
export interface WeatherSlot {
  readonly from: Instant;
  readonly to: Instant;
  /** `null` for an hour of a gap. */
  readonly weather: WeatherOfHour | null;
}

/** From the begin of the first hour to the end of the last. */
export function spanOf({ at }: HourlyWeather): { readonly from: Instant; readonly to: Instant } {
  return { from: at[0] ?? 0, to: (at.at(-1) ?? 0) + HOUR_MS };
}

/**
 * The hours of the weather that begin from one instant on and before another, without holes: what lies between
 * two entries too far apart is hours of a gap. Before the first hour and after the last there are none.
 */
export function slotsBetween(weather: HourlyWeather, from: Instant, before: Instant): WeatherSlot[] {
  const slots: WeatherSlot[] = [];
  weather.at.forEach((begin, i) => {
    const end = begin + HOUR_MS;
    const next = weather.at[i + 1] ?? end;
    if (next <= from || begin >= before) return;
    if (begin >= from) slots.push({ from: begin, to: end, weather: weatherAt(weather, i) });
    // A gap may be years long: it is entered where it is first needed.
    const skipped = Math.max(0, Math.ceil((from - end) / HOUR_MS));
    for (let hour = end + skipped * HOUR_MS; hour < Math.min(next, before); hour += HOUR_MS)
      slots.push({ from: hour, to: Math.min(next, hour + HOUR_MS), weather: null });
  });
  return slots;
}

function weatherAt({ temperature, wind, rain, rainChance, cloud }: HourlyWeather, i: number): WeatherOfHour {
  return {
    temperature: temperature[i] ?? null,
    wind: wind[i] ?? null,
    rain: rain?.[i] ?? null,
    rainChance: rainChance?.[i] ?? null,
    cloud: cloud?.[i] ?? null,
  };
}
