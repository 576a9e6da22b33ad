import * as z from "zod/mini";
import { given } from "../given.ts";
import type { LifeCycle } from "../species/life-cycle.ts";
import { LONGEST_GAP_HOURS } from "../temperature/readings.ts";
import { knownZone } from "../time/zone.ts";
import type { DateOrder } from "./table/day-column.ts";
import { inShape } from "./json/shape.ts";

/** The formats of temperature files. */
export const TEMPERATURE_FORMATS = ["daily-csv", "readings-csv", "ghcn-dly", "ghcn-csv", "json"] as const;

/** Id of a format of temperature files. */
export type TemperatureFormat = (typeof TEMPERATURE_FORMATS)[number];

const columnName = z.optional(z.string().check(z.regex(/\S/, "it must be the header of a column")));

const dateOrder = z.optional(z.enum(["year-first", "month-first", "day-first"]));

const readOptions = z.strictObject({
  /** The format, where it should not be recognised from the text. */
  format: z.optional(z.enum(TEMPERATURE_FORMATS)),
  /** Unit of the temperatures; taken from the file where the file names it, and then both must agree. */
  unit: z.optional(z.enum(["C", "F"])),
  /** IANA time zone of times that are written without an offset. Without it they stay a local clock. */
  zone: z.optional(z.string()),
  /** Headers of the columns, where their meaning should not be taken from their words. */
  columns: z.optional(
    z.strictObject({
      date: columnName,
      time: columnName,
      min: columnName,
      max: columnName,
      temperature: columnName,
    }),
  ),
  /** Order of month and date in dates that do not begin with the year. */
  dateOrder,
  /** Readings further apart are not joined by a straight line, hours. Default 6. */
  longestGapHours: z.optional(z.number().check(z.gt(0))),
  /** Exchange a minimum that is above its maximum, instead of refusing the row. */
  exchangeSwapped: z.optional(z.boolean()),
  /** Which place to read from a file that holds several. */
  location: z.optional(z.string()),
  /** Further numbers that stand for a missing value, as written in the file. */
  sentinels: z.optional(z.array(z.number())),
});

/** How to read temperatures. Everything is optional: what a file says of itself is used. */
export type ReadOptions = Readonly<z.input<typeof readOptions>>;

const logOptions = z.strictObject({
  /** Headers of the columns, where their meaning should not be taken from their words. */
  columns: z.optional(
    z.strictObject({
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
    }),
  ),
  /** Order of month and date in dates that do not begin with the year. */
  dateOrder,
  /** What hatches: the first instar, or a larva where a species has no instars. Default `instar-1`. */
  firstLarvalStage: z.optional(z.enum(["instar-1", "larva"])),
  /** The log as it stood when it ended with this row of the file. */
  throughRow: z.optional(z.int().check(z.minimum(1))),
  /** The log as it stood at this moment, ISO 8601; a day means its end, and without an offset it is in UTC. */
  asOf: z.optional(z.string()),
});

/** How to read a log of what was seen. */
export type LogOptions = Readonly<z.input<typeof logOptions>>;

const cohortOptions = z.strictObject({ dateOrder, own: z.optional(z.array(z.unknown())) });

/** How to read cohorts. */
export interface CohortOptions {
  /** Order of month and date in dates that do not begin with the year. */
  readonly dateOrder?: DateOrder | undefined;
  /** Life cycles of one's own that a cohort may name. */
  readonly own?: readonly LifeCycle[] | undefined;
}

const trialOptions = z.strictObject({
  /** Unit of the temperatures; taken from the file where the file names it, and then both must agree. */
  unit: z.optional(z.enum(["C", "F"])),
  /** Headers of the columns, where their meaning should not be taken from their words. */
  columns: z.optional(z.strictObject({ temperature: columnName, days: columnName, animals: columnName })),
  /** Which place to read from a file that holds several. */
  location: z.optional(z.string()),
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
export function checkedCohortOptions(options: CohortOptions): CohortOptions {
  inShape(cohortOptions, options, "invalid-option", "options");
  options.own?.forEach((one, i) =>
    given(one, ["own", i], "a life cycle", "species", "latinName", "commonName", "stages"),
  );
  return options;
}

/** @throws {InputError} `invalid-option`. */
export function checkedTrialOptions(options: TrialOptions): TrialOptions {
  return inShape(trialOptions, options, "invalid-option", "options");
}
