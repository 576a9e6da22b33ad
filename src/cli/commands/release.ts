import { forecast } from "../../forecast/forecast.ts";
import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { cautionsFor } from "../../rearing/cautions.ts";
import type { Emergences } from "../../rearing/release/emergences.ts";
import { releaseHours, releaseRuledOut } from "../../rearing/release/release-hours.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import { releaseText, ruledOutText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { FORECAST_HELP, FORECAST_OPTIONS, givenInput, givenLifeCycle } from "../options/forecast-options.ts";
import { givenPlace } from "../options/given-place.ts";
import { notesAbout } from "../files/input-file.ts";
import { LEARNED_OPTIONS, givenLearned, learnedHelp } from "../options/learned-options.ts";
import {
  RELEASE_HELP,
  RELEASE_OPTIONS,
  givenCriteria,
  givenEmergences,
  givenHours,
} from "../options/release-options.ts";
import type { Terminal } from "../terminal.ts";

export const releaseCommand: Command = {
  name: "release",
  help: `moltline release: the hours that are fit for releasing adults, best first.

  moltline release --weather-hours week.csv --emerged 2026-07-05T09:30 \\
    --species danaus-plexippus --latitude 41 --longitude -74 \\
    --zone America/New_York

Ask your local authority before you release any animal: nothing that is printed
is a permission. Pests and species not native everywhere get no hours.

${RELEASE_HELP}

Without --emerged the emergences are forecast:

${FORECAST_HELP}

${learnedHelp(`  --cohort NAME         which animals, where the log has several groups`)}

  --json                print the result as JSON`,
  options: { ...FORECAST_OPTIONS, ...LEARNED_OPTIONS, ...RELEASE_OPTIONS, json: "flag" },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  // A species file is read only once, because it may be standard input.
  if (given.text("species") !== undefined && given.text("species-file") === undefined) {
    const lifeCycle = await givenLifeCycle(given, terminal);
    if (toldRuledOut(lifeCycle, given, terminal)) return;
  }
  const seen = givenEmergences(given);
  const place = givenPlace(given);
  if (place === undefined) {
    throw new InputError(
      "place-needed",
      "--latitude and --longitude are missing; daylight depends on the place.",
      { path: ["place"] },
    );
  }
  const zone = given.needed("zone", "the time zone of the place, such as America/New_York");
  const hours = await givenHours(given, terminal);
  const { lifeCycle, emergences, notes } =
    seen === null
      ? await forecastOf(given, terminal)
      : { lifeCycle: await givenLifeCycle(given, terminal), emergences: seen, notes: [] };
  const unfit = given.number("unfit");
  const plan = releaseHours(emergences, hours.weather, {
    lifeCycle,
    place,
    zone,
    criteria: givenCriteria(given, hours.units),
    units: hours.units,
    ...(unfit !== undefined && { unfit }),
  });
  const about = notesAbout(given.text("weather-hours") ?? "-", hours.notes);
  const result = { ...plan, notes: [...about, ...notes, ...plan.notes] };
  if (given.flag("json")) terminal.out(`${JSON.stringify(result, null, 2)}\n`);
  else terminal.out(releaseText(result, { unit: hours.units.temperature, windUnit: hours.units.wind }));
}

async function forecastOf(
  given: Given,
  terminal: Terminal,
): Promise<{ lifeCycle: LifeCycle; emergences: Emergences; notes: readonly Note[] }> {
  const { input, notes } = await givenInput(given, terminal);
  const { learned, notes: logNotes } = await givenLearned(input, given, terminal);
  const emergences = forecast({ ...input, ...(learned !== undefined && { learned }) });
  return { lifeCycle: input.lifeCycle, emergences, notes: [...notes, ...logNotes] };
}

/** Says that a species is not released, before any file is asked for, and whether it is so. */
function toldRuledOut(lifeCycle: LifeCycle, given: Given, terminal: Terminal): boolean {
  const ruledOut = releaseRuledOut(lifeCycle);
  if (ruledOut === null) return false;
  const { species, latinName, commonName } = lifeCycle;
  const result = {
    species,
    latinName,
    commonName,
    ruledOut,
    cautions: cautionsFor(lifeCycle),
    emergences: [],
  };
  if (given.flag("json")) terminal.out(`${JSON.stringify(result, null, 2)}\n`);
  else terminal.out(ruledOutText(result, ruledOut.message));
  return true;
}
