import { given } from "../../given.ts";
import type { Forecast, Window } from "../../forecast/question/result.ts";
import type { NoteCode } from "../../notes.ts";
import { capitalised, counted } from "../../plain-words.ts";
import type { Caution } from "../../rearing/cautions.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import { cautionsText, notesText } from "../layout/remarks-text.ts";
import {
  columns,
  dayLabel,
  daysThrough,
  fullDayLabel,
  inSeveralYears,
  isMonday,
  pageOf,
  wrapped,
} from "../layout/text-layout.ts";

/** What animals do when a stage begins, in plain words: the verb, and what may follow it. */
const HAPPENS: Readonly<Record<StageId | "darkening", readonly [verb: string, rest: string]>> = {
  egg: ["be laid", ""],
  larva: ["hatch", ""],
  "instar-1": ["hatch", ""],
  "instar-2": ["molt to", "second instar"],
  "instar-3": ["molt to", "third instar"],
  "instar-4": ["molt to", "fourth instar"],
  "instar-5": ["molt to", "fifth instar"],
  prepupa: ["hang", ""],
  pupa: ["pupate", ""],
  darkening: ["turn dark", ""],
  adult: ["emerge", ""],
};

const WHY_MISSING: readonly NoteCode[] = ["series-ends-first", "never-develops"];

interface Event {
  readonly id: StageId | "darkening";
  readonly begins: Window;
}

/**
 * A forecast as a calendar to pin to a wall: what begins when, then day by day, then cautions and notes.
 * Plain text, at most 80 columns, no colour.
 * @param options.cautions Cautions that fit the species; they are printed in full.
 */
export function calendarText(forecast: Forecast, options: { cautions?: readonly Caution[] } = {}): string {
  given(forecast, ["forecast"], "a forecast, as forecast returns it", "stages", "found", "notes", "tables");
  given(options, ["options"], "an object of options");
  const events = eventsOf(forecast);
  const { found, commonName, latinName } = forecast;
  // Why dates are missing is said where they are missing, not three screens further down.
  const missing = forecast.notes.filter(({ code }) => WHY_MISSING.includes(code));
  const others = forecast.notes.filter((note) => !missing.includes(note));
  const page = [
    wrapped(`${capitalised(commonName)} (${latinName})`),
    wrapped(`${foundAnimals(found)} found on ${fullDayLabel(found.at.slice(0, 10))}`),
    "",
    "WHAT BEGINS WHEN",
    windowTable(events),
    "",
    ...missing.map(({ message }) => `${wrapped(message)}\n`),
    wrapped(sharesSentence(forecast)),
    "",
    "DAY BY DAY",
    dayList(forecast, events),
  ].join("\n");
  return pageOf([page, cautionsText(options.cautions ?? []), notesText(others)]);
}

/** Stages and signs in the order of life. */
function eventsOf({ stages, signs }: Forecast): Event[] {
  return stages.flatMap((stage): Event[] => {
    const event = { id: stage.stage, begins: stage.begins };
    const before = stage.stage === "adult" ? signs.map(({ sign, begins }) => ({ id: sign, begins })) : [];
    return [...before, event];
  });
}

function windowTable(events: readonly Event[]): string {
  const several = inSeveralYears(
    events.flatMap(({ begins }) => [begins.early, begins.expected, begins.late]),
  );
  const cell = (instant: string | null): string => {
    if (instant === null) return "not known";
    const label = dayLabel(instant.slice(0, 10));
    return several ? `${label} ${instant.slice(0, 4)}` : label;
  };
  const rows = events.map(({ id, begins }) => [
    id === "darkening" ? "  pupa darkens" : `  ${stageName(id)}`,
    cell(begins.early),
    cell(begins.expected),
    cell(begins.late),
  ]);
  return columns([["", "early", "expected", "late"], ...rows]);
}

function sharesSentence({ shares }: Forecast): string {
  const [early, expected, late] = shares.map((share) => `${Number((share * 100).toPrecision(3))} %`);
  return `Of many such animals ${early} are there by the early date, ${expected} by the expected one and ${late} by the late one.`;
}

