import { given, givenList } from "../../given.ts";
import { percentText } from "../../rearing/chance-text.ts";
import type { TemperatureUnit } from "../../units.ts";
import { longDate } from "../dates.ts";
import { displayUnit, unitOf } from "../display-unit.ts";
import type { StartRow } from "./start-rows.ts";

/** A start in words: its day, or the temperature of its room. */
export function startText(start: Pick<StartRow, "on" | "temperature">, unit?: TemperatureUnit): string {
  given(start, ["start"], "a start, such as a row of startRows", "on");
  const { on, temperature } = start;
  const { degree, temperature: shown } = displayUnit(unit);
  if (temperature === null) return longDate(on);
  // A room is chosen to a hundredth of a degree, so that it differs from its neighbours.
  return `${Math.round(shown(temperature) * 100) / 100}\u00a0${degree}`;
}

/** The chances of all starts in words: the best one, and how far from it the chance is still half as good. */
export function describeStarts(
  rows: readonly StartRow[],
  options: { readonly unit?: TemperatureUnit | undefined } = {},
): string {
  givenList(rows, ["rows"], "a list of rows");
  unitOf(options);
  const { unit } = options;
  const known = rows.flatMap((row) => (row.chance === null ? [] : [{ row, chance: row.chance }]));
  const best = known.find(({ row }) => row.rank === 1);
  if (best === undefined) return "No chance is known for any start.";
  const good = known.filter(({ chance }) => chance >= best.chance / 2);
  const [first, last] = [good[0] ?? best, good.at(-1) ?? best];
  const spread =
    best.chance === 0
      ? ""
      : ` The chance is at least half of that from ${startText(first.row, unit)} to ${startText(last.row, unit)}.`;
  const unknown = rows.length - known.length;
  const rest = unknown === 0 ? "" : ` For ${unknown} of them the chance is not known.`;
  const which = rows.length === 1 ? "The only start" : `The best of ${rows.length} starts`;
  return (
    `${which} is ${startText(best.row, unit)}, with a chance of ${percentText(best.chance)}; ` +
    `an animal is then too early with ${percentText(best.row.early ?? 0)} and too late with ${percentText(best.row.late ?? 0)}.${spread}${rest}`
  );
}
