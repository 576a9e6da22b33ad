import type { LifeCycle } from "./life-cycle.ts";
import { BUCKLEY_2017, sourced } from "./sourced.ts";
import { usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const uc = sourced("second-hand", `UC Publ. 3340, as quoted in ${BUCKLEY_2017}`);
const common = { lower: uc(10), upper: uc(31.1), cutoff: "horizontal", tested: null } as const;

/** Codling moth, one pair of thresholds for all stages. */
export const cydiaPomonella: LifeCycle = {
  species: "cydia-pomonella",
  latinName: "Cydia pomonella",
  commonName: "codling moth",
  host: null,
  region: null,
  stages: [
    { stage: "egg", degreeDays: uc(87.8), cv: usualVariation.egg, ...common },
    { stage: "larva", degreeDays: uc(261.7), cv: usualVariation.larva, ...common },
    { stage: "pupa", degreeDays: uc(239.4), cv: usualVariation.pupa, ...common },
  ],
  hang: null,
  darkening: null,
  stageCorrelation: usualStageCorrelation,
  handling: ["never-release"],
  remarks: [
    "A South African set has a base for each stage: egg 11.1 °C and 80.1, larva 7.9 and 345.5, pupa 9.9 and 280.0 degree-days, and advises base 10 (African Entomology 17(2), 2009, abstract read).",
    "Howell & Neven 2000 (Env. Ent. 29:766-772, abstract read) give 87.5, 254.2 and 241.7 degree-days and saw no upper threshold under temperatures that swung up to 35 °C.",
    "Late-season larvae enter diapause and then do not follow this clock (from memory).",
  ],
};
