import type { StageId } from "./life-cycle.ts";

const STAGE_NAMES: Readonly<Record<StageId, string>> = {
  egg: "egg",
  larva: "larva",
  "instar-1": "first instar",
  "instar-2": "second instar",
  "instar-3": "third instar",
  "instar-4": "fourth instar",
  "instar-5": "fifth instar",
  prepupa: "prepupa (hanging)",
  pupa: "pupa",
  adult: "adult",
};

/** A stage as the trade names it, such as `third instar`. */
export function stageName(stage: StageId): string {
  return STAGE_NAMES[stage];
}
