import { InputError } from "../../errors.ts";
import type { Comparison } from "../../evaluate/hindsight/compare.ts";
import type { Forecast } from "../../forecast/question/result.ts";
import type { Caution } from "../../rearing/cautions.ts";
import { calendarIcs, comparisonCsv, forecastCsv } from "../../write/index.ts";
import type { Given, OptionTable } from "../options/arguments.ts";
import { givenTargets } from "./target-files.ts";
import type { Terminal } from "../terminal.ts";

/** Options of files that a forecast is written to as well. */
export const FORECAST_FILE_OPTIONS: OptionTable = {
  ics: "text",
  "ics-days": "text",
  csv: "text",
  force: "flag",
};

/** Their part of the help text. */
export const FORECAST_FILE_HELP = `Files to write as well
  --ics FILE            a calendar file (iCalendar) for a phone or a computer; a
                        later one of the same find updates it
  --ics-days WHICH      windows (default): from early to late; or expected
  --csv FILE            the dates as a table
  --force               replace a file that is there`;

/** Options of a file that a comparison is written to as well. */
export const COMPARISON_FILE_OPTIONS: OptionTable = { csv: "text", force: "flag" };

/** Their part of the help text. */
export const COMPARISON_FILE_HELP = `  --csv FILE            write the rows to a table as well; --force replaces one
                        that is there`;

const MINUTE_MS = 60_000;

/**
 * Writes a forecast to the files that the options name.
 * @returns A line for each, to be told after the result.
 */
export async function writeForecastFiles(
  forecast: Forecast,
  cautions: readonly Caution[],
  given: Given,
  terminal: Terminal,
): Promise<string> {
  const { ics, csv } = await givenTargets(given, { ics: "dates.ics", csv: "dates.csv" }, terminal);
  const days = given.choice("ics-days", ["windows", "expected"]);
  if (days !== undefined && ics === undefined) {
    throw new InputError("invalid-option", "--ics-days is about a calendar file; name one with --ics.", {
      path: ["ics-days"],
    });
  }
  let told = "";
  if (ics !== undefined) {
    const now = terminal.now();
    const text = calendarIcs(forecast, {
      madeAt: new Date(now).toISOString(),
      // Minutes since 1970: a later file has a higher number, and the count fits until the year 6053.
      sequence: Math.floor(now / MINUTE_MS),
      cohort: given.text("cohort") ?? null,
      cautions,
      ...(days !== undefined && { days }),
    });
    await terminal.write(ics, text, given.flag("force"));
    told += `Wrote ${ics}.\n`;
  }
  if (csv !== undefined) {
    await terminal.write(csv, forecastCsv(forecast), given.flag("force"));
    told += `Wrote ${csv}.\n`;
  }
  return told;
}

/** Writes a comparison to the file that the options name. */
export async function writeComparisonFile(
  comparison: Comparison,
  given: Given,
  terminal: Terminal,
): Promise<string> {
  const { csv } = await givenTargets(given, { csv: "rows.csv" }, terminal);
  if (csv === undefined) return "";
  await terminal.write(csv, comparisonCsv(comparison), given.flag("force"));
  return `Wrote ${csv}.\n`;
}
