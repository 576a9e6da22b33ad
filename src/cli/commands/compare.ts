import { forecast } from "../../forecast/forecast.ts";
import { compare } from "../../evaluate/compare.ts";
import type { Note } from "../../notes.ts";
import { comparisonText, notesText } from "../../write/index.ts";
import type { Given } from "../arguments.ts";
import type { Command } from "../command.ts";
import { FORECAST_HELP, FORECAST_OPTIONS, givenInput } from "../forecast-options.ts";
import { LOG_HELP, LOG_OPTIONS, givenLog } from "../log-options.ts";
import { TEMPERATURE_HELP } from "../temperature-options.ts";
import type { Terminal } from "../terminal.ts";

export const compareCommand: Command = {
  name: "compare",
  summary: "what was expected beside what you saw",
  help: `moltline compare: what was expected beside what you saw.

  moltline compare --log log.csv --temperatures porch.csv \\
    --species danaus-plexippus --found egg --on 2026-06-08

${LOG_HELP}

${FORECAST_HELP}

${TEMPERATURE_HELP}

  --json                print the result as JSON`,
  options: { ...FORECAST_OPTIONS, ...LOG_OPTIONS, json: "flag" },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const path = given.needed("log", "the file of what you saw");
  const { input, notes: readingNotes } = await givenInput(given, terminal);
  const log = await givenLog(path, input.lifeCycle, given, terminal);
  const result = forecast(input);
  const comparison = compare(result, log.entries);
  const notes: Note[] = [...log.notes, ...readingNotes, ...result.notes];
  if (given.flag("json")) terminal.out(`${JSON.stringify({ ...comparison, notes }, null, 2)}\n`);
  else terminal.out(`${comparisonText(comparison)}\n${notesText(notes)}\n`);
}
