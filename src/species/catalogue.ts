import { InputError, nearestNames, shown } from "../errors.ts";
import { coccinellaSeptempunctata } from "./coccinella-septempunctata.ts";
import { cydiaPomonella } from "./cydia-pomonella.ts";
import { danausPlexippusRefittedPupa } from "./danaus-plexippus-refitted-pupa.ts";
import { danausPlexippus } from "./danaus-plexippus.ts";
import { drosophilaMelanogaster } from "./drosophila-melanogaster.ts";
import { harmoniaAxyridis } from "./harmonia-axyridis.ts";
import { helicoverpaArmigera } from "./helicoverpa-armigera.ts";
import type { LifeCycle } from "./life-cycle.ts";
import { orthosiaHibisci } from "./orthosia-hibisci.ts";
import { ostriniaNubilalis } from "./ostrinia-nubilalis.ts";
import { pierisBrassicae } from "./pieris-brassicae.ts";
import { pierisRapae } from "./pieris-rapae.ts";
import { plutellaXylostella } from "./plutella-xylostella.ts";
import { spodopteraFrugiperda } from "./spodoptera-frugiperda.ts";

/** Every species that comes with the library, by id. Where a name fits two, the first is meant. */
export const SPECIES: readonly LifeCycle[] = Object.freeze([
  coccinellaSeptempunctata,
  cydiaPomonella,
  danausPlexippus,
  danausPlexippusRefittedPupa,
  drosophilaMelanogaster,
  harmoniaAxyridis,
  helicoverpaArmigera,
  orthosiaHibisci,
  ostriniaNubilalis,
  pierisBrassicae,
  pierisRapae,
  plutellaXylostella,
  spodopteraFrugiperda,
]);

const namesOf = (lifeCycle: LifeCycle): readonly string[] => [
  lifeCycle.species,
  lifeCycle.latinName,
  lifeCycle.commonName,
];

/**
 * The life cycle with a given name.
 * @param id Id (`danaus-plexippus`), Latin name or common name, in any case.
 * @returns The life cycle; the default set where several sets share the name.
 * @throws {InputError} `unknown-species` when no species has the name; the message offers near ones.
 * @example
 * findSpecies("Codling Moth").species // → "cydia-pomonella"
 */
export function findSpecies(id: string): LifeCycle {
  // Callers without types may hand over anything; the error then says what it was.
  const given: unknown = id;
  const wanted = typeof given === "string" ? given.trim().toLowerCase() : "";
  const found = SPECIES.find((lifeCycle) => namesOf(lifeCycle).some((name) => name.toLowerCase() === wanted));
  if (found) return found;
  const near = nearestNames(wanted, [...new Set(SPECIES.flatMap(namesOf))]);
  const known = SPECIES.map(({ species }) => species).join(", ");
  throw new InputError(
    "unknown-species",
    `species is ${shown(id)}; ${near.length ? `did you mean ${near.join(" or ")}?` : `it must be one of ${known}.`}`,
    { path: ["species"], value: id },
  );
}
