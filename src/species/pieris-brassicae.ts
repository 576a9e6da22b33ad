import type { LifeCycle } from "./life-cycle.ts";
import { BUCKLEY_2017, sourced } from "./sourced.ts";
import { usualDarkening, usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const david = sourced("second-hand", `David & Gardiner 1962, as quoted in ${BUCKLEY_2017}`);
const common = { upper: null, cutoff: "none", tested: null } as const;

/** Large white, a base for each stage, the larva as a whole. */
export const pierisBrassicae: LifeCycle = {
  species: "pieris-brassicae",
  latinName: "Pieris brassicae",
  commonName: "large white",
  host: null,
  region: null,
  stages: [
    { stage: "egg", degreeDays: david(68.6), lower: david(8.56), cv: usualVariation.egg, ...common },
    { stage: "larva", degreeDays: david(215.3), lower: david(7.9), cv: usualVariation.larva, ...common },
    { stage: "pupa", degreeDays: david(161), lower: david(8.66), cv: usualVariation.pupa, ...common },
  ],
  hang: sourced(
    "common practice, no source",
    "about a day, girdled, before the larval skin is shed: 0.89 d at 20 °C",
  )(0.05),
  darkening: usualDarkening,
  stageCorrelation: usualStageCorrelation,
  handling: ["never-release", "not-native-in-places"],
  remarks: [
    "Whole life in the same source: base 7.9 °C and 468 degree-days, more than the stages add up to.",
    "Pupae of late summer may overwinter and then do not follow this clock (from memory).",
  ],
};
