import type { Note } from "../../notes.ts";
import { stageName } from "../../species/stage-names.ts";
import { highestOf } from "../clocks/absence.ts";
import { constantNotes } from "./constant-notes.ts";
import { type NoteContext, note } from "./note-context.ts";
import { learnedNotes, originNotes, weatherNotes } from "./temperature-notes.ts";
import { testedNotes } from "./tested-notes.ts";

/** Everything that a reader of a forecast must know before trusting it. */
export function forecastNotes(context: NoteContext): Note[] {
  return [
    ...absenceNotes(context),
    ...ageNotes(context),
    ...learnedNotes(context),
    ...weatherNotes(context),
    ...originNotes(context),
    ...testedNotes(context),
    ...frostNotes(context),
    ...methodNotes(context),
    ...constantNotes(context),
  ];
}

function absenceNotes({ stages, clocks }: NoteContext): Note[] {
  const [first] = stages.filter(({ absence }) => absence !== null);
  if (first?.absence == null) return [];
  const { reason, message } = first.absence;
  if (reason === "too-cold") return [note("never-develops", message)];
  const highest = Math.max(...clocks.map(highestOf));
  return [
    note(
      "series-ends-first",
      `${message} From the ${stageName(first.stage)} on, dates are missing or incomplete. The highest temperature is ${highest.toFixed(1)} °C.`,
    ),
  ];
}

function ageNotes({ path, lifeCycle, timeAssumed }: NoteContext): Note[] {
  const notes: Note[] = [];
  const { from, to } = path.age;
  const stage = lifeCycle.stages[path.period]?.stage ?? "egg";
  if (to > from) {
    notes.push(
      note(
        "unknown-age",
        `The age within the stage it was found in (${stageName(stage)}) is not known: anything from ${percent(from)} to ${percent(to)} % of the stage done is taken as equally likely, and the windows carry it.`,
      ),
    );
  }
  if (timeAssumed) {
    notes.push(
      note("time-of-day-assumed", "The find has a day but no time; it is counted from noon of that day."),
    );
  }
  return notes;
}

function frostNotes({ clocks, usedUntil }: NoteContext): Note[] {
  let lowest = Infinity;
  for (const { start, end, from } of clocks[0]?.timeline.arcs ?? []) {
    if (from >= usedUntil) break;
    if (start < lowest) lowest = start;
    if (end < lowest) lowest = end;
  }
  if (lowest >= 0) return [];
  return [
    note(
      "frost",
      `Temperatures fall to ${lowest.toFixed(1)} °C before the last of these dates. Cold that kills is not reckoned with.`,
    ),
  ];
}

function methodNotes({ method, clocks, usedUntil }: NoteContext): Note[] {
  const end = clocks[0]?.timeline.to;
  if (!method.startsWith("double-") || end === undefined || usedUntil < end) return [];
  return [
    note(
      "last-day-without-next-minimum",
      "The last day has no next day's minimum; its own minimum was used for the second half.",
    ),
  ];
}

function percent(share: number): string {
  return String(Math.round(share * 100));
}
