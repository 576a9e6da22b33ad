import { givenLifeCycle } from "../../species/given-life-cycle.ts";
import { publishedOn } from "../../species/is-species.ts";
import type { LifeCycle, Sourced } from "../../species/life-cycle.ts";
import { sourced } from "../../species/sourced.ts";

const practice = (about: string): ((value: number) => Sourced) =>
  sourced("common practice, no source", about);

/** What ends a season, unless told otherwise. */
export const SEASON_LIMITS = {
  /** Lowest temperature of a day, °C: the first day after midsummer that goes below it ends the season. */
  frostBelow: practice("the first frost ends the season: it takes the food plants before the animals")(0),
  /** Days in a row over which development is looked at. */
  stallDays: practice("two weeks without development count as its end")(14),
  /** Share of the way from egg to adult; where so many days bring less, development stands still. */
  stallShare: practice("less than a fiftieth of the way to adult in two weeks counts as standing still")(
    0.02,
  ),
} as const satisfies Record<string, Sourced>;

/** Days from emergence to the first eggs, by Latin name, where they were published. */
const PRE_LAYING: Readonly<Record<string, Sourced>> = {
  "Danaus plexippus": sourced(
    "read",
    "Zalucki 1981, Res. Popul. Ecol., doi 10.1007/BF02515634 (abstract read): laying begins 6 to 7 days after emergence",
  )(6.5),
};

/** Days from emergence to the first eggs, or `null` where nothing is known of the species. */
export function preLayingOf(lifeCycle: LifeCycle): Sourced | null {
  givenLifeCycle(lifeCycle);
  return publishedOn(lifeCycle, PRE_LAYING);
}

/** What is published on the end of breeding in autumn. */
export interface AutumnCue {
  /** One or two plain sentences. */
  readonly text: string;
  readonly mark: Sourced["mark"];
  readonly source: string;
}

const AUTUMN_CUES: Readonly<Record<string, AutumnCue>> = {
  "Danaus plexippus": {
    text: "In Minnesota and Wisconsin all wild males were in reproductive diapause by late August and all females by early September; shortening days, changing temperatures and old food plants together bring it on, and no single one of them did so in every animal.",
    mark: "read",
    source: "Goehring & Oberhauser 2002, Ecol. Entomol. 27:674-685 (abstract read)",
  },
};

/** What is published on the autumn of a species, or `null`. */
export function autumnCueOf(lifeCycle: LifeCycle): AutumnCue | null {
  return publishedOn(lifeCycle, AUTUMN_CUES);
}
