import { InputError, shown } from "../errors.ts";
import { STAGE_IDS, type StageId } from "./life-cycle.ts";

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

/**
 * A stage as the trade names it, such as `third instar`.
 * @throws {InputError} `unknown-stage`.
 */
export function stageName(stage: StageId): string {
  if (STAGE_IDS.includes(stage)) return STAGE_NAMES[stage];
  throw new InputError(
    "unknown-stage",
    `the stage is ${shown(stage)}; it must be one of ${STAGE_IDS.join(", ")}.`,
    {
      path: ["stage"],
      value: stage,
    },
  );
}
