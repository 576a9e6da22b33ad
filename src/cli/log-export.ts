import type { Note } from "../notes.ts";
import { readLog } from "../read/index.ts";
import { darwinCoreCsv, darwinCoreRows, logCsv, notesText } from "../write/index.ts";
import type { SharedPlace } from "../write/shared-place.ts";
import type { Given } from "./arguments.ts";
import { givenLifeCycle } from "./forecast-options.ts";
import { givenPlace } from "./given-place.ts";
import { DATE_ORDERS, inFile } from "./input-file.ts";
import type { Terminal } from "./terminal.ts";

/** Writes the log as it stands as a table for others. */
export async function exportLog(given: Given, terminal: Terminal): Promise<void> {
  const path = given.needed("file", "the log");
  const { text, notes } = await exported(path, given, terminal);
  const remarks = notesText(notes);
  const out = given.text("out");
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
  const lifeCycle =
    darwinCore || given.text("species") !== undefined ? await givenLifeCycle(given, terminal) : null;
  const larva = lifeCycle?.stages.some(({ stage }) => stage === "larva") ?? false;
  const bytes = await terminal.read(path);
  const { entries, notes } = await inFile(path, () =>
    Promise.resolve(
      readLog(bytes, {
        dateOrder: given.choice("date-order", DATE_ORDERS),
        firstLarvalStage: larva ? "larva" : "instar-1",
      }),
    ),
  );
  const cohort = given.text("cohort");
  const own = cohort === undefined ? entries : entries.filter((one) => one.cohort === cohort);
  if (!darwinCore || lifeCycle === null) return { text: logCsv(own), notes };
  const place = givenSharedPlace(given);
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

function givenSharedPlace(given: Given): SharedPlace | undefined {
  const place = givenPlace(given);
  if (place === undefined) return undefined;
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
