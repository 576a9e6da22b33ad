import { InputError } from "../../errors.ts";
import { type ForecastInput, forecast } from "../../forecast/forecast.ts";
import { learn } from "../../forecast/learn.ts";
import type { Learned } from "../../forecast/learned.ts";
import type { Forecast } from "../../forecast/result.ts";
import type { Note } from "../../notes.ts";
import { cautionsFor } from "../../rearing/cautions.ts";
import { calendarText } from "../../write/index.ts";
import type { Given } from "../arguments.ts";
import type { Command } from "../command.ts";
import { FORECAST_HELP, FORECAST_OPTIONS, givenInput } from "../forecast-options.ts";
import { LOG_OPTIONS, givenLog } from "../log-options.ts";
import { FORECAST_FILE_HELP, FORECAST_FILE_OPTIONS, writeForecastFiles } from "../table-files.ts";
import type { Terminal } from "../terminal.ts";

export const forecastCommand: Command = {
  name: "forecast",
  help: `moltline forecast: when the animals you found hatch, molt, pupate and emerge.

  moltline forecast --temperatures porch.csv --species danaus-plexippus \\
    --found egg --on 2026-06-08 --zone America/New_York --unit F

${FORECAST_HELP}

What you have seen so far
  --log FILE            your log: the forecast learns from it and goes on from
                        the last stage seen; moltline log keeps one
  --cohort NAME         which animals, where the log has several groups; it
                        names them in a calendar file too
  --pace-variation X    how much groups of animals differ (default 0.1)
  --offset-deviation X  how far the thermometer may be off, °C (default 0)

${FORECAST_FILE_HELP}

  --json                print the result as JSON instead of a calendar`,
  options: {
    ...FORECAST_OPTIONS,
    ...LOG_OPTIONS,
    ...FORECAST_FILE_OPTIONS,
    "pace-variation": "text",
    "offset-deviation": "text",
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

/** What the log teaches, where one is named. */
async function givenLearned(
  input: ForecastInput,
  given: Given,
  terminal: Terminal,
): Promise<{ learned: Learned | undefined; notes: readonly Note[] }> {
  const path = given.text("log");
  if (path === undefined) {
    // An option that does nothing looks like one that did.
    const about = ["cohort", "pace-variation", "offset-deviation"].find(
      (name) => given.text(name) !== undefined && !(name === "cohort" && given.text("ics") !== undefined),
    );
    if (about === undefined) return { learned: undefined, notes: [] };
    throw new InputError("invalid-option", `--${about} is about what a log teaches; name one with --log.`, {
      path: [about],
    });
  }
  const log = await givenLog(path, input.lifeCycle, given, terminal);
  const paceVariation = given.number("pace-variation");
  const offsetDeviation = given.number("offset-deviation");
  const learned = learn(input, log.entries, {
    ...(paceVariation !== undefined && { paceVariation }),
    ...(offsetDeviation !== undefined && { offsetDeviation }),
  });
  return { learned, notes: log.notes };
}
