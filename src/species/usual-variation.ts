import type { Sourced } from "./life-cycle.ts";
import { sourced } from "./sourced.ts";

// Nothing below was measured on the species it is used for. The figures sit inside what constant-temperature
// and field series of the monarch show (docs/evidence.md, "Variation between animals").
const usual = sourced("common practice, no source", "usual spread between animals reared alike");

/**
 * Coefficient of variation of the thermal constant between animals, a fraction, for stages where the source
 * of the constant gives none.
 */
export const usualVariation = {
  egg: usual(0.09),
  /** Any instar but the last. */
  instar: usual(0.12),
  lastInstar: usual(0.07),
  /** The larva taken as one stage. */
  larva: usual(0.09),
  pupa: usual(0.05),
} as const satisfies Record<string, Sourced>;

/** Correlation between the stages of one animal, 0 to 1, for species where none was measured. */
export const usualStageCorrelation: Sourced = sourced(
  "common practice, no source",
  "taken over from the monarch; egg to adult comes to a CV of 5.8 to 6.8 % in the species here",
)(0.4);

/** Share of the pupal stage, at its end, in which a butterfly's wings show through. */
export const usualDarkening: Sourced = sourced(
  "common practice, no source",
  "about the last day of a summer pupa",
)(0.09);
