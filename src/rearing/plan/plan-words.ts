import { stageName } from "../../species/stage-names.ts";
import type { CivilDay } from "../../time/civil-day.ts";
import type { PlanConflict, SentencePart } from "./day-plan-result.ts";
import type { StageCount } from "./stage-counts.ts";

/** A number of animals in a sentence: `about 3`, or `perhaps 1` below a half. */
export function about(animals: number): string {
  const whole = Math.round(animals);
  return whole < 1 ? "perhaps 1" : `about ${whole}`;
}

/** `about 3 pupae`, `perhaps 1 pupa`. */
export function aboutSome(animals: number, one: string, many: string): string {
  return `${about(animals)} ${Math.round(animals) > 1 ? many : one}`;
}

/** Leaves in a sentence, rounded up to what can be picked: `less than 1 leaf`, `1 leaf`, `7 leaves`. */
export function leavesText(leaves: number): string {
  if (leaves < 0.75) return "less than 1 leaf";
  const whole = wholeLeaves(leaves);
  return `${whole} ${whole === 1 ? "leaf" : "leaves"}`;
}

/** Leaves to pick: whole ones. */
export function wholeLeaves(leaves: number): number {
  return Math.ceil(leaves - 1e-6);
}

/** `1 second, 8 third instar`, of those that round to one animal or more. */
export function stagesText(counts: readonly StageCount[]): string {
  return (
    counts
      // "4 larvae (4 larva)" would say nothing.
      .filter(({ stage, animals }) => stage !== "larva" && Math.round(animals) >= 1)
      .map(({ stage, animals }) => `${Math.round(animals)} ${stageName(stage)}`)
      .join(", ")
      .replaceAll(" instar,", ",")
  );
}

/** Days in a sentence: `2026-07-04`, `2026-07-04 and 2026-07-05`, `2026-07-04 to 2026-07-07`. */
export function daysWords(days: readonly CivilDay[]): SentencePart[] {
  const [first = "", second] = days;
  const last = days.at(-1) ?? first;
  if (second === undefined) return [{ day: first }];
  return [{ day: first }, days.length === 2 ? " and " : " to ", { day: last }];
}

/** A conflict with its sentences as text too. */
export function planConflict(
  what: Omit<PlanConflict, "message" | "parts">,
  parts: readonly SentencePart[],
): PlanConflict {
  const message = parts.map((part) => (typeof part === "string" ? part : part.day)).join("");
  return { ...what, message, parts };
}

/** Names in a sentence: `porch`, `porch and shelf`, `balcony, porch and shelf`. */
export function namesText(names: readonly string[]): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} and ${last}`;
}
