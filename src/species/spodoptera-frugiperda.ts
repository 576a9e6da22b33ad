import type { LifeCycle, TestedRange } from "./life-cycle.ts";
import { sourced } from "./sourced.ts";
import { usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const paper = "Du Plessis et al. 2020, Insects 11:228";
const threshold = sourced("read", `${paper}, abstract read`);
const sum = sourced("from memory", paper);
const tested: TestedRange = {
  low: 18,
  high: 30,
  mark: "read",
  source: `${paper}, abstract read: linear range`,
};
const common = { upper: null, cutoff: "none", tested } as const;

/** Fall armyworm, a base for each stage. */
export const spodopteraFrugiperda: LifeCycle = {
  species: "spodoptera-frugiperda",
  latinName: "Spodoptera frugiperda",
  commonName: "fall armyworm",
  host: null,
  region: null,
  stages: [
    { stage: "egg", degreeDays: sum(35.68), lower: threshold(13.01), cv: usualVariation.egg, ...common },
    { stage: "larva", degreeDays: sum(204.6), lower: threshold(12.12), cv: usualVariation.larva, ...common },
    { stage: "pupa", degreeDays: sum(150.54), lower: threshold(13.06), cv: usualVariation.pupa, ...common },
  ],
  hang: null,
  darkening: null,
  stageCorrelation: usualStageCorrelation,
  handling: ["never-release"],
  remarks: [
    "The sums are from memory; the pupal one agrees with the 30.68 days at 18 °C of the abstract.",
    "Another study has one base of 12.95 °C for all stages, extra instars below 25 °C, and slowing between 33 and 35.5 °C (Ali et al. 1990, abstract read, author names from memory).",
  ],
};
