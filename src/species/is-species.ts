import type { LifeCycle } from "./life-cycle.ts";

/**
 * Whether a life cycle is of a species: by its Latin name, in any case and with any blanks, and with whatever a
 * subspecies or an author adds to it.
 * @param name Genus and species.
 */
export function isSpecies({ latinName }: Pick<LifeCycle, "latinName">, name: string): boolean {
  return `${words(latinName)} `.startsWith(`${words(name)} `);
}

/** What is published on the species of a life cycle, by Latin name; `null` where nothing is. */
export function publishedOn<Published>(
  lifeCycle: Pick<LifeCycle, "latinName">,
  byName: Readonly<Record<string, Published>>,
): Published | null {
  return Object.entries(byName).find(([name]) => isSpecies(lifeCycle, name))?.[1] ?? null;
}

function words(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, " ");
}
