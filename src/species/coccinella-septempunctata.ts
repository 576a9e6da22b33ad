import type { LifeCycle } from "./life-cycle.ts";
import { BUCKLEY_2017, sourced } from "./sourced.ts";
import { usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const xia = sourced("second-hand", `Xia et al. 1999, Env. Ent. 28:307-314, as quoted in ${BUCKLEY_2017}`);
const common = { upper: null, cutoff: "none", tested: null } as const;

/** Seven-spot ladybird, a base for each stage and instar. */
export const coccinellaSeptempunctata: LifeCycle = {
  species: "coccinella-septempunctata",
  latinName: "Coccinella septempunctata",
  commonName: "seven-spot ladybird",
  host: null,
  region: null,
  stages: [
    { stage: "egg", degreeDays: xia(42), lower: xia(11.5), cv: usualVariation.egg, ...common },
    { stage: "instar-1", degreeDays: xia(22.8), lower: xia(13.8), cv: usualVariation.instar, ...common },
    { stage: "instar-2", degreeDays: xia(20.4), lower: xia(13.6), cv: usualVariation.instar, ...common },
    { stage: "instar-3", degreeDays: xia(23.1), lower: xia(13.6), cv: usualVariation.instar, ...common },
    { stage: "instar-4", degreeDays: xia(38), lower: xia(13.9), cv: usualVariation.lastInstar, ...common },
    { stage: "pupa", degreeDays: xia(63.6), lower: xia(12.9), cv: usualVariation.pupa, ...common },
  ],
  hang: null,
  darkening: null,
  stageCorrelation: usualStageCorrelation,
  handling: ["not-native-in-places"],
  remarks: [
    "Whole life in the same source: base 11.76 °C and 244.3 degree-days.",
    "Obrycki & Tauber 1981 (Ann. Ent. Soc. Am. 74:31-36, abstract read) have 12.1 °C and 197, with fastest development at 26.7 to 29.4 °C.",
  ],
};
