import type { LogEntry } from "../../cohort/log.ts";
import { InputError, shown } from "../../errors.ts";
import type { ForecastInput } from "../../forecast/forecast.ts";
import type { Note } from "../../notes.ts";
import type { LogReading } from "../../read/index.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import type { Given } from "./arguments.ts";
import { fileName, inFile, notesAbout } from "../files/input-file.ts";
import { type Seen, UNSEEN, refuseWithoutLog, seenOf } from "./learned-options.ts";
import { logOf } from "./log-options.ts";
import { hatchesAs } from "./stage-option.ts";
import type { Terminal } from "../terminal.ts";

/** What one log tells of several cohorts. */
export interface CohortLogs {
  /** What was seen of a cohort; nothing where the log does not name it. */
  readonly seenOf: (name: string) => Seen;
  readonly notes: readonly Note[];
}

/**
 * The log that the options name, shared out among the cohorts of a file: an entry is of the cohort that its column
 * `cohort` names. Of a single cohort are also entries that name none, where the log names nobody.
 * @param inputs What is to be forecast, by the names of the cohorts.
 * @param path The file of the cohorts.
 * @throws {InputError} `invalid-option` for a log that names none of the cohorts; what reading a log throws.
 */
export async function cohortLogs(
  inputs: ReadonlyMap<string, ForecastInput>,
  path: string,
  given: Given,
  terminal: Terminal,
): Promise<CohortLogs> {
  const log = given.text("log");
  if (log === undefined) {
    refuseWithoutLog(given);
    return { seenOf: () => UNSEEN, notes: [] };
  }
  const bytes = await inFile(log, () => terminal.read(log));
  // All that the species decides is what hatches, so that there are two readings of a log at most.
  const readings = new Map<string, LogReading>();
  const read = async (lifeCycle: LifeCycle): Promise<LogReading> => {
    const hatches = hatchesAs(lifeCycle);
    const before = readings.get(hatches);
    if (before !== undefined) return before;
    const reading = await inFile(log, () => Promise.resolve(logOf(bytes, lifeCycle, given)));
    readings.set(hatches, reading);
    return reading;
  };
  const found: Note[] = [];
  const entriesOf = new Map<string, readonly LogEntry[]>();
  let nobodys = new Set<string>();
  for (const [name, { lifeCycle }] of inputs) {
    const { entries, notes } = await read(lifeCycle);
    const names = new Set(entries.map(({ cohort }) => cohort ?? ""));
    const unnamed = inputs.size === 1 && names.size === 1 && names.has("");
    const own = entries.filter(({ cohort }) => unnamed || cohort === name);
    if (own.length > 0) entriesOf.set(name, own);
    nobodys = new Set([...names].filter((one) => !unnamed && !inputs.has(one)));
    found.push(...notes.filter(({ message }) => !found.some((one) => one.message === message)));
  }
  if (entriesOf.size === 0) throw namesNone([...nobodys], [...inputs.keys()], log, path);
  if (nobodys.size > 0) {
    const message = `Entries of ${named([...nobodys])} were not used; ${fileName(path)} has no such cohort.`;
    found.push({ code: "log-kept-aside", message });
  }
  return {
    seenOf: (name) => {
      const [entries, input] = [entriesOf.get(name), inputs.get(name)];
      return entries === undefined || input === undefined ? UNSEEN : seenOf(input, entries, given);
    },
    notes: notesAbout(log, found),
  };
}

function namesNone(
  nobodys: readonly string[],
  known: readonly string[],
  log: string,
  path: string,
): InputError {
  const has = nobodys.length === 0 ? "has no entries" : `tells of ${named(nobodys)}`;
  return new InputError(
    "invalid-option",
    `${fileName(log)} ${has}, and ${fileName(path)} of ${named(known)}; each entry must name its cohort in the column cohort.`,
    { path: ["log"], value: log },
  );
}

function named(names: readonly string[]): string {
  return names.map((name) => (name === "" ? "animals without a name" : shown(name))).join(", ");
}
