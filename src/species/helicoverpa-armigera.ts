import type { LifeCycle } from "./life-cycle.ts";
import { BUCKLEY_2017, sourced } from "./sourced.ts";
import { usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const jallow = sourced(
  "second-hand",
  `Jallow & Matsumura 2001, Appl. Ent. Zool. 36:427-430 (volume from memory), as quoted in ${BUCKLEY_2017}`,
);
const common = { upper: null, cutoff: "none", tested: null } as const;

/** Cotton bollworm, a base for each stage. */
export const helicoverpaArmigera: LifeCycle = {
  species: "helicoverpa-armigera",
  latinName: "Helicoverpa armigera",
  commonName: "cotton bollworm",
  host: null,
  region: null,
  stages: [
    { stage: "egg", degreeDays: jallow(52.71), lower: jallow(10.12), cv: usualVariation.egg, ...common },
    { stage: "larva", degreeDays: jallow(236.52), lower: jallow(10.5), cv: usualVariation.larva, ...common },
    { stage: "pupa", degreeDays: jallow(172.87), lower: jallow(12.67), cv: usualVariation.pupa, ...common },
  ],
  hang: null,
  darkening: null,
  stageCorrelation: usualStageCorrelation,
  handling: ["never-release"],
  remarks: [
    "Whole life in the same source: base 11.99 °C and 443.88 degree-days.",
    "Qureshi 1999 (Appl. Ent. Zool. 34:327-331, second-hand) has egg 10.72 °C and 46.67, larva 12.86 and 185.69, pupa 14.56 and 144.79 degree-days.",
  ],
};
