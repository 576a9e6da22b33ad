import { InputError, shown } from "../../errors.ts";
import type { MilestoneId } from "../../forecast/chance.ts";
import { plainWord, stageNamed, stageOffer } from "../../read/table/stage-words.ts";
import type { LifeCycle, StageId } from "../../species/life-cycle.ts";
import type { Given } from "./arguments.ts";

const DARKENING = ["darkening", "darken", "darkens", "dark"];

/**
 * The stage that `--found` names, in the words that a log may use too.
 * @throws {InputError} `invalid-option` when it is not given; `unknown-stage`, with near words.
 */
export function givenFound(given: Given, lifeCycle: LifeCycle): StageId {
  const text = given.needed("found", "the stage they were found in, such as egg");
  const stage = stageNamed(text, hatchesAs(lifeCycle));
  if (stage !== null) return stage;
  throw unknown("found", text, stageOffer(text));
}

/**
 * What `--milestone` names: a stage or an event, in the words that a log may use too.
 * @throws {InputError} `unknown-stage`, with near words.
 */
export function givenMilestone(given: Given, lifeCycle: LifeCycle): MilestoneId | undefined {
  const text = given.text("milestone");
  if (text === undefined) return undefined;
  if (DARKENING.includes(plainWord(text))) return "darkening";
  const stage = stageNamed(text, hatchesAs(lifeCycle));
  if (stage !== null) return stage;
  throw unknown("milestone", text, stageOffer(text, DARKENING));
}

/** What hatches from the eggs of a species. */
export function hatchesAs({
  stages,
}: {
  readonly stages: readonly { readonly stage: StageId }[];
}): "larva" | "instar-1" {
  return stages.some(({ stage }) => stage === "larva") ? "larva" : "instar-1";
}

function unknown(name: string, text: string, remedy: string): InputError {
  return new InputError("unknown-stage", `--${name} is ${shown(text)}; ${remedy}`, {
    path: [name],
    value: text,
  });
}
