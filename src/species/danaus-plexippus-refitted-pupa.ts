import { danausPlexippus } from "./danaus-plexippus.ts";
import type { LifeCycle } from "./life-cycle.ts";
import { MONARCH_REMARKS } from "./monarch-remarks.ts";
import { sourced } from "./sourced.ts";

const refitted = sourced(
  "open data",
  "fitted here to five constant temperatures of Ragonese et al. 2024 (mtemp_comp_Nov1_2021.csv), base 11.5 °C kept",
)(127.8);

/**
 * Monarch with the pupal constant fitted to open rearing figures; egg and larva as in {@link danausPlexippus}.
 * The fit is redone from its rows in tests/species/pupal-fit.test.ts.
 */
export const danausPlexippusRefittedPupa: LifeCycle = {
  ...danausPlexippus,
  species: "danaus-plexippus-refitted-pupa",
  commonName: "monarch (pupa refitted)",
  stages: danausPlexippus.stages.map((needs) =>
    needs.stage === "pupa"
      ? {
          ...needs,
          degreeDays: refitted,
          tested: {
            low: 18,
            high: 34,
            mark: "open data",
            source: "Ragonese et al. 2024, constant incubators",
          },
        }
      : needs,
  ),
  remarks: [
    MONARCH_REMARKS.fromMemory,
    MONARCH_REMARKS.abovePulses,
    MONARCH_REMARKS.heldHeat,
    "The pupa is longer than in danaus-plexippus: closer to outdoor summer pupae and to 18 and 34 °C, but 10 % too long at a constant 26 °C.",
    "The 22 °C group of the fitted data was slow, and pulls the constant up.",
    MONARCH_REMARKS.hostAndSeason,
  ],
};
