import type { LifeCycle } from "./life-cycle.ts";
import { BUCKLEY_2017, sourced } from "./sourced.ts";
import { usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const lamana = sourced(
  "second-hand",
  `LaMana & Miller 1998, Env. Ent. 27:1001-1005, as quoted in ${BUCKLEY_2017}`,
);
const common = {
  lower: sourced(
    "read",
    "11.2 in the abstract of La Mana's thesis; LaMana & Miller 1998, Env. Ent. 27:1001-1005",
  )(11.2),
  upper: null,
  cutoff: "none",
  tested: null,
} as const;

/** Harlequin ladybird, four instars on one base. */
export const harmoniaAxyridis: LifeCycle = {
  species: "harmonia-axyridis",
  latinName: "Harmonia axyridis",
  commonName: "harlequin ladybird",
  host: null,
  region: null,
  stages: [
    { stage: "egg", degreeDays: lamana(41.3), cv: usualVariation.egg, ...common },
    { stage: "instar-1", degreeDays: lamana(37), cv: usualVariation.instar, ...common },
    { stage: "instar-2", degreeDays: lamana(24.5), cv: usualVariation.instar, ...common },
    { stage: "instar-3", degreeDays: lamana(28.5), cv: usualVariation.instar, ...common },
    { stage: "instar-4", degreeDays: lamana(69), cv: usualVariation.lastInstar, ...common },
    { stage: "pupa", degreeDays: lamana(67), cv: usualVariation.pupa, ...common },
  ],
  hang: null,
  darkening: null,
  stageCorrelation: usualStageCorrelation,
  handling: ["never-release", "not-native-in-places"],
  remarks: [
    "Stages fitted with a base of their own: egg 11.0 °C and 42.6, larva 11.1 and 156, pupa 11.4 and 66.6 degree-days (same source).",
    "Ramos et al. 2014 (Adv. Ent. 2:42-46, abstract read) have 12.4 °C and 243.9 for the whole life.",
    "The prepupa is part of the fourth instar.",
  ],
};
