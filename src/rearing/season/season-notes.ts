import type { Note, NoteCode } from "../../notes.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import { autumnCueOf } from "./season-limits.ts";
import type { SeasonOutlook } from "./season-result.ts";

/** What a reader of a season must know before trusting it. */
export function seasonNotes(
  outlook: Omit<SeasonOutlook, "notes">,
  lifeCycle: LifeCycle,
  hemisphereBy: "given" | "place" | "record",
): Note[] {
  return [
    ...recordNotes(outlook, hemisphereBy),
    ...firstEggNotes(outlook),
    ...broodNotes(outlook, lifeCycle),
    ...endNotes(outlook),
    ...autumnNotes(outlook, lifeCycle),
  ];
}

function note(code: NoteCode, message: string): Note {
  return { code, message };
}

function recordNotes(
  { years, leftOut, hemisphere, level }: Omit<SeasonOutlook, "notes">,
  hemisphereBy: string,
): Note[] {
  const notes: Note[] = [];
  if (years.length < 10)
    notes.push(
      note(
        "few-years",
        `${years.length === 1 ? "One year says" : `${years.length} years say`} little of what may come: the ${Number((level * 100).toPrecision(4))} % intervals of the shares show how little. Years that grow warmer or cooler are not reckoned with.`,
      ),
    );
  if (leftOut.length > 0)
    notes.push(
      note(
        "years-left-out",
        `Left out, because the temperatures do not cover them from midwinter to the season's end: ${leftOut.join(", ")}.`,
      ),
    );
  if (hemisphereBy === "record")
    notes.push(
      note(
        "season-side-assumed",
        `Taken for the ${hemisphere}ern hemisphere, because ${hemisphere === "north" ? "June to August are" : "December to February are"} warmer in these years. Name the place or the hemisphere where that is wrong.`,
      ),
    );
  return notes;
}

function firstEggNotes({ firstEggsBy }: Omit<SeasonOutlook, "notes">): Note[] {
  if (firstEggsBy === "date") return [];
  return [
    note(
      "first-eggs-by-temperature",
      firstEggsBy === "temperature"
        ? "The first eggs are dated by temperature alone: from then on an egg would develop. Whether females are there, or food plants, it does not know. Give the date on which you see the first ones to have it counted from there."
        : "The first eggs are dated by degree-days since midwinter. Whether females are there, or food plants, it does not know.",
    ),
  ];
}

function broodNotes({ preLaying }: Omit<SeasonOutlook, "notes">, { latinName }: LifeCycle): Note[] {
  if (preLaying === null)
    return [
      note(
        "pre-laying-unknown",
        `How long ${latinName} lives before it lays is not at hand, so only the first brood is reckoned. Give the days from emergence to the first eggs to go on.`,
      ),
    ];
  return [
    note(
      "broods-at-the-middle-pace",
      `A brood is counted from its first eggs to the emergence of their middle animal; the next one begins ${preLaying.value} days later (${preLaying.source}; ${preLaying.mark}). In the field broods overlap, and migration, heat and lack of plants make them fewer.`,
    ),
  ];
}

function endNotes({ years, frostBelow }: Omit<SeasonOutlook, "notes">): Note[] {
  const notes: Note[] = [];
  if (years.some(({ endsBy }) => endsBy === "nothing"))
    notes.push(
      note(
        "warm-all-year",
        `Nothing ends the season in ${years.flatMap(({ endsBy, label }) => (endsBy === "nothing" ? [label] : [])).join(", ")}: no frost below the limit and no lasting stop of development up to the next midsummer. Broods are counted up to midwinter.`,
      ),
    );
  if (frostBelow !== null)
    notes.push(
      note(
        "frost-and-plants",
        `A frost below ${frostBelow} °C after midsummer is taken as the end. That limit is common practice without a source: frost mostly ends the food plants, and animals can die earlier, in long cold, or outlive it. Frosts in spring are not looked at.`,
      ),
    );
  return notes;
}

function autumnNotes({ broods }: Omit<SeasonOutlook, "notes">, lifeCycle: LifeCycle): Note[] {
  const shortening = broods.filter(({ dayLength }) => dayLength !== null && dayLength.minutesAWeek < 0);
  const cue = autumnCueOf(lifeCycle);
  const [first, last] = [shortening[0], shortening.at(-1)];
  if (first === undefined && cue === null) return [];
  const when =
    first === undefined || last?.dayLength == null
      ? "Adults that emerge late in the season, in shortening days, may not lay any more that year."
      : `The days already grow shorter when adults of brood ${first.number} emerge${last === first ? "" : `, and still more so for brood ${last.number}`} (day length ${last.dayLength.hours.toFixed(1)} h, ${Math.abs(last.dayLength.minutesAWeek).toFixed(0)} minutes less a week). The later they emerge, the likelier they lay no more that year.`;
  return [
    note(
      "shortening-days",
      `${when} This is not reckoned with, so the last broods here may not come.${cue === null ? "" : ` ${cue.text} (${cue.source}.)`}`,
    ),
  ];
}
