import { InputError } from "../../errors.ts";
import { type ForecastInput, forecast } from "../../forecast/forecast.ts";
import { lastStageBegan } from "../../forecast/question/learned.ts";
import type { Note } from "../../notes.ts";
import { readCohorts } from "../../read/index.ts";
import type { PlanCohort } from "../../rearing/plan/plan-cohort.ts";
import type { Given } from "./arguments.ts";
import { cohortLogs } from "./cohort-logs.ts";
import { givenInput, givenLifeCycle, givenSurroundings } from "./forecast-options.ts";
import { DATE_ORDERS, fileName, inFile, notesAbout } from "../files/input-file.ts";
import { type Seen, givenLearned } from "./learned-options.ts";
import { NO_COLUMN_OPTIONS, inNames } from "./option-names.ts";
import type { Terminal } from "../terminal.ts";
import { wholeNumbers } from "./whole-numbers.ts";

/** What a file of cohorts looks like, for the help text. */
export const COHORTS_HELP = `  --cohorts FILE        several cohorts, as CSV or as a JSON list of the same:
                          name,species,found,on,count,age,cages
                          porch,danaus-plexippus,egg,2026-06-08,12,new,2
                          shelf,danaus-plexippus,instar-3,2026-06-15,3,,
                        count and cages default to 1, age to unknown. A species
                        of your own is named by its id, with --species-file`;

// What a file of cohorts says for each of them.
const OF_ONE_COHORT = ["species", "found", "on", "count", "age", "cages", "name", "cohort"];

/** The cohorts of a plan, and what reading the files found. */
interface GivenCohorts {
  readonly cohorts: readonly PlanCohort[];
  readonly notes: readonly Note[];
}

/** The cohorts that the options name, with their forecasts. */
export async function givenCohorts(given: Given, terminal: Terminal): Promise<GivenCohorts> {
  const path = given.text("cohorts");
  if (path !== undefined) return cohortsOfFile(path, given, terminal);
  const [cages] = wholeNumbers(given, "cages", { from: 1, to: 10_000, most: 1 }) ?? [];
  const { input, notes } = await givenInput(given, terminal);
  const { notes: logNotes, ...seen } = await givenLearned(input, given, terminal);
  const name = given.text("name") ?? given.text("cohort") ?? "A";
  const cohort = cohortOf(name, input, cages ?? 1, seen);
  if (cohort === null) throw nothingLeft(given, [name]);
  return { cohorts: [cohort], notes: [...notes, ...logNotes, ...goneNotes(given, [{ name, seen }])] };
}

async function cohortsOfFile(path: string, given: Given, terminal: Terminal): Promise<GivenCohorts> {
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
  const file = await inFile(path, async () => {
    const bytes = await terminal.read(path);
    return inNames(NO_COLUMN_OPTIONS, () => readCohorts(bytes, { dateOrder, own }));
  });
  const { around, notes } = await givenSurroundings(given, terminal);
  const inputs = new Map(
    file.cohorts.map(({ name, lifeCycle, found }): [string, ForecastInput] => [
      name,
      { lifeCycle, found, ...around },
    ]),
  );
  const logs = await cohortLogs(inputs, path, given, terminal);
  const cohorts: PlanCohort[] = [];
  const seenOf: { name: string; seen: Seen }[] = [];
  for (const { name, cages } of file.cohorts) {
    const input = inputs.get(name);
    if (input === undefined) continue;
    const cohort = await inFile(`${path}, cohort ${name}`, () => {
      const seen = logs.seenOf(name);
      seenOf.push({ name, seen });
      return Promise.resolve(cohortOf(name, input, cages, seen));
    });
    if (cohort !== null) cohorts.push(cohort);
  }
  if (cohorts.length === 0) throw nothingLeft(given, [...inputs.keys()]);
  return {
    cohorts,
    notes: [...notesAbout(path, file.notes), ...notes, ...logs.notes, ...goneNotes(given, seenOf)],
  };
}

/** A cohort as the plan takes it; `null` where none of its animals is left. */
function cohortOf(name: string, input: ForecastInput, cages: number, seen: Seen): PlanCohort | null {
  const { learned, gone } = seen;
  const dates = forecast({ ...input, ...(learned !== undefined && { learned }) });
  const count = dates.found.count - gone;
  if (count < 1 && gone > 0) return null;
  const since = learned === undefined ? null : lastStageBegan(learned);
  return {
    name,
    lifeCycle: input.lifeCycle,
    forecast: dates,
    count,
    cages,
    ...(since !== null && { since }),
  };
}

/** Says which animals a plan leaves out because the log tells of their end. */
function goneNotes(given: Given, all: readonly { readonly name: string; readonly seen: Seen }[]): Note[] {
  const some = all.filter(({ seen }) => seen.gone > 0);
  if (some.length === 0) return [];
  const who = some.map(({ name, seen }) => `${seen.gone} of cohort ${name}`).join(", ");
  const message = `${who} died or were lost; the plan leaves them out.`;
  return notesAbout(given.text("log") ?? "-", [{ code: "survival-not-counted", message }]);
}

function nothingLeft(given: Given, names: readonly string[]): InputError {
  const path = given.text("log") ?? "-";
  const whose = `cohort${names.length === 1 ? "" : "s"} ${names.join(", ")}`;
  return new InputError(
    "invalid-found",
    `${fileName(path)}: all animals of ${whose} died or were lost, so that nothing is left to plan; if there are more, say how many were found.`,
    { path: ["log"], value: path },
  );
}
