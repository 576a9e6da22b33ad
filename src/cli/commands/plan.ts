import { dayPlan } from "../../rearing/plan/day-plan.ts";
import { dayNumber } from "../../time/civil-day.ts";
import { planPage, planText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import { FORECAST_HELP, FORECAST_OPTIONS } from "../options/forecast-options.ts";
import { LEARNED_OPTIONS, learnedHelp } from "../options/learned-options.ts";
import { COHORTS_HELP, givenCohorts } from "../options/plan-cohorts.ts";
import { givenNeeds, givenSupplies } from "../options/plan-supplies.ts";
import { givenTargets } from "../files/target-files.ts";
import type { Terminal } from "../terminal.ts";
import { wholeNumbers } from "../options/whole-numbers.ts";

export const planCommand: Command = {
  name: "plan",
  help: `moltline plan: what to do on each day, from the egg to the last adult.

  moltline plan --temperatures porch.csv --species danaus-plexippus \\
    --found egg --on 2026-06-08 --count 12 --cages 2 --page plan.html
  moltline plan --temperatures porch.csv --cohorts cohorts.csv --stock 120 \\
    --away 2026-07-04 --away 2026-07-05

Several cohorts
${COHORTS_HELP}

The cages
  --name NAME           what to call the animals (default A, or --cohort)
  --cages NUMBER        cages that they are kept in (default 1)
  --per-cage NUMBER     larvae that a cage may hold (default 10)
  --clean-every DAYS    how often a cage is cleaned (default 2)
  --away DAY            nobody is there; give it again for more days

The food
  --leaves-per-larva X  leaves that one larva eats in all (monarch: 7, common
                        practice, no source; other species have no number)
  --stock LEAVES        leaves at hand at the start
  --delivery DAY=LEAVES leaves that come on a day; give it again for more
  --leaves-per-stem X   to have stems counted too

The page
  --page FILE           also write the plan as a page to print (HTML)
  --force               replace that file if it is there

${FORECAST_HELP}

${learnedHelp(`                        and leaves out animals that died or were lost
  --cohort NAME         which animals, where the log has several groups; with
                        --cohorts each takes the entries of its own name`)}

  --json                print the plan as JSON instead of text`,
  options: {
    ...FORECAST_OPTIONS,
    ...LEARNED_OPTIONS,
    cohorts: "text",
    name: "text",
    cages: "text",
    "per-cage": "text",
    "clean-every": "text",
    away: "list",
    "leaves-per-larva": "text",
    stock: "text",
    delivery: "list",
    "leaves-per-stem": "text",
    page: "text",
    force: "flag",
    json: "flag",
  },
  takesWords: false,
  run,
};

async function run(given: Given, terminal: Terminal): Promise<void> {
  const { page } = await givenTargets(given, { page: "plan.html" }, terminal);
  const away = given.list("away");
  for (const day of away) dayNumber(day, ["--away"]);
  const [perCage] = wholeNumbers(given, "per-cage", { from: 1, to: 10_000, most: 1 }) ?? [];
  const [cleanEvery] = wholeNumbers(given, "clean-every", { from: 1, to: 365, most: 1 }) ?? [];
  const leavesPerStem = given.number("leaves-per-stem");
  const { cohorts, notes } = await givenCohorts(given, terminal);
  const needs = givenNeeds(given, cohorts);
  const made = dayPlan(cohorts, {
    needs,
    supplies: givenSupplies(given, cohorts, needs),
    away,
    ...(leavesPerStem !== undefined && { leavesPerStem }),
    ...(perCage !== undefined && { perCage }),
    ...(cleanEvery !== undefined && { cleanEvery }),
  });
  const plan = { ...made, notes: [...notes, ...made.notes] };
  // First the file: if it is refused, nothing has been printed.
  if (page !== undefined) await terminal.write(page, planPage(plan), given.flag("force"));
  const told = page === undefined ? "" : `\nWrote ${page}.\n`;
  terminal.out(given.flag("json") ? `${JSON.stringify(plan, null, 2)}\n` : `${planText(plan)}${told}`);
}
