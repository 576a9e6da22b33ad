import { TEMPERATURE_FORMATS } from "../../read/index.ts";
import type { Given, OptionTable } from "./arguments.ts";

/** Options that say how files of temperatures are to be read. */
export const READING_OPTIONS: OptionTable = {
  unit: "text",
  zone: "text",
  place: "text",
  "date-order": "text",
  "date-column": "text",
  "time-column": "text",
  "min-column": "text",
  "max-column": "text",
  "temperature-column": "text",
  "longest-gap": "text",
  "exchange-swapped": "flag",
  missing: "list",
  "fill-gaps": "text",
};

/** Their part of the help text, in two halves, because the option for normals stands between them. */
export const UNIT_AND_PLACE_HELP = `  --zone NAME           time zone of the place, such as America/New_York
  --place NAME          which place, where a file holds several
  --fill-gaps DAYS      fill gaps of up to so many days by straight lines`;

export const COLUMN_HELP = `  --date-order ORDER    year-first, month-first or day-first
  --date-column NAME    likewise --time-column, --min-column, --max-column and
                        --temperature-column: the header, where it is not plain
  --longest-gap HOURS   join readings up to so far apart (default 6)
  --exchange-swapped    exchange a minimum that is above its maximum
  --missing NUMBER      a number that stands for no reading, such as -99; again
                        for more`;

export const FORMAT_HELP = `  --format NAME         ${TEMPERATURE_FORMATS.join(", ")}`;

/** Options of a command that looks back on temperatures that were measured, and assumes none. */
export const RECORD_OPTIONS: OptionTable = { ...READING_OPTIONS, temperatures: "list", format: "text" };

/** Their part of the help text. */
export const RECORD_HELP = `Temperatures
  --temperatures FILE   daily minimum and maximum: CSV, JSON or GHCN-Daily; -
                        for standard input, which is also read when nothing is
                        named. Give it again for more files, such as one a year.
  --unit C|F            unit of files that do not say it; those that say another
                        are refused
${UNIT_AND_PLACE_HELP}
${COLUMN_HELP}
${FORMAT_HELP}`;

/** Options without some of them, for a file that they are not about. */
export function withoutOptions(given: Given, names: readonly string[]): Given {
  return { ...given, text: (name) => (names.includes(name) ? undefined : given.text(name)) };
}
