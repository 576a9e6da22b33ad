import { z } from "zod";
import { LONGEST_GAP_HOURS } from "../temperature/readings.ts";
import { knownZone } from "../time/zone.ts";
import { inShape } from "./shape.ts";

/** The formats of temperature files. */
export const TEMPERATURE_FORMATS = ["daily-csv", "readings-csv", "ghcn-dly", "ghcn-csv", "json"] as const;

/** Id of a format of temperature files. */
export type TemperatureFormat = (typeof TEMPERATURE_FORMATS)[number];

const columnName = z.string().min(1).optional();

const dateOrder = z.enum(["year-first", "month-first", "day-first"]).optional();

const readOptions = z.strictObject({
  /** The format, where it should not be recognised from the text. */
  format: z.enum(TEMPERATURE_FORMATS).optional(),
  /** Unit of the temperatures; taken from the file where the file names it, and then both must agree. */
  unit: z.enum(["C", "F"]).optional(),
  /** IANA time zone of times that are written without an offset. Without it they stay a local clock. */
  zone: z.string().optional(),
  /** Headers of the columns, where their meaning should not be taken from their words. */
  columns: z
    .strictObject({
      date: columnName,
      time: columnName,
      min: columnName,
      max: columnName,
      temperature: columnName,
    })
    .optional(),
  /** Order of month and date in dates that do not begin with the year. */
  dateOrder,
  /** Readings further apart are not joined by a straight line, hours. Default 6. */
  longestGapHours: z.number().gt(0).optional(),
  /** Exchange a minimum that is above its maximum, instead of refusing the row. */
  exchangeSwapped: z.boolean().optional(),
  /** Which place to read from a file that holds several. */
  location: z.string().optional(),
  /** Further numbers that stand for a missing value, as written in the file. */
  sentinels: z.array(z.number()).optional(),
});

/** How to read temperatures. Everything is optional: what a file says of itself is used. */
export type ReadOptions = Readonly<z.input<typeof readOptions>>;

const logOptions = z.strictObject({
  /** Headers of the columns, where their meaning should not be taken from their words. */
  columns: z
    .strictObject({
      stage: columnName,
      on: columnName,
      time: columnName,
      count: columnName,
      cohort: columnName,
      note: columnName,
      fate: columnName,
      notYet: columnName,
      corrects: columnName,
      written: columnName,
    })
    .optional(),
  /** Order of month and date in dates that do not begin with the year. */
  dateOrder,
  /** What hatches: the first instar, or a larva where a species has no instars. Default `instar-1`. */
  firstLarvalStage: z.enum(["instar-1", "larva"]).optional(),
  /** The log as it stood when it ended with this row of the file. */
  throughRow: z.int().min(1).optional(),
  /** The log as it stood at this moment, ISO 8601; a day means its end, and without an offset it is in UTC. */
  asOf: z.string().optional(),
});

/** How to read a log of what was seen. */
export type LogOptions = Readonly<z.input<typeof logOptions>>;

const trialOptions = z.strictObject({
  /** Unit of the temperatures; taken from the file where the file names it, and then both must agree. */
  unit: z.enum(["C", "F"]).optional(),
  /** Headers of the columns, where their meaning should not be taken from their words. */
  columns: z.strictObject({ temperature: columnName, days: columnName, animals: columnName }).optional(),
  /** Which place to read from a file that holds several. */
  location: z.string().optional(),
});

/** How to read rearing trials. */
export type TrialOptions = Readonly<z.input<typeof trialOptions>>;

/** {@link ReadOptions} with the defaults in place. */
export interface CheckedReadOptions extends ReadOptions {
  readonly zone: string | undefined;
  readonly longestGapHours: number;
}

/** @throws {InputError} `invalid-option`, `invalid-zone`. */
export function checkedReadOptions(options: ReadOptions): CheckedReadOptions {
  const checked = inShape(readOptions, options, "invalid-option", "options");
  return {
    ...checked,
    zone: checked.zone === undefined ? undefined : knownZone(checked.zone),
    longestGapHours: checked.longestGapHours ?? LONGEST_GAP_HOURS,
  };
}

/** @throws {InputError} `invalid-option`. */
export function checkedLogOptions(options: LogOptions): LogOptions {
  return inShape(logOptions, options, "invalid-option", "options");
}

/** @throws {InputError} `invalid-option`. */
export function checkedTrialOptions(options: TrialOptions): TrialOptions {
  return inShape(trialOptions, options, "invalid-option", "options");
}
