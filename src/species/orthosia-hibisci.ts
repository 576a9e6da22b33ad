import type { LifeCycle } from "./life-cycle.ts";
import { sourced } from "./sourced.ts";
import { usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const judd = sourced("read", "Judd et al. 1994, Can. Ent. 126:1263-1275, abstract read (medians)");
const common = { upper: null, cutoff: "none", tested: null } as const;

/** Speckled green fruitworm, five instars, low bases: a moth of early spring. */
export const orthosiaHibisci: LifeCycle = {
  species: "orthosia-hibisci",
  latinName: "Orthosia hibisci",
  commonName: "speckled green fruitworm",
  host: null,
  region: null,
  stages: [
    { stage: "egg", degreeDays: judd(99), lower: judd(3.4), cv: usualVariation.egg, ...common },
    { stage: "instar-1", degreeDays: judd(44.2), lower: judd(4.7), cv: usualVariation.instar, ...common },
    { stage: "instar-2", degreeDays: judd(51.5), lower: judd(2.9), cv: usualVariation.instar, ...common },
    { stage: "instar-3", degreeDays: judd(52.4), lower: judd(3.6), cv: usualVariation.instar, ...common },
    { stage: "instar-4", degreeDays: judd(57.1), lower: judd(3.5), cv: usualVariation.instar, ...common },
    { stage: "instar-5", degreeDays: judd(69.9), lower: judd(3.7), cv: usualVariation.lastInstar, ...common },
    { stage: "pupa", degreeDays: judd(61.3), lower: judd(2.8), cv: usualVariation.pupa, ...common },
  ],
  hang: null,
  darkening: null,
  stageCorrelation: usualStageCorrelation,
  handling: ["never-release"],
  remarks: [
    "The pupa overwinters (from memory), so its sum can only hold for what is left after winter: count it from spring, not from pupation.",
    "A two-parameter Weibull distribution described the stages in the same paper (r² 0.98 to 0.99, abstract read).",
  ],
};