/** Days in a row that say the same are one line from this many on, or a cold spell would fill pages. */
const LONG_RUN_DAYS = 22;

function dayList({ found }: Forecast, events: readonly Event[]): string {
  // Not `on`, whose offset may be that of another zone.
  const first = found.at.slice(0, 10);
  const instants = events.flatMap(({ begins }) => [begins.early, begins.expected, begins.late]);
  const last = lastOf(instants) ?? first;
  const lines: string[] = [];
  let year = first.slice(0, 4);
  for (const { text, days } of runsOf(first, last, events)) {
    const [from = first] = days;
    const to = days.at(-1) ?? from;
    if (days.length >= LONG_RUN_DAYS) {
      const span = `  ${fullDayLabel(from)} to ${fullDayLabel(to)}  `;
      lines.push("", wrapped(text === "" ? "nothing due" : text, { first: span, rest: HANGING }));
    } else {
      for (const day of days) {
        if (isMonday(day) && day !== first) lines.push("");
        if (day.slice(0, 4) !== year) lines.push(`  ${day.slice(0, 4)}`);
        year = day.slice(0, 4);
        lines.push(wrapped(text, { first: `  ${dayLabel(day)}  `, rest: HANGING }).trimEnd());
      }
    }
    year = to.slice(0, 4);
  }
  if (instants.includes(null)) lines.push("", "  What comes later is not known.");
  return lines.join("\n");
}

const HANGING = " ".repeat(14);

function lastOf(instants: readonly (string | null)[]): string | undefined {
  return instants
    .flatMap((one) => (one === null ? [] : [one.slice(0, 10)]))
    .sort()
    .at(-1);
}

/** Days from the find on, those in a row that say the same together. */
function runsOf(first: string, last: string, events: readonly Event[]): { text: string; days: string[] }[] {
  const runs: { text: string; days: string[] }[] = [];
  for (const day of daysThrough(first, last)) {
    const text = [...(day === first ? ["found"] : []), ...onDay(events, day)].join("; ");
    const run = runs.at(-1);
    if (run?.text === text) run.days.push(day);
    else runs.push({ text, days: [day] });
  }
  return runs;
}

/** What a calendar day has to say: what is expected on it, then what may happen on it. */
function onDay(events: readonly Event[], day: string): string[] {
  const expected = events.filter(({ begins }) => dayOf(begins.expected) === day);
  const possible = events.filter((event) => !expected.includes(event) && mayBegin(event.begins, day));
  return [
    ...(expected.length > 0 ? [`EXPECTED: ${deeds(expected)}`] : []),
    ...(possible.length > 0 ? [`may ${deeds(possible)}`] : []),
  ];
}

function mayBegin({ early, late }: Window, day: string): boolean {
  // Without a late date it may still happen on any later day.
  const [from, to] = [dayOf(early), dayOf(late)];
  return from !== null && day >= from && (to === null || day <= to);
}

function dayOf(instant: string | null): string | null {
  return instant === null ? null : instant.slice(0, 10);
}

/** Several things that may happen, such as `molt to third or fourth instar, hang`. */
function deeds(events: readonly Event[]): string {
  const byVerb = new Map<string, string[]>();
  for (const { id } of events) {
    const [verb, rest] = HAPPENS[id];
    byVerb.set(verb, [...(byVerb.get(verb) ?? []), rest]);
  }
  return [...byVerb]
    .map(([verb, rests]) => `${verb} ${rests.join(" or ").replaceAll(" instar or", " or")}`.trim())
    .join(", ");
}

/** What was found, such as `12 eggs` or `1 larva in the third instar`. */
export function foundAnimals({ stage, count }: Pick<Forecast["found"], "stage" | "count">): string {
  if (stage.startsWith("instar-")) return `${counted(count, "larva", "larvae")} in the ${stageName(stage)}`;
  if (stage === "egg" || stage === "adult") return counted(count, stage);
  return `${counted(count, stage, `${stage}e`)}${stage === "prepupa" ? " (hanging)" : ""}`;
}
