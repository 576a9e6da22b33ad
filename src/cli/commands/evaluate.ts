import { METHODS } from "../../diurnal/method.ts";
import { InputError } from "../../errors.ts";
import { type HindcastRun, hindcast } from "../../evaluate/hindsight/hindcast.ts";
import { scoreHindcast } from "../../evaluate/hindsight/hindcast-scores.ts";
import { lastDay } from "../../temperature/daily.ts";
import { hindcastText, notesText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { givenLifeCycle } from "../options/forecast-options.ts";
import { mergedDays } from "../options/merged-days.ts";
import { methodHelp } from "../options/method-help.ts";
import { RECORD_HELP, RECORD_OPTIONS } from "../options/reading-options.ts";
import { givenTemperatures } from "../options/temperature-options.ts";
import type { Terminal } from "../terminal.ts";
import { wholeNumbers } from "../options/whole-numbers.ts";

const LEADS = [0, 3, 7, 14, 21];
const MONTHS = [5, 6, 7, 8];
const EVERY = 7;

export const evaluateCommand: Command = {
  name: "evaluate",
  help: `moltline evaluate: how good forecasts would have been on your own past years.

  moltline evaluate --temperatures station.csv --species danaus-plexippus

Give daily temperatures of four years or more without gaps. Each start in the
record is forecast as if the days after it were not known, with the other years
for what may come, and laid beside what the record then says.

  --species NAME        such as danaus-plexippus; "moltline species" lists them
  --species-file FILE   your own species, as JSON
  --leads DAYS,DAYS     days of temperatures known when the forecast is made
                        (default ${LEADS.join(",")})
  --months M,M          months of the starts, 1 to 12 (default ${MONTHS.join(",")})
  --every N             take every so many-th day as a start (default ${EVERY}, to be
                        quick; 1 takes all days and several times as long)
${methodHelp(METHODS)}

${RECORD_HELP}

  --json                print the result as JSON`,
  options: {
    ...RECORD_OPTIONS,
    species: "text",
    "species-file": "text",
    leads: "text",
    months: "text",
    every: "text",
    method: "text",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const lifeCycle = await givenLifeCycle(given, terminal);
  const leads = wholeNumbers(given, "leads", { from: 0, to: 400 }) ?? LEADS;
  const months = wholeNumbers(given, "months", { from: 1, to: 12 }) ?? MONTHS;
  const [every = EVERY] = wholeNumbers(given, "every", { from: 1, to: 366, most: 1 }) ?? [];
  const method = given.choice("method", METHODS);
  const { series, notes: readingNotes, assumptions } = await givenTemperatures(given, terminal);
  const temperatures = mergedDays(series);
  if (temperatures.kind !== "daily") {
    throw new InputError(
      "unknown-format",
      "the record needs a minimum and a maximum for each day, not readings.",
      { path: ["format"], value: temperatures.kind },
    );
  }
  // Skill over past years alone needs the forecasts at which nothing was known.
  const runs = hindcast({
    lifeCycle,
    temperatures,
    leads: [...new Set([0, ...leads])],
    every,
    ...(method !== undefined && { method }),
  });
  checkStarts(runs, months);
  const scores = scoreHindcast(runs, months).filter(({ lead }) => leads.includes(lead));
  const notes = [...readingNotes, ...assumptions];
  const setting = { from: temperatures.start, to: lastDay(temperatures), every, months };
  if (given.flag("json")) {
    const result = { species: lifeCycle.species, ...setting, leads: scores, notes };
    terminal.out(`${JSON.stringify(result, null, 2)}\n`);
    return;
  }
  const name = lifeCycle.commonName;
  const animal = `${name.slice(0, 1).toUpperCase()}${name.slice(1)}`;
  const text = hindcastText(scores, { ...setting, animal });
  terminal.out(`${[text, notesText(notes)].filter((part) => part !== "").join("\n\n")}\n`);
}

/** Each start is held against starts of the same month in other years, so every month needs two years. */
function checkStarts(runs: readonly HindcastRun[], months: readonly number[]): void {
  const scored = runs.filter(({ lead, truth }) => lead === 0 && truth !== null);
  const yearsOf = (month: number): number =>
    new Set(scored.flatMap(({ start }) => (Number(start.slice(5, 7)) === month ? [start.slice(0, 4)] : [])))
      .size;
  if (months.every((month) => yearsOf(month) === 0)) {
    throw new InputError(
      "invalid-option",
      `no animal that starts in the months ${months.join(", ")} becomes adult within the record; take other --months.`,
      { path: ["months"], value: months },
    );
  }
  const single = months.find((month) => yearsOf(month) === 1);
  if (single === undefined) return;
  throw new InputError(
    "invalid-option",
    `only one year has a start in month ${single} that becomes adult within the record, and two are needed; leave the month out of --months, or take a smaller --every.`,
    { path: ["months"], value: single },
  );
}
