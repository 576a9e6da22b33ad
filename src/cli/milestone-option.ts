import { InputError, nearestNames, shown } from "../errors.ts";
import type { MilestoneId } from "../forecast/chance.ts";
import { STAGE_WORDS } from "../read/index.ts";
import { type LifeCycle, STAGE_IDS } from "../species/life-cycle.ts";
import type { Given } from "./arguments.ts";

/**
 * What `--milestone` names: a stage or an event, in the words that a log may use too.
 * @throws {InputError} `unknown-stage`, with near words.
 */
export function givenMilestone(given: Given, { stages }: LifeCycle): MilestoneId | undefined {
  const text = given.text("milestone");
  if (text === undefined) return undefined;
  const word = text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, " ");
  if (HATCHING.includes(word)) return stages.some(({ stage }) => stage === "larva") ? "larva" : "instar-1";
  if (DARKENING.includes(word)) return "darkening";
  const stage = STAGE_WORDS.get(word);
  if (stage !== undefined) return stage;
  const near = nearestNames(word, [...STAGE_WORDS.keys(), ...HATCHING, ...DARKENING]);
  const remedy =
    near.length > 0 ? `did you mean ${near.join(" or ")}?` : `it must be one of ${STAGE_IDS.join(", ")}.`;
  throw new InputError("unknown-stage", `--milestone is ${shown(text)}; ${remedy}`, {
    path: ["milestone"],
    value: text,
  });
}

const HATCHING = ["hatch", "hatching", "hatched"];
const DARKENING = ["darkening", "darken", "darkens", "dark"];
