import type { LifeCycle } from "./life-cycle.ts";
import { BUCKLEY_2017, sourced } from "./sourced.ts";
import { usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const matteson = sourced(
  "second-hand",
  `Matteson & Decker 1965, J. Econ. Ent. 58:344-349, as quoted in ${BUCKLEY_2017}`,
);
const common = { upper: null, cutoff: "none", tested: null } as const;

/** European corn borer, a base for each stage. */
export const ostriniaNubilalis: LifeCycle = {
  species: "ostrinia-nubilalis",
  latinName: "Ostrinia nubilalis",
  commonName: "European corn borer",
  host: null,
  region: "Illinois, USA",
  stages: [
    { stage: "egg", degreeDays: matteson(44.7), lower: matteson(13.5), cv: usualVariation.egg, ...common },
    {
      stage: "larva",
      degreeDays: matteson(254.4),
      lower: matteson(11.5),
      cv: usualVariation.larva,
      ...common,
    },
    { stage: "pupa", degreeDays: matteson(101.1), lower: matteson(12.4), cv: usualVariation.pupa, ...common },
  ],
  hang: null,
  darkening: null,
  stageCorrelation: usualStageCorrelation,
  handling: ["never-release"],
  remarks: [
    "Whole life in the same source: base 12.1 °C and 396.6 degree-days; animals from North Dakota 10.5 °C and 480.",
    "Field advice counts 50/86 °F degree-days instead, so its sums cannot be compared with these.",
    "Late-season larvae enter diapause and then do not follow this clock (from memory).",
  ],
};
