import { InputError } from "../../errors.ts";
import type { ForecastInput } from "../../forecast/forecast.ts";
import type { Note } from "../../notes.ts";
import { cautionsFor } from "../../rearing/cautions.ts";
import { startFor } from "../../rearing/start/start-for.ts";
import type { DatePlan, RoomPlan } from "../../rearing/start/start-plan.ts";
import type { TemperatureUnit } from "../../units.ts";
import { startForText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { FORECAST_HELP, FORECAST_OPTIONS, givenInput } from "../options/forecast-options.ts";
import { UNITS } from "../files/input-file.ts";
import { mergedDays } from "../options/merged-days.ts";
import { fromPast, givenRoom, heldAt, refuse, targetOf, withOn } from "../options/start-for-options.ts";
import type { Terminal } from "../terminal.ts";

export const startForCommand: Command = {
  name: "start-for",
  help: `moltline start-for: which start puts the emergence on a wanted day, and how
surely.

  moltline start-for --day 2027-06-11 --species danaus-plexippus --found egg \\
    --count 12 --age new --past-years station.csv --zone America/New_York
  moltline start-for --day 2027-06-11 --species danaus-plexippus --found egg \\
    --count 12 --on 2027-05-15 --room 20,28

Without --room: on which day to start. With past years alone nothing is known of
the weather to come; with --temperatures too, they go on where these end.
With --room: at which temperature to keep them from --on on. Temperatures that
are known to harm are refused.
A log teaches nothing here: it tells of its own animals, and the next may be
slower or faster. Once they are started, moltline forecast --log learns.

What is wanted
  --day DAY             the day on which it is to happen
  --milestone STAGE     what is to happen: adult (default), hatch, darkening, or
                        a stage such as pupa, prepupa (hanging) or instar-3
  --hours FROM,TO       between which times of that day, such as 09:00,15:00
  --aim WHAT            what to make likely: one (default: at least one of
                        them), half (at least half) or each (any given one)
  --first DAY, --last DAY
                        days to start on (default: all that can make sense)
  --room LOW,HIGH       temperatures that the room can be kept at, in °C or the
                        unit of --unit
  --hottest DEGREES     do not go above it, where less than the usual limit is
                        wanted; likewise

${FORECAST_HELP}

  --json                print the result as JSON`,
  options: {
    ...FORECAST_OPTIONS,
    day: "text",
    milestone: "text",
    hours: "text",
    aim: "text",
    first: "text",
    last: "text",
    room: "text",
    hottest: "text",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const day = given.needed("day", "the day on which it is to happen, such as 2027-06-11");
  const unit = given.choice("unit", UNITS) ?? "C";
  const { input, plan, notes } =
    given.text("room") === undefined
      ? await dayPlan(day, unit, given, terminal)
      : await roomPlan(day, unit, given, terminal);
  const result = { ...plan, notes: [...notes, ...plan.notes] };
  if (given.flag("json")) terminal.out(`${JSON.stringify(result, null, 2)}\n`);
  else terminal.out(startForText(result, { cautions: cautionsFor(input.lifeCycle), unit }));
}

interface Planned {
  readonly input: ForecastInput;
  readonly plan: DatePlan | RoomPlan;
  readonly notes: readonly Note[];
}

async function dayPlan(
  day: string,
  unit: TemperatureUnit,
  given: Given,
  terminal: Terminal,
): Promise<Planned> {
  refuse(given, ["on"], "--on is for --room; days to start on are limited with --first and --last.");
  const past = given.text("past-years");
  const alone =
    past !== undefined && given.list("temperatures").length === 0 && given.text("constant") === undefined;
  if (alone) {
    refuse(
      given,
      ["normals", "weather", "until"],
      "with --past-years alone nothing is known of the weather to come; give --temperatures too, or leave out",
    );
  }
  // The file of past years is then read as the only temperatures there are.
  const { input, notes } = await givenInput(
    alone ? fromPast(past, withOn(day, given)) : withOn(day, given),
    terminal,
  );
  const [first, last] = [given.text("first"), given.text("last")];
  const target = {
    ...targetOf(day, unit, input, given),
    dates: { ...(first !== undefined && { from: first }), ...(last !== undefined && { to: last }) },
  };
  if (!alone) return { input, notes, plan: startFor({ ...target, temperatures: input.temperatures }) };
  const record = input.temperatures.kind === "ensemble" ? input.temperatures : mergedDays(input.temperatures);
  if (record.kind !== "daily") {
    throw new InputError(
      "unknown-format",
      "--past-years needs a minimum and a maximum for each day, not readings.",
      {
        path: ["past-years"],
        value: past,
      },
    );
  }
  return { input, notes, plan: startFor({ ...target, pastYears: record }) };
}

async function roomPlan(
  day: string,
  unit: TemperatureUnit,
  given: Given,
  terminal: Terminal,
): Promise<Planned> {
  refuse(
    given,
    ["temperatures", "constant", "normals", "past-years", "weather", "until", "first", "last"],
    "--room asks at which temperature to keep them and takes no other temperatures and no days to start on; leave out",
  );
  const on = given.needed("on", "the day from which they are kept there, such as 2027-05-15");
  const constant = givenRoom(given, unit);
  const { input, notes } = await givenInput(heldAt(constant.from, given), terminal);
  return { input, notes, plan: startFor({ ...targetOf(day, unit, input, given), on, constant }) };
}
