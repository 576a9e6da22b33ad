import { DAY_MS, type Zone, formatInstant } from "../../time/zone.ts";
import type { StageClock } from "./stage-clock.ts";
import type { Absence } from "../question/result.ts";

/** Nobody waits longer: a temperature held for ever is followed for a hundred years. */
const LONGEST_WAIT_MS = 36_000 * DAY_MS;

/** Why a milestone that runs on some clocks is not reached. */
export function absenceOf(clocks: readonly StageClock[], zone: Zone): Absence {
  // Behind a gap there may be warmth: only temperatures that were all seen can be too cold.
  const cold = clocks.find(({ clock, timeline }) => clock.total === 0 && timeline.endedBy === "series-ends");
  if (cold !== undefined) {
    const { lower } = cold.response;
    return {
      reason: "too-cold",
      message: `No development: the highest temperature is ${highestOf(cold).toFixed(1)} °C and the lower threshold ${lower} °C.`,
    };
  }
  const ending = clocks[0]?.timeline;
  if (ending !== undefined && ending.to - ending.from > LONGEST_WAIT_MS)
    return {
      reason: "series-ends",
      message: "It is not reached within a hundred years at these temperatures.",
    };
  const until = ending === undefined ? "" : formatInstant(ending.to, zone).slice(0, 16).replace("T", " ");
  return ending?.endedBy === "gap"
    ? {
        reason: "gap",
        message: `There is a gap in the temperatures from ${until} on; fill it to see further.`,
      }
    : {
        reason: "series-ends",
        message: `The temperatures end at ${until}; later ones are needed to see further.`,
      };
}

/** Highest temperature that the animals of a clock feel, °C. */
export function highestOf({ timeline, offset }: StageClock): number {
  return timeline.arcs.reduce((highest, { start, end }) => Math.max(highest, start, end), -Infinity) + offset;
}
