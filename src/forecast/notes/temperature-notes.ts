import type { Note, NoteCode } from "../../notes.ts";
import { stageName } from "../../species/stage-names.ts";
import type { Origin } from "../../temperature/series.ts";
import { type NoteContext, note, usedDays } from "./note-context.ts";

const ORIGIN_NOTES: readonly (readonly [Origin, NoteCode, string])[] = [
  ["filled", "days-filled", "rest on temperatures filled into gaps"],
  ["estimated", "temperatures-estimated", "are estimated for the room from a station"],
  ["forecast", "temperatures-forecast", "rest on a weather forecast"],
  ["past-year", "temperatures-past-years", "rest on the same season of past years"],
  ["normal", "temperatures-normal", "rest on the normal temperatures of past years, not on this year's"],
  ["assumed", "temperatures-assumed", "rest on a temperature that is assumed to be held"],
];

/** What a log taught. */
export function learnedNotes({ learned }: NoteContext): Note[] {
  if (learned === undefined) return [];
  const { pace, offset, from, used } = learned;
  const percentOf = (value: number): string => (value * 100).toFixed(0);
  const warmer =
    offset === null
      ? ""
      : ` Their temperature is ${offset.middle.toFixed(1)} °C above the one given (${offset.low.toFixed(1)} to ${offset.high.toFixed(1)}).`;
  const on = from === null ? "" : ` The forecast goes on from the ${stageName(from.stage)} that was seen.`;
  return [
    note(
      "learned-from-log",
      `From ${used.length} ${used.length === 1 ? "entry" : "entries"} of the log: these animals need ${percentOf(pace.middle)} % of what the constants say (${percentOf(pace.low)} to ${percentOf(pace.high)} %).${warmer}${on}`,
    ),
    ...learned.notes,
  ];
}

/** What an ensemble is made of. */
export function weatherNotes({ temperatures }: NoteContext): Note[] {
  return temperatures.kind === "ensemble"
    ? [note("weather-ensemble", `${temperatures.about} The windows carry it.`)]
    : [];
}

/** Days that do not rest on readings. */
export function originNotes(context: NoteContext): Note[] {
  const { table, zone } = context;
  const used = usedDays(context);
  const days = new Map<Origin, { readonly first: number; last: number; count: number }>();
  for (let i = 0; i < used; i++) {
    const origin = table?.origin[i];
    if (origin === undefined || origin === "observed") continue;
    const known = days.get(origin);
    if (known === undefined) days.set(origin, { first: i, last: i, count: 1 });
    else {
      known.last = i;
      known.count++;
    }
  }
  const notes = ORIGIN_NOTES.flatMap(([origin, code, text]) => {
    const found = days.get(origin);
    if (found === undefined) return [];
    const [first, last] = [table?.days[found.first], table?.days[found.last]];
    const span = first === last ? first : `${first} to ${last}`;
    return [note(code, `${found.count} of ${used} days (${span}) ${text}.`)];
  });
  if (zone === null) {
    notes.push(
      note(
        "local-clock",
        "No time zone was given: times are those of the clock that the temperatures were kept by, every day has 24 hours.",
      ),
    );
  }
  return notes;
}
