import { SPECIES, findSpecies } from "../../species/catalogue.ts";
import { speciesListText, speciesText } from "../../write/index.ts";
import type { Given } from "../options/arguments.ts";
import type { Command } from "../command.ts";
import type { Terminal } from "../terminal.ts";

export const speciesCommand: Command = {
  name: "species",
  help: `moltline species: the species at hand.

  moltline species                    a line for each
  moltline species danaus-plexippus   one, with its constants and their sources

  --json                print them as JSON; one of them, changed, is a species
                        file of your own for --species-file`,
  options: { json: "flag" },
  takesWords: true,
  run,
};

function run(given: Given, terminal: Terminal): void {
  // `species Danaus plexippus` needs no quotes.
  const name = given.words.length === 0 ? undefined : given.words.join(" ");
  if (given.flag("json")) {
    terminal.out(`${JSON.stringify(name === undefined ? SPECIES : findSpecies(name), null, 2)}\n`);
  } else {
    terminal.out(name === undefined ? speciesListText(SPECIES) : speciesText(findSpecies(name)));
  }
}
