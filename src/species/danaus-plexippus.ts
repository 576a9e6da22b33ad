import type { LifeCycle, Sourced } from "./life-cycle.ts";
import { MONARCH_REMARKS } from "./monarch-remarks.ts";
import { sourced } from "./sourced.ts";
import { usualDarkening } from "./usual-variation.ts";

const quoted = "Zalucki 1982, J. Aust. Ent. Soc. 21:241-246, as quoted in analysis code of Grant et al. 2020";

// The code gives running totals 45, 77.3, 105.1, 129.6, 165.3, 231.9; the egg is a figure of the source, the
// others are differences.
const zalucki = sourced("second-hand", quoted);
const difference = sourced("derived", `difference of running totals in ${quoted}`);
// A difference is no better than its weaker term.
const pupa = sourced("from memory", `352 egg to adult, from memory, less 231.9 egg to pupation in ${quoted}`);
const lower = sourced("from memory", "Zalucki 1982, J. Aust. Ent. Soc. 21:241-246")(11.5);
const upper = sourced("from memory", "Zalucki 1982, J. Aust. Ent. Soc. 21:241-246")(33);

const field = (standardDeviation: number, mean: number): Sourced =>
  sourced(
    "derived",
    `field SD ${standardDeviation} over mean ${mean}, Table 2 of ${quoted}`,
  )(standardDeviation / mean);

const common = { lower, upper, cutoff: "horizontal", tested: null } as const;

/** Monarch: larval constants of Zalucki 1982, pupa by difference. The default monarch; see docs/evidence.md. */
export const danausPlexippus: LifeCycle = {
  species: "danaus-plexippus",
  latinName: "Danaus plexippus",
  commonName: "monarch",
  host: "Gomphocarpus fruticosus",
  region: "Australia",
  stages: [
    { stage: "egg", degreeDays: zalucki(45), cv: field(4.32, 44.5), ...common },
    { stage: "instar-1", degreeDays: difference(32.3), cv: field(3.97, 30.9), ...common },
    { stage: "instar-2", degreeDays: difference(27.8), cv: field(3.71, 27.2), ...common },
    { stage: "instar-3", degreeDays: difference(24.5), cv: field(2.88, 25.6), ...common },
    { stage: "instar-4", degreeDays: difference(35.7), cv: field(4.09, 33.8), ...common },
    { stage: "instar-5", degreeDays: difference(66.6), cv: field(3.89, 58.5), ...common },
    {
      stage: "pupa",
      degreeDays: pupa(120.1),
      cv: sourced(
        "common practice, no source",
        "between 2.4-7.8 % at constant temperature (Ragonese et al. 2024) and 7.2 % outdoors (DuBose et al. 2025)",
      )(0.05),
      ...common,
    },
  ],
  hang: sourced(
    "common practice, no source",
    "about a day at room temperature, less when warm: 0.95 d at 22 °C, 0.74 d at 25 °C, 0.54 d at 30 °C",
  )(0.15),
  darkening: usualDarkening,
  stageCorrelation: sourced(
    "common practice, no source",
    "chosen so that egg to adult comes to a CV of 5.9 %, where 5 to 7 % is usual",
  )(0.4),
  handling: ["harmful-sap", "permit-in-places"],
  remarks: [
    MONARCH_REMARKS.fromMemory,
    MONARCH_REMARKS.abovePulses,
    MONARCH_REMARKS.heldHeat,
    "Outdoor summer pupae took about 8 % longer than 120.1 degree-days (DuBose et al. 2025, open data); danaus-plexippus-refitted-pupa allows for it.",
    MONARCH_REMARKS.hostAndSeason,
  ],
};
