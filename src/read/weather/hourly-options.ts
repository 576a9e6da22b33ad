import * as z from "zod/mini";
import { WIND_UNITS } from "../../rearing/release/wind-unit.ts";
import { knownZone } from "../../time/zone.ts";
import { inShape } from "../json/shape.ts";

const columnName = z.optional(z.string().check(z.regex(/\S/, "it must be the header of a column")));

const hourlyOptions = z.strictObject({
  /** Unit of the temperatures; taken from the file where the file names it, and then both must agree. */
  unit: z.optional(z.enum(["C", "F"])),
  /** Unit of the wind; likewise. */
  windUnit: z.optional(z.enum(WIND_UNITS)),
  /** IANA time zone of times that are written without an offset. */
  zone: z.optional(z.string()),
  /** Headers of the columns, where their meaning should not be taken from their words. */
  columns: z.optional(
    z.strictObject({
      date: columnName,
      time: columnName,
      temperature: columnName,
      wind: columnName,
      rain: columnName,
      chance: columnName,
      cloud: columnName,
    }),
  ),
  /** Order of month and date in dates that do not begin with the year. */
  dateOrder: z.optional(z.enum(["year-first", "month-first", "day-first"])),
  /** Which place to read from a file that holds several. */
  location: z.optional(z.string()),
  /** Further numbers that stand for a missing value, as written in the file. */
  sentinels: z.optional(z.array(z.number())),
});

/** How to read hourly weather. Everything is optional: what a file says of itself is used. */
export type HourlyOptions = Readonly<z.input<typeof hourlyOptions>>;

/** @throws {InputError} `invalid-option`, `invalid-zone`. */
export function checkedHourlyOptions(options: HourlyOptions): HourlyOptions {
  const checked = inShape(hourlyOptions, options, "invalid-option", "options");
  if (checked.zone !== undefined) knownZone(checked.zone);
  return checked;
}
