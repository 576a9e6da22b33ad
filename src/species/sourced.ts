import type { Mark, Sourced } from "./life-cycle.ts";

/**
 * The compilation through which several species came to hand. Its authors refitted some constants, so a
 * figure quoted in it can differ from the paper it names.
 */
export const BUCKLEY_2017 = "Buckley et al. 2017, Integr. Comp. Biol. 57:988-998, App. S3";

/**
 * A maker of sourced numbers for one source, so that a table of constants reads like the table it was
 * taken from.
 * @param mark How far the figures can be trusted.
 * @param source Author, year, journal, pages, and through whom it is quoted.
 * @returns A function from the number to the number with its source.
 * @example
 * sourced("second-hand", "Hartstack 1976, USDA ARS-S-127")(40.5).value // → 40.5
 */
export function sourced(mark: Mark, source: string): (value: number) => Sourced {
  return (value) => ({ value, mark, source });
}
