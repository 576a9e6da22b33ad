import { forecast } from "../../forecast/forecast.ts";
import type { Forecast } from "../../forecast/question/result.ts";
import { cautionsFor } from "../../rearing/cautions.ts";
import { calendarText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { FORECAST_HELP, FORECAST_OPTIONS, givenInput } from "../options/forecast-options.ts";
import { LEARNED_OPTIONS, givenLearned, learnedHelp } from "../options/learned-options.ts";
import { FORECAST_FILE_HELP, FORECAST_FILE_OPTIONS, writeForecastFiles } from "../files/table-files.ts";
import type { Terminal } from "../terminal.ts";

export const forecastCommand: Command = {
  name: "forecast",
  help: `moltline forecast: when the animals you found hatch, molt, pupate and emerge.

  moltline forecast --temperatures porch.csv --species danaus-plexippus \\
    --found egg --on 2026-06-08 --zone America/New_York --unit F

${FORECAST_HELP}

${learnedHelp(`  --cohort NAME         which animals, where the log has several groups; it
                        names them in a calendar file too`)}

${FORECAST_FILE_HELP}

  --json                print the result as JSON instead of a calendar`,
  options: {
    ...FORECAST_OPTIONS,
    ...LEARNED_OPTIONS,
    ...FORECAST_FILE_OPTIONS,
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const { input, notes } = await givenInput(given, terminal);
  const { learned, notes: logNotes } = await givenLearned(input, given, terminal);
  const dates = forecast({ ...input, ...(learned !== undefined && { learned }) });
  const result = { ...dates, notes: [...notes, ...logNotes, ...dates.notes] };
  const cautions = cautionsFor(input.lifeCycle);
  const told = await writeForecastFiles(result, cautions, given, terminal);
  if (given.flag("json")) terminal.out(`${JSON.stringify(result, null, 2)}\n`);
  else
    terminal.out(`${calendarText(withRemedy(result, given), { cautions })}${told === "" ? "" : `\n${told}`}`);
}

/** Where the temperatures end too early, the options that go on from there, beside the dates that are missing. */
function withRemedy(result: Forecast, given: Given): Forecast {
  const at = result.notes.findIndex(({ code }) => code === "series-ends-first");
  const wentOn = ["past-years", "normals", "constant"].some((name) => given.text(name) !== undefined);
  const byGap = result.stages.some(({ absence }) => absence?.reason === "gap");
  if (at < 0 || wentOn || byGap) return result;
  const message =
    "To see further, name past years of the same place with --past-years, a weather forecast with --weather, or the temperature of a heated room with --constant.";
  return { ...result, notes: result.notes.toSpliced(at + 1, 0, { code: "series-ends-first", message }) };
}
