import type { MilestoneId } from "../../forecast/chance.ts";

/** What an animal does when it reaches a milestone: without `to`, and of a single one. */
const DEEDS: Readonly<Record<MilestoneId, readonly [verb: string, single: string]>> = {
  egg: ["be laid", "is laid"],
  larva: ["hatch", "hatches"],
  "instar-1": ["hatch", "hatches"],
  "instar-2": ["molt to the second instar", "molts to the second instar"],
  "instar-3": ["molt to the third instar", "molts to the third instar"],
  "instar-4": ["molt to the fourth instar", "molts to the fourth instar"],
  "instar-5": ["molt to the fifth instar", "molts to the fifth instar"],
  prepupa: ["hang", "hangs"],
  pupa: ["pupate", "pupates"],
  darkening: ["turn dark", "turns dark"],
  adult: ["emerge", "emerges"],
};

/** A milestone as something to do, such as `emerge`. */
export function deedOf(milestone: MilestoneId): string {
  return DEEDS[milestone][0];
}

/** What one animal does at a milestone, such as `emerges`. */
export function deedOfOne(milestone: MilestoneId): string {
  return DEEDS[milestone][1];
}
