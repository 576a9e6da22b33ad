import type { LifeCycle } from "./life-cycle.ts";
import { BUCKLEY_2017, sourced } from "./sourced.ts";
import { usualDarkening, usualStageCorrelation, usualVariation } from "./usual-variation.ts";

const godin = `Godin & Boivin 1998, Can. Ent. 130:173-185, as quoted in ${BUCKLEY_2017}`;

// No stage sums were found. Raw shares over base 10 °C: the instars took 4.5, 3.0, 3.3, 4.1 and 7.8 d at 19 °C,
// the summer pupa about 11 d (its temperature is not given; 19 °C is assumed), and the egg is set to the pupa
// as 68.6 to 161 in Pieris brassicae. All are then scaled by one factor to the whole-life 319.7.
const share = sourced(
  "derived",
  `whole-life 319.7 of ${godin}, split by stage days of Capinera, UF/IFAS EENY (copy read); pupal temperature assumed`,
);
const egg = sourced(
  "derived",
  `whole-life 319.7 of ${godin}; egg to pupa as in Pieris brassicae (David & Gardiner 1962)`,
);
const common = {
  lower: sourced("second-hand", godin)(10),
  upper: null,
  cutoff: "none",
  tested: null,
} as const;

/** Small white: one base, the whole-life sum split into stages by their days. */
export const pierisRapae: LifeCycle = {
  species: "pieris-rapae",
  latinName: "Pieris rapae",
  commonName: "small white",
  host: null,
  region: null,
  stages: [
    { stage: "egg", degreeDays: egg(39), cv: usualVariation.egg, ...common },
    { stage: "instar-1", degreeDays: share(37.5), cv: usualVariation.instar, ...common },
    { stage: "instar-2", degreeDays: share(25), cv: usualVariation.instar, ...common },
    { stage: "instar-3", degreeDays: share(27.5), cv: usualVariation.instar, ...common },
    { stage: "instar-4", degreeDays: share(34.1), cv: usualVariation.instar, ...common },
    { stage: "instar-5", degreeDays: share(65), cv: usualVariation.lastInstar, ...common },
    { stage: "pupa", degreeDays: share(91.6), cv: usualVariation.pupa, ...common },
  ],
  hang: sourced(
    "common practice, no source",
    "about a day, girdled, before the larval skin is shed: 1.08 d at 19 °C",
  )(0.15),
  darkening: usualDarkening,
  stageCorrelation: usualStageCorrelation,
  handling: ["never-release", "not-native-in-places"],
  remarks: [
    "Only the whole-life sum and the base are published; the split into stages is ours and its stage dates are less certain than the adult's.",
    "Base 10 °C is also given by Jones et al. 1987 (Aust. J. Zool. 35:235-246, abstract read).",
    "Pupae may enter diapause and then do not follow this clock (Capinera, UF/IFAS EENY, copy read).",
  ],
};
