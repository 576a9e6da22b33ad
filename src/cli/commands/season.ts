import { CURVE_METHODS } from "../../diurnal/method.ts";
import { InputError } from "../../errors.ts";
import { cautionsFor } from "../../rearing/cautions.ts";
import { season } from "../../rearing/season/season.ts";
import type { SeasonInput } from "../../rearing/season/season-result.ts";
import { fahrenheitDegreesToCelsius, fahrenheitToCelsius } from "../../units.ts";
import { seasonText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { givenLifeCycle } from "../options/forecast-options.ts";
import { givenPlace } from "../options/given-place.ts";
import { mergedDays } from "../options/merged-days.ts";
import { methodHelp } from "../options/method-help.ts";
import { givenMilestone } from "../options/stage-option.ts";
import { RECORD_HELP, RECORD_OPTIONS } from "../options/reading-options.ts";
import { givenTemperatures } from "../options/temperature-options.ts";
import type { Terminal } from "../terminal.ts";

const HEMISPHERES = ["north", "south"] as const;

export const seasonCommand: Command = {
  name: "season",
  help: `moltline season: how many broods a place has, and until when eggs still make it.

  moltline season --temperatures station.csv --species danaus-plexippus \\
    --first-eggs 05-20 --latitude 40.8 --longitude -74

Give daily temperatures of past years without gaps. Each season is one trial.

  --species NAME        such as danaus-plexippus; "moltline species" lists them
  --species-file FILE   your own species, as JSON
  --first-eggs MM-DD    when you see the first eggs (default: as soon as an egg
                        would develop, whether or not one is there)
  --first-heat DEGREES  or: so many degree-days after midwinter, in the unit of
                        the file or of --unit
  --pre-laying DAYS     from emergence to the first eggs, where it is not known
                        for the species
  --frost DEGREES       a minimum below it after midsummer ends the season, in
                        the unit of the file or of --unit (default 0 °C)
  --no-frost            no frost ends it, only lasting cold
  --milestone STAGE     what the last eggs must reach (default adult), such as
                        pupa where pupae overwinter
  --share SHARE         of how many animals, 0 to 1 (default 0.9)
  --level LEVEL         how sure the intervals are (default 0.95)
  --latitude, --longitude DEGREES
                        where it is: for the day length and the side of the
                        equator
  --hemisphere NAME     north or south, where no place is given
${methodHelp(CURVE_METHODS)}

${RECORD_HELP}

  --json                print the result as JSON`,
  options: {
    ...RECORD_OPTIONS,
    species: "text",
    "species-file": "text",
    "first-eggs": "text",
    "first-heat": "text",
    "pre-laying": "text",
    frost: "text",
    "no-frost": "flag",
    milestone: "text",
    share: "text",
    level: "text",
    latitude: "text",
    longitude: "text",
    hemisphere: "text",
    method: "text",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const lifeCycle = await givenLifeCycle(given, terminal);
  const asked = givenQuestion(given);
  const milestone = givenMilestone(given, lifeCycle);
  const frost = given.number("frost");
  if (frost !== undefined && given.flag("no-frost")) {
    throw new InputError("invalid-option", "--frost and --no-frost were both given; give one of them.", {
      path: ["no-frost"],
    });
  }
  const heat = given.number("first-heat");
  const { series, notes, assumptions, unit } = await givenTemperatures(given, terminal);
  const temperatures = mergedDays(series);
  if (temperatures.kind !== "daily") {
    throw new InputError(
      "unknown-format",
      "a season needs a minimum and a maximum for each day, not readings.",
      { path: ["format"], value: temperatures.kind },
    );
  }
  const frostBelow = frost !== undefined && unit === "F" ? fahrenheitToCelsius(frost) : frost;
  const outlook = season({
    ...asked,
    lifeCycle,
    temperatures,
    ...(milestone !== undefined && { milestone }),
    ...(heat !== undefined && {
      firstEggs: { degreeDays: unit === "F" ? fahrenheitDegreesToCelsius(heat) : heat },
    }),
    ...(given.flag("no-frost") ? { frostBelow: null } : frostBelow !== undefined && { frostBelow }),
  });
  const result = { ...outlook, notes: [...notes, ...assumptions, ...outlook.notes] };
  if (given.flag("json")) terminal.out(`${JSON.stringify(result, null, 2)}\n`);
  else terminal.out(seasonText(result, { cautions: cautionsFor(lifeCycle), unit }));
}

/** What needs neither the species nor the files, so that a slip in it is told before these are read. */
function givenQuestion(given: Given): Partial<SeasonInput> {
  const firstEggs = given.text("first-eggs");
  if (firstEggs !== undefined && given.text("first-heat") !== undefined) {
    throw new InputError(
      "invalid-option",
      "--first-eggs and --first-heat both say when the first eggs are there; give one of them.",
      { path: ["first-heat"], value: given.text("first-heat") },
    );
  }
  const [preLayingDays, share, level] = [
    given.number("pre-laying"),
    given.number("share"),
    given.number("level"),
  ];
  const hemisphere = given.choice("hemisphere", HEMISPHERES);
  const method = given.choice("method", CURVE_METHODS);
  const place = givenPlace(given);
  return {
    zone: given.text("zone") ?? null,
    ...(firstEggs !== undefined && { firstEggs }),
    ...(preLayingDays !== undefined && { preLayingDays }),
    ...(share !== undefined && { share }),
    ...(level !== undefined && { level }),
    ...(hemisphere !== undefined && { hemisphere }),
    ...(method !== undefined && { method }),
    ...(place !== undefined && { place }),
  };
}
