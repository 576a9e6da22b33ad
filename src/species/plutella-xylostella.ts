import type { LifeCycle } from "./life-cycle.ts";
import { BUCKLEY_2017, sourced } from "./sourced.ts";
import { usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const liu = sourced(
  "second-hand",
  `Liu, Chen & Zalucki 2002, Env. Ent. 31:221-241, as quoted in ${BUCKLEY_2017}`,
);
const common = { upper: null, cutoff: "none", tested: null } as const;

/** Diamondback moth, a base for each stage and instar. */
export const plutellaXylostella: LifeCycle = {
  species: "plutella-xylostella",
  latinName: "Plutella xylostella",
  commonName: "diamondback moth",
  host: null,
  region: null,
  stages: [
    { stage: "egg", degreeDays: liu(52.1), lower: liu(7.3), cv: usualVariation.egg, ...common },
    { stage: "instar-1", degreeDays: liu(33.7), lower: liu(7.3), cv: usualVariation.instar, ...common },
    { stage: "instar-2", degreeDays: liu(36.1), lower: liu(7.2), cv: usualVariation.instar, ...common },
    { stage: "instar-3", degreeDays: liu(27.9), lower: liu(7.6), cv: usualVariation.instar, ...common },
    { stage: "instar-4", degreeDays: liu(37.4), lower: liu(7), cv: usualVariation.lastInstar, ...common },
    { stage: "pupa", degreeDays: liu(68.75), lower: liu(7.85), cv: usualVariation.pupa, ...common },
  ],
  hang: null,
  darkening: null,
  stageCorrelation: usualStageCorrelation,
  handling: ["never-release"],
  remarks: ["Whole life in the same source: base 7.4 °C and 268.2 degree-days."],
};
