import { given } from "../../given.ts";
import type { FoliageOutlook } from "../../rearing/plan/foliage-outlook.ts";
import { longDate } from "../dates.ts";
import { short } from "../display-unit.ts";

/** A season's food in words: how much of it, when most, and how long what is at hand lasts. */
export function describeFoliage(outlook: FoliageOutlook): string {
  given(outlook, ["outlook"], "an outlook of a day plan", "days", "food");
  const { food, total, margin, withMargin, peak, supplied, runsOut, runsOutEarly } = outlook;
  const most = outlook.days.find(({ day }) => day === peak);
  if (most === undefined) return `No leaves of ${food} are eaten.`;
  const need =
    `The larvae eat about ${short(total)} leaves of ${food}; with a margin of ${short(margin)} for early or late animals ` +
    `that makes ${short(withMargin)}. Most are eaten on ${longDate(most.day)}: ${short(most.expected)}, ` +
    `or ${short(most.most)} if all the animals are at it at once.`;
  if (supplied === null) return need;
  if (runsOut === null && runsOutEarly === null) return `${need} The ${short(supplied)} leaves at hand last.`;
  const early = runsOutEarly === null ? "" : `, on ${longDate(runsOutEarly)} if all animals are early`;
  return runsOut === null
    ? `${need} The ${short(supplied)} leaves at hand last as expected${early === "" ? "" : `, but run out${early.slice(1)}`}.`
    : `${need} The ${short(supplied)} leaves at hand run out on ${longDate(runsOut)}${early}.`;
}
