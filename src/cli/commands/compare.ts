import { otherYear } from "../../cohort/other-year.ts";
import { InputError } from "../../errors.ts";
import { compare } from "../../evaluate/hindsight/compare.ts";
import { forecast } from "../../forecast/forecast.ts";
import type { Forecast } from "../../forecast/question/result.ts";
import type { Note } from "../../notes.ts";
import { decodeText, readForecast } from "../../read/index.ts";
import { jsonValue } from "../../read/json/json-text.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { comparisonText, notesText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { FORECAST_HELP, FORECAST_OPTIONS, givenInput } from "../options/forecast-options.ts";
import { inFile } from "../files/input-file.ts";
import { LOG_HELP, LOG_OPTIONS, givenLog } from "../options/log-options.ts";
import { COMPARISON_FILE_HELP, COMPARISON_FILE_OPTIONS, writeComparisonFile } from "../files/table-files.ts";
import type { Terminal } from "../terminal.ts";

export const compareCommand: Command = {
  name: "compare",
  help: `moltline compare: what was expected beside what you saw.

  moltline compare --log log.csv --temperatures porch.csv \\
    --species danaus-plexippus --found egg --on 2026-06-08

${LOG_HELP}
  --forecast FILE       an earlier forecast, as forecast --json printed it, in
                        place of the animals and the temperatures

${FORECAST_HELP}

${COMPARISON_FILE_HELP}
  --json                print the result as JSON`,
  options: {
    ...FORECAST_OPTIONS,
    ...LOG_OPTIONS,
    ...COMPARISON_FILE_OPTIONS,
    forecast: "text",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const path = given.needed("log", "the file of what you saw");
  const { result, stages, notes: readingNotes } = await givenForecast(given, terminal);
  const log = await givenLog(path, { stages }, given, terminal);
  const comparison = compare(result, log.entries);
  const notes: Note[] = [
    ...otherYear(log.entries, result.found.on),
    ...log.notes,
    ...readingNotes,
    ...result.notes,
  ];
  const told = await writeComparisonFile(comparison, given, terminal);
  if (given.flag("json")) terminal.out(`${JSON.stringify({ ...comparison, notes }, null, 2)}\n`);
  else terminal.out(`${comparisonText(comparison)}\n${notesText(notes)}\n${told === "" ? "" : `\n${told}`}`);
}

/** The forecast of a file, or one made from the animals and temperatures that the options name. */
async function givenForecast(
  given: Given,
  terminal: Terminal,
): Promise<{
  result: Forecast;
  stages: readonly { readonly stage: StageId }[];
  notes: readonly Note[];
}> {
  const path = given.text("forecast");
  if (path === undefined) {
    const { input, notes } = await givenInput(given, terminal);
    return { result: forecast(input), stages: input.lifeCycle.stages, notes };
  }
  // The order of dates is that of the log too.
  const other = Object.keys(FORECAST_OPTIONS).find(
    (name) => name !== "date-order" && (given.flag(name) || given.list(name).length > 0),
  );
  if (other !== undefined) {
    throw new InputError("invalid-option", `--forecast has it all; leave out --${other}.`, { path: [other] });
  }
  const result = await inFile(path, async () =>
    readForecast(jsonValue(decodeText(await terminal.read(path)))),
  );
  return { result, stages: [result.found, ...result.stages], notes: [] };
}
