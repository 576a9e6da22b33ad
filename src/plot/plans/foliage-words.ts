import { given } from "../../given.ts";
import { counted } from "../../plain-words.ts";
import type { FoliageOutlook } from "../../rearing/plan/foliage-outlook.ts";
import { longDate } from "../dates.ts";
import { short } from "../display-unit.ts";

/** A season's food in words: how much of it, when most, and how long what is at hand lasts. */
export function describeFoliage(outlook: FoliageOutlook): string {
  given(outlook, ["outlook"], "an outlook of a day plan", "days", "food");
  const leaves = (number: number): string => counted(Number(short(number)), "leaf", "leaves");
  const { food, total, margin, withMargin, peak, supplied, runsOut, runsOutEarly } = outlook;
  const most = outlook.days.find(({ day }) => day === peak);
  if (most === undefined) return `No leaves of ${food} are eaten.`;
  const need =
    `The larvae eat about ${leaves(total)} of ${food}; with a margin of ${short(margin)} for early or late animals ` +
    `that makes ${short(withMargin)}. Most are eaten on ${longDate(most.day)}: ${short(most.expected)}, ` +
    `or ${short(most.most)} if all the animals are at it at once.`;
  if (supplied === null) return need;
  const [last, run] = leaves(supplied) === "1 leaf" ? ["lasts", "runs"] : ["last", "run"];
  const there = `${need} The ${leaves(supplied)} at hand`;
  if (runsOut === null && runsOutEarly === null) return `${there} ${last}.`;
  const early = runsOutEarly === null ? "" : `, on ${longDate(runsOutEarly)} if all animals are early`;
  return runsOut === null
    ? `${there} ${last} as expected${early === "" ? "" : `, but ${run} out${early.slice(1)}`}.`
    : `${there} ${run} out on ${longDate(runsOut)}${early}.`;
}
