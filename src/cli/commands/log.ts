import { InputError, nearestNames, shown } from "../../errors.ts";
import type { Given, OptionTable } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { addRow, correctRow, retractRow } from "../log/log-change.ts";
import { exportLog } from "../log/log-export.ts";
import { showLog } from "../log/log-show.ts";
import { writeTemplate } from "../log/log-template.ts";
import type { Terminal } from "../terminal.ts";

/** One thing to do with a log: the options it takes, and what it does. */
interface Action {
  readonly takes: readonly string[];
  readonly run: (given: Given, terminal: Terminal) => Promise<void>;
}

const SAID = ["stage", "on", "time", "count", "cohort", "fate", "not-yet", "note"];
const PLACE = ["latitude", "longitude", "uncertainty", "country", "country-code", "state", "locality"];

const ACTIONS: Readonly<Record<string, Action>> = {
  template: { takes: ["species", "species-file", "out", "force"], run: writeTemplate },
  add: { takes: ["log", "date-order", ...SAID], run: addRow },
  correct: { takes: ["log", "date-order", "row", ...SAID], run: correctRow },
  retract: { takes: ["log", "date-order", "row", "note"], run: retractRow },
  show: { takes: ["log", "date-order", "rows", "as-of", "zone", "json"], run: showLog },
  export: {
    takes: [
      ...["log", "date-order", "darwin-core", "species", "species-file", "cohort", "out", "force"],
      ...["decimals", "recorded-by", "id-prefix", "wild", ...PLACE],
    ],
    run: exportLog,
  },
};

const FLAGS = ["force", "json", "darwin-core", "wild"];

const OPTIONS: OptionTable = Object.fromEntries(
  Object.values(ACTIONS)
    .flatMap(({ takes }) => takes)
    .map((name) => [name, FLAGS.includes(name) ? "flag" : "text"]),
);

export const logCommand: Command = {
  name: "log",
  help: `moltline log: keeps the log of what you saw. Rows are only ever added: a
correction is a row of its own, and every earlier state can be read back.

  moltline log template --species danaus-plexippus --out log.csv
  moltline log add --log log.csv --stage pupated --on 2026-06-25 --count 3
  moltline log correct --log log.csv --row 4 --count 2
  moltline log retract --log log.csv --row 5
  moltline log show --log log.csv --as-of 2026-06-20
  moltline log export --log log.csv --out clean.csv

  --log FILE            the log: CSV, kept in the form it has

What was seen (add; correct: only what changes, empty to remove it)
  --stage STAGE         a stage or what happened: hatched, instar-2, hanging,
                        pupated, emerged, "died as pupa"
  --on DAY              2026-06-25, or with a time, 2026-06-25T18:30
  --time TIME           18:30
  --count NUMBER        how many animals (default 1)
  --cohort NAME         which animals, where you keep several groups
  --fate WORD           seen (default), died, lost
  --not-yet DAY         the last look at which the stage had not begun
  --note TEXT
  --row NUMBER          the row to correct or retract

show
  --rows NUMBER         the log when it ended with this row
  --as-of DAY           the log at the end of this day, or at a time; in UTC, or
                        by the clocks of --zone
  --json                print it as JSON

export, and template
  --species NAME        the species (--species-file FILE: your own); export needs
                        it where the log says hatched
  --out FILE            write to a file; --force replaces one that is there
  --darwin-core         in the terms of Darwin Core, to share observations, with
    --recorded-by NAME, --id-prefix TEXT, --wild (not under care),
    --latitude, --longitude DEGREES, --uncertainty METRES, --decimals NUMBER
                        rounds coordinates (default 2, about 1 km),
    --country NAME, --country-code XX, --state NAME, --locality NAME

  --date-order ORDER    year-first, month-first or day-first, where the dates in
                        the file leave it open`,
  options: OPTIONS,
  takesWords: true,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const [name = "", extra] = given.words;
  const names = Object.keys(ACTIONS);
  const action = Object.hasOwn(ACTIONS, name) ? ACTIONS[name] : undefined;
  if (action === undefined) {
    const near = name === "" ? [] : nearestNames(name, names);
    const what = name === "" ? "log needs a word after it" : `moltline log cannot ${shown(name)}`;
    const remedy = near.length > 0 ? `did you mean ${near.join(" or ")}?` : `use one of ${names.join(", ")}.`;
    throw new InputError("invalid-option", `${what}; ${remedy}`, { path: ["words"], value: name });
  }
  if (extra !== undefined) {
    const remedy =
      given.list("log").length === 0
        ? "the log is given as --log FILE."
        : 'a text of several words stands in quotation marks, such as --note "one still hangs".';
    throw new InputError("invalid-option", `${shown(extra)} belongs to no option; ${remedy}`, {
      path: ["words"],
      value: extra,
    });
  }
  // An option that another action takes would be passed over without a word.
  const stray = Object.keys(OPTIONS).find(
    (option) => !action.takes.includes(option) && (given.flag(option) || given.list(option).length > 0),
  );
  if (stray !== undefined) {
    const others = names.filter((one) => ACTIONS[one]?.takes.includes(stray));
    throw new InputError(
      "invalid-option",
      `--${stray} is for log ${others.join(", log ")}, not for log ${name}.`,
      {
        path: [stray],
      },
    );
  }
  await action.run(given, terminal);
}
