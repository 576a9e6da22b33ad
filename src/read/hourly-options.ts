import { z } from "zod";
import { WIND_UNITS } from "../rearing/wind-unit.ts";
import { knownZone } from "../time/zone.ts";
import { inShape } from "./shape.ts";

const columnName = z.string().min(1).optional();

const hourlyOptions = z.strictObject({
  /** Unit of the temperatures; taken from the file where the file names it, and then both must agree. */
  unit: z.enum(["C", "F"]).optional(),
  /** Unit of the wind; likewise. */
  windUnit: z.enum(WIND_UNITS).optional(),
  /** IANA time zone of times that are written without an offset. */
  zone: z.string().optional(),
  /** Headers of the columns, where their meaning should not be taken from their words. */
  columns: z
    .strictObject({
      date: columnName,
      time: columnName,
      temperature: columnName,
      wind: columnName,
      rain: columnName,
      chance: columnName,
      cloud: columnName,
    })
    .optional(),
  /** Order of month and date in dates that do not begin with the year. */
  dateOrder: z.enum(["year-first", "month-first", "day-first"]).optional(),
  /** Which place to read from a file that holds several. */
  location: z.string().optional(),
  /** Further numbers that stand for a missing value, as written in the file. */
  sentinels: z.array(z.number()).optional(),
});

/** How to read hourly weather. Everything is optional: what a file says of itself is used. */
export type HourlyOptions = Readonly<z.input<typeof hourlyOptions>>;

/** @throws {InputError} `invalid-option`, `invalid-zone`. */
export function checkedHourlyOptions(options: HourlyOptions): HourlyOptions {
  const checked = inShape(hourlyOptions, options, "invalid-option", "options");
  if (checked.zone !== undefined) knownZone(checked.zone);
  return checked;
}
