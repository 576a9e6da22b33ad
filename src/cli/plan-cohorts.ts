import { InputError } from "../errors.ts";
import { type ForecastInput, forecast } from "../forecast/forecast.ts";
import type { Note } from "../notes.ts";
import { readCohorts } from "../read/index.ts";
import type { PlanCohort } from "../rearing/plan-cohort.ts";
import type { Given } from "./arguments.ts";
import { givenInput, givenLifeCycle, givenSurroundings } from "./forecast-options.ts";
import { DATE_ORDERS, inFile, notesAbout } from "./input-file.ts";
import type { Terminal } from "./terminal.ts";
import { wholeNumbers } from "./whole-numbers.ts";

/** What a file of cohorts looks like, for the help text. */
export const COHORTS_HELP = `  --cohorts FILE        several cohorts, as CSV or as a JSON list of the same:
                          name,species,found,on,count,age,cages
                          porch,danaus-plexippus,egg,2026-06-08,12,new,2
                          shelf,danaus-plexippus,instar-3,2026-06-15,3,,
                        count and cages default to 1, age to unknown. A species
                        of your own is named by its id, with --species-file`;

// What a file of cohorts says for each of them.
const OF_ONE_COHORT = ["species", "found", "on", "count", "age", "cages", "name"];

/** The cohorts that the options name, with their forecasts. */
export async function givenCohorts(
  given: Given,
  terminal: Terminal,
): Promise<{ cohorts: readonly PlanCohort[]; notes: readonly Note[] }> {
  const path = given.text("cohorts");
  if (path !== undefined) return cohortsOfFile(path, given, terminal);
  const [cages] = wholeNumbers(given, "cages", { from: 1, to: 10_000, most: 1 }) ?? [];
  const { input, notes } = await givenInput(given, terminal);
  const name = given.text("name") ?? "A";
  return { cohorts: [cohortOf(name, input, cages ?? 1)], notes };
}

async function cohortsOfFile(
  path: string,
  given: Given,
  terminal: Terminal,
): Promise<{ cohorts: readonly PlanCohort[]; notes: readonly Note[] }> {
  const other = OF_ONE_COHORT.find((name) => given.text(name) !== undefined);
  if (other !== undefined) {
    throw new InputError(
      "invalid-option",
      `--cohorts and --${other} were both given; the file says it for each cohort, so leave --${other} out.`,
      { path: ["cohorts"], value: path },
    );
  }
  const own = given.text("species-file") === undefined ? [] : [await givenLifeCycle(given, terminal)];
  const dateOrder = given.choice("date-order", DATE_ORDERS);
  const file = await inFile(path, async () => readCohorts(await terminal.read(path), { dateOrder, own }));
  const { around, notes } = await givenSurroundings(given, terminal);
  const cohorts: PlanCohort[] = [];
  for (const { name, lifeCycle, found, cages } of file.cohorts) {
    const input: ForecastInput = { lifeCycle, found, ...around };
    cohorts.push(
      await inFile(`${path}, cohort ${name}`, () => Promise.resolve(cohortOf(name, input, cages))),
    );
  }
  return { cohorts, notes: [...notesAbout(path, file.notes), ...notes] };
}

function cohortOf(name: string, input: ForecastInput, cages: number): PlanCohort {
  return { name, lifeCycle: input.lifeCycle, forecast: forecast(input), cages };
}
