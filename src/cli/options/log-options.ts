import type { LogEntry } from "../../cohort/log.ts";
import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import { readLog } from "../../read/index.ts";
import type { StageId } from "../../species/life-cycle.ts";
import type { Given, OptionTable } from "./arguments.ts";
import { DATE_ORDERS, inFile, notesAbout } from "../files/input-file.ts";
import { NO_COLUMN_OPTIONS, inNames } from "./option-names.ts";
import { hatchesAs } from "./stage-option.ts";
import type { Terminal } from "../terminal.ts";

/** Options that name a log. */
export const LOG_OPTIONS: OptionTable = { log: "text", cohort: "text" };

/** What a log file looks like, for the help texts. */
export const LOG_HELP = `Your log is a CSV file with a line for each thing seen; moltline log makes one:
  stage,seen on,count,note
  hatched,2026-06-11,4,
  pupated,2026-06-25,3,one still hanging
  died as pupa,2026-06-28,1,

  --log FILE            the log; - for standard input
  --cohort NAME         which animals, where the log has several groups`;

/** The log that the options name, one cohort of it, with the stages of a species or of a forecast. */
export async function givenLog(
  path: string,
  { stages }: { readonly stages: readonly { readonly stage: StageId }[] },
  given: Given,
  terminal: Terminal,
): Promise<{ entries: readonly LogEntry[]; notes: readonly Note[] }> {
  const log = await inFile(path, async () => logOf(await terminal.read(path), { stages }, given));
  return { entries: ofCohort(log.entries, given.text("cohort")), notes: notesAbout(path, log.notes) };
}

/** A log with the stages of a species, all cohorts of it. */
export function logOf(
  bytes: Uint8Array,
  { stages }: { readonly stages: readonly { readonly stage: StageId }[] },
  given: Given,
): ReturnType<typeof readLog> {
  return inNames(NO_COLUMN_OPTIONS, () =>
    readLog(bytes, {
      firstLarvalStage: hatchesAs({ stages }),
      dateOrder: given.choice("date-order", DATE_ORDERS),
    }),
  );
}

/**
 * Entries of one cohort. A log of several needs a name: mixing them would compare animals of other dates.
 * @throws {InputError} `invalid-option` for a name that the log does not have, or none where it has several.
 */
export function ofCohort(entries: readonly LogEntry[], name: string | undefined): readonly LogEntry[] {
  const names = [...new Set(entries.map(({ cohort }) => cohort ?? ""))];
  if (name === undefined && names.length <= 1) return entries;
  if (name !== undefined && names.includes(name))
    return entries.filter(({ cohort }) => (cohort ?? "") === name);
  if (names.length === 0) {
    throw new InputError(
      "invalid-option",
      `--cohort is "${name}", but the log has no rows yet; leave it out.`,
      {
        path: ["cohort"],
        value: name,
      },
    );
  }
  const known = names.map((one) => (one === "" ? '"" (those without a name)' : `"${one}"`)).join(", ");
  const problem =
    name === undefined ? "the log has several groups" : `--cohort is "${name}", which the log does not have`;
  throw new InputError("invalid-option", `${problem}; name one of them with --cohort: ${known}.`, {
    path: ["cohort"],
    value: name,
  });
}
