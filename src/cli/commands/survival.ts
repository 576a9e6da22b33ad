import { expectedAdults } from "../../cohort/expected-adults.ts";
import { lifeTableFromLog } from "../../cohort/life-table-from-log.ts";
import type { LogEntry } from "../../cohort/log.ts";
import { survivalThrough } from "../../cohort/survival-through.ts";
import { InputError } from "../../errors.ts";
import type { LifeCycle, StageId } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import { notesText, survivalText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { givenLifeCycle } from "../options/forecast-options.ts";
import { LOG_HELP, LOG_OPTIONS, givenLog } from "../options/log-options.ts";
import { givenFound } from "../options/stage-option.ts";
import type { Terminal } from "../terminal.ts";
import { wholeNumbers } from "../options/whole-numbers.ts";

const MOST_ANIMALS = 10_000;

export const survivalCommand: Command = {
  name: "survival",
  help: `moltline survival: how many of your animals lived, and how many to expect.

  moltline survival --log log.csv --species danaus-plexippus --found egg \\
    --count 12

${LOG_HELP}
An animal that escaped or was given away is "escaped as pupa" or "lost as pupa".

The animals
  --species NAME        such as danaus-plexippus; "moltline species" lists them
  --species-file FILE   your own species, as JSON
  --found STAGE         the stage they were found in, such as egg
  --count NUMBER        how many were found (default: as many as the log tells
                        of, which leaves out those never written down again)
  --closed              the log is finished: whoever is missing from it died;
                        without it they count as lost or still on the way
  --next NUMBER         how many adults to expect of so many more animals, found
                        in the same stage (default: as many as these)
  --date-order ORDER    year-first, month-first or day-first

  --json                print the result as JSON`,
  options: {
    ...LOG_OPTIONS,
    species: "text",
    "species-file": "text",
    found: "text",
    count: "text",
    closed: "flag",
    next: "text",
    "date-order": "text",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const path = given.needed("log", "the file of what you saw");
  const lifeCycle = await givenLifeCycle(given, terminal);
  const found = givenFound(given, lifeCycle);
  const stages = stagesFrom(found, lifeCycle);
  const animals = { from: 1, to: MOST_ANIMALS, most: 1 };
  const [count] = wholeNumbers(given, "count", animals) ?? [];
  const [asked] = wholeNumbers(given, "next", animals) ?? [];
  const log = await givenLog(path, lifeCycle, given, terminal);
  checkStages(log.entries, stages, found);
  const table = lifeTableFromLog(log.entries, {
    stages,
    ...(count !== undefined && { count }),
    unaccounted: given.flag("closed") ? "died" : "censored",
  });
  const next = asked ?? table.rows[0]?.entered ?? 0;
  const survival = survivalThrough(table.rows);
  const expected = survival === null ? null : expectedAdults(next, survival);
  if (given.flag("json")) {
    const result = {
      species: lifeCycle.species,
      ...table,
      next: { stage: found, count: next, expected },
      notes: log.notes,
    };
    terminal.out(`${JSON.stringify(result, null, 2)}\n`);
    return;
  }
  const text = survivalText(table, { found: { stage: found, count: next }, expected });
  terminal.out(`${[text, notesText(log.notes)].filter((part) => part !== "").join("\n\n")}\n`);
}

/** Stages from the one found to adult. */
function stagesFrom(found: StageId, { latinName, stages }: LifeCycle): StageId[] {
  const ids: readonly StageId[] = stages.map(({ stage }) => stage);
  const larva = ids.findLastIndex((stage) => stage === "larva" || stage.startsWith("instar"));
  if (found === "prepupa" && larva >= 0) return ["prepupa", ...ids.slice(larva + 1), "adult"];
  const index = ids.indexOf(found);
  if (index >= 0) return [...ids.slice(index), "adult"];
  throw new InputError(
    "unknown-stage",
    `--found is "${found}"; the stages of ${latinName} to live through are ${ids.join(", ")}.`,
    { path: ["found"], value: found },
  );
}

function checkStages(entries: readonly LogEntry[], stages: readonly StageId[], found: StageId): void {
  const other = entries.find(({ stage }) => stage !== "prepupa" && !stages.includes(stage));
  if (other === undefined) return;
  throw new InputError(
    "invalid-log",
    `${other.row === null ? "the log" : `row ${other.row} of the log`} tells of the ${stageName(other.stage)}, which does not come after --found ${found}; name the first stage of the log, or take the row out.`,
    { path: ["found"], value: found },
  );
}
