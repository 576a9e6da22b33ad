import { type LogEntry, type LogFate, fateOf } from "../../cohort/log.ts";
import type { StageId } from "../../species/life-cycle.ts";
import type { Milestone } from "../question/life-path.ts";

/** Animals of the find that had begun a stage, and those that had not when it was last logged. */
export function animalsMissing(
  entries: readonly LogEntry[],
  stages: readonly Milestone[],
  { id }: Milestone,
  count: number | undefined,
): { begun: number; missing: number } {
  const inStage = (stage: StageId | "darkening", fates: readonly LogFate[]): number =>
    entries.reduce(
      (sum, entry) => sum + (entry.stage === stage && fates.includes(fateOf(entry)) ? entry.count : 0),
      0,
    );
  const begun = inStage(id, ["seen"]);
  const later = stages.slice(stages.findIndex((one) => one.id === id) + 1);
  if (count === undefined || later.some((one) => inStage(one.id, ["seen"]) > begun))
    return { begun, missing: 0 };
  // Who died or was lost before this stage is not waited for.
  const gone = entries.reduce((sum, entry) => {
    const before =
      stages.findIndex((one) => one.id === entry.stage) < stages.findIndex((one) => one.id === id);
    return sum + (fateOf(entry) !== "seen" && before ? entry.count : 0);
  }, 0);
  return { begun, missing: Math.max(0, count - begun - gone) };
}
