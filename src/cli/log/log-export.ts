import { InputError } from "../../errors.ts";
import type { Note } from "../../notes.ts";
import type { LogReading } from "../../read/index.ts";
import { darwinCoreCsv, darwinCoreRows, logCsv, notesText } from "../../write/index.ts";
import type { SharedPlace } from "../../write/tables/shared-place.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import type { Given } from "../options/arguments.ts";
import { givenLifeCycle } from "../options/forecast-options.ts";
import { givenPlace } from "../options/given-place.ts";
import { inFile } from "../files/input-file.ts";
import { logOf, ofCohort } from "../options/log-options.ts";
import { givenTargets } from "../files/target-files.ts";
import type { Terminal } from "../terminal.ts";

/** Parts of a place beside its coordinates. */
const PLACE_WORDS = ["uncertainty", "decimals", "country", "country-code", "state", "locality"];

/** Options that only records in the terms of Darwin Core have room for. */
const DARWIN_CORE_ONLY = ["wild", "recorded-by", "id-prefix", "latitude", "longitude", ...PLACE_WORDS];

/** Writes the log as it stands as a table for others. */
export async function exportLog(given: Given, terminal: Terminal): Promise<void> {
  const path = given.needed("log", "the log");
  const { out } = await givenTargets(given, { out: "clean.csv" }, terminal);
  const { text, notes } = await exported(path, given, terminal);
  const remarks = notesText(notes);
  if (out === undefined) {
    terminal.out(text);
    // What there is to know must not get into the table.
    if (remarks !== "") terminal.err(`${remarks}\n`);
    return;
  }
  await terminal.write(out, text, given.flag("force"));
  terminal.out(`Wrote ${out}.\n${remarks === "" ? "" : `\n${remarks}\n`}`);
}

async function exported(
  path: string,
  given: Given,
  terminal: Terminal,
): Promise<{ text: string; notes: readonly Note[] }> {
  const darwinCore = given.flag("darwin-core");
  if (!darwinCore) refuseUnused(given, DARWIN_CORE_ONLY, "--darwin-core");
  const place = givenSharedPlace(given);
  const named = [given.text("species"), given.text("species-file")].some((text) => text !== undefined);
  const lifeCycle = darwinCore || named ? await givenLifeCycle(given, terminal) : null;
  const bytes = await terminal.read(path);
  const { entries, notes } = await inFile(path, () => Promise.resolve(logToExport(bytes, lifeCycle, given)));
  const cohort = given.text("cohort");
  const own = cohort === undefined ? entries : ofCohort(entries, cohort);
  if (!darwinCore || lifeCycle === null) return { text: logCsv(own), notes };
  const [recordedBy, idPrefix] = [given.text("recorded-by"), given.text("id-prefix")];
  const decimals = given.number("decimals");
  const shared = darwinCoreRows(own, {
    scientificName: lifeCycle.latinName,
    vernacularName: lifeCycle.commonName,
    captive: !given.flag("wild"),
    ...(place !== undefined && { place }),
    ...(decimals !== undefined && { decimals }),
    ...(recordedBy !== undefined && { recordedBy }),
    ...(idPrefix !== undefined && { idPrefix }),
  });
  return { text: darwinCoreCsv(shared.rows), notes: [...shared.notes, ...notes] };
}

/**
 * The log with the stages of a species. Without one, what hatched cannot be told.
 * @throws {InputError} `unknown-stage`, what `readLog` throws.
 */
function logToExport(bytes: Uint8Array, lifeCycle: LifeCycle | null, given: Given): LogReading {
  if (lifeCycle !== null) return logOf(bytes, lifeCycle, given);
  const log = logOf(bytes, { stages: [{ stage: "instar-1" }] }, given);
  const other = logOf(bytes, { stages: [{ stage: "larva" }] }, given);
  const hatched = log.entries.find(({ stage }, i) => stage !== other.entries[i]?.stage);
  if (hatched === undefined) return log;
  throw new InputError(
    "unknown-stage",
    `row ${hatched.row} says hatched, which is the first instar of some species and the larva of others; give --species, such as danaus-plexippus.`,
    { path: ["species"], value: "hatched" },
  );
}

/** Options that would be passed over without a word. */
function refuseUnused(given: Given, names: readonly string[], needed: string): void {
  const unused = names.find((name) => given.flag(name) || given.list(name).length > 0);
  if (unused === undefined) return;
  throw new InputError("invalid-option", `--${unused} belongs to ${needed}, which was not given.`, {
    path: [unused],
  });
}

function givenSharedPlace(given: Given): SharedPlace | undefined {
  const place = givenPlace(given);
  if (place === undefined) {
    refuseUnused(given, PLACE_WORDS, "a place, --latitude and --longitude");
    return undefined;
  }
  const uncertaintyMetres = given.number("uncertainty");
  const [country, countryCode] = [given.text("country"), given.text("country-code")];
  const [stateProvince, locality] = [given.text("state"), given.text("locality")];
  return {
    ...place,
    ...(uncertaintyMetres !== undefined && { uncertaintyMetres }),
    ...(country !== undefined && { country }),
    ...(countryCode !== undefined && { countryCode }),
    ...(stateProvince !== undefined && { stateProvince }),
    ...(locality !== undefined && { locality }),
  };
}
