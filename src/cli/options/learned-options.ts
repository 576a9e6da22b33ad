import { type LogEntry, fateOf } from "../../cohort/log.ts";
import { InputError } from "../../errors.ts";
import type { ForecastInput } from "../../forecast/forecast.ts";
import { learn } from "../../forecast/learning/learn.ts";
import type { Learned } from "../../forecast/question/learned.ts";
import type { Note } from "../../notes.ts";
import type { Given, OptionTable } from "./arguments.ts";
import { LOG_OPTIONS, givenLog } from "./log-options.ts";
import type { Terminal } from "../terminal.ts";

/** Options about what a log teaches. */
export const LEARNED_OPTIONS: OptionTable = {
  ...LOG_OPTIONS,
  "pace-variation": "text",
  "offset-deviation": "text",
};

/**
 * Their part of the help text.
 * @param cohort What `--cohort` does, on lines of the help.
 */
export const learnedHelp = (cohort: string): string => `What you have seen so far
  --log FILE            your log: the forecast learns from it and goes on from
                        the last stage seen; moltline log keeps one
${cohort}
  --pace-variation X    how much groups of animals differ (default 0.1)
  --offset-deviation X  how far the thermometer may be off, °C (default 0)`;

/** What was seen of some animals, and what it teaches. */
export interface Seen {
  readonly learned: Learned | undefined;
  /** Animals that died or were lost. */
  readonly gone: number;
}

/** What is known of animals that no log tells of. */
export const UNSEEN: Seen = { learned: undefined, gone: 0 };

/** What the log teaches, where one is named. */
export async function givenLearned(
  input: ForecastInput,
  given: Given,
  terminal: Terminal,
): Promise<Seen & { readonly notes: readonly Note[] }> {
  const path = given.text("log");
  if (path === undefined) {
    refuseWithoutLog(given);
    return { ...UNSEEN, notes: [] };
  }
  const { entries, notes } = await givenLog(path, input.lifeCycle, given, terminal);
  return { ...seenOf(input, entries, given), notes };
}

/** An option that does nothing looks like one that did. */
export function refuseWithoutLog(given: Given): void {
  const about = ["cohort", "pace-variation", "offset-deviation"].find(
    (name) => given.text(name) !== undefined && !(name === "cohort" && given.text("ics") !== undefined),
  );
  if (about === undefined) return;
  throw new InputError("invalid-option", `--${about} is about what a log teaches; name one with --log.`, {
    path: [about],
  });
}

/** What the entries of one cohort teach. */
export function seenOf(input: ForecastInput, entries: readonly LogEntry[], given: Given): Seen {
  const paceVariation = given.number("pace-variation");
  const offsetDeviation = given.number("offset-deviation");
  const learned = learn(input, entries, {
    ...(paceVariation !== undefined && { paceVariation }),
    ...(offsetDeviation !== undefined && { offsetDeviation }),
  });
  const gone = entries.reduce((sum, entry) => sum + (fateOf(entry) === "seen" ? 0 : entry.count), 0);
  return { learned, gone };
}
