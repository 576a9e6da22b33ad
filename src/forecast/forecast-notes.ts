import { thermalClock } from "../clock/thermal-clock.ts";
import type { Method } from "../diurnal/method.ts";
import type { Note, NoteCode } from "../notes.ts";
import { linearResponse } from "../response/linear.ts";
import type { LifeCycle, Mark, Sourced, StageNeeds, TestedRange } from "../species/life-cycle.ts";
import { stageName } from "../species/stage-names.ts";
import type { Origin } from "../temperature/series.ts";
import { DAY_MS, type Instant, type Zone, startOfDay } from "../time/zone.ts";
import { highestOf } from "./absence.ts";
import type { LifePath } from "./life-path.ts";
import type { DegreeDayTable, StageForecast } from "./result.ts";
import type { StageClock } from "./stage-clock.ts";

interface Context {
  readonly lifeCycle: LifeCycle;
  readonly path: LifePath;
  readonly zone: Zone;
  readonly method: Method;
  readonly timeAssumed: boolean;
  readonly clocks: readonly StageClock[];
  readonly tables: readonly DegreeDayTable[];
  readonly usedUntil: Instant;
  readonly stages: readonly StageForecast[];
}

/** Everything that a reader of a forecast must know before trusting it. */
export function forecastNotes(context: Context): Note[] {
  return [
    ...absenceNotes(context),
    ...ageNotes(context),
    ...originNotes(context),
    ...testedNotes(context),
    ...methodNotes(context),
    ...constantNotes(context),
  ];
}

function absenceNotes({ stages, clocks }: Context): Note[] {
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

function ageNotes({ path, lifeCycle, timeAssumed }: Context): Note[] {
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

const ORIGINS: readonly (readonly [Origin, NoteCode, string])[] = [
  ["filled", "days-filled", "rest on temperatures filled into gaps"],
  ["forecast", "temperatures-forecast", "rest on a weather forecast"],
  ["normal", "temperatures-normal", "rest on the normal temperatures of past years, not on this year's"],
  ["assumed", "temperatures-assumed", "rest on a temperature that is assumed to be held"],
];

function originNotes({ tables, zone }: Context): Note[] {
  const [table] = tables;
  const notes = ORIGINS.flatMap(([origin, code, text]) => {
    const days = table?.days.filter((_, i) => table.origin[i] === origin) ?? [];
    return days.length === 0
      ? []
      : [note(code, `${days.length} of ${table?.days.length} days (${days[0]} to ${days.at(-1)}) ${text}.`)];
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

const ABSOLUTE_ZERO = -273.15;

/** Days whose mean leaves the temperatures that the constants were measured at. */
function testedNotes({ lifeCycle, path, clocks, tables, usedUntil, zone }: Context): Note[] {
  const timeline = clocks[0]?.timeline;
  const [table] = tables;
  if (timeline === undefined || table === undefined) return [];
  // Degree-days above absolute zero are the mean temperature's integral.
  const warmth = thermalClock(timeline, linearResponse({ lower: ABSOLUTE_ZERO }));
  const end = Math.min(usedUntil, timeline.to);
  const means = table.days.map((day) => {
    const from = Math.max(startOfDay(day, zone), timeline.from);
    const to = Math.max(from + 1, Math.min(startOfDay(day, zone) + DAY_MS, end));
    return ((warmth.amountAt(to) - warmth.amountAt(from)) / (to - from)) * DAY_MS + ABSOLUTE_ZERO;
  });
  const ranges = new Map<string, TestedRange>();
  for (const { tested } of lifeCycle.stages.slice(path.period)) {
    if (tested !== null) ranges.set(`${tested.low} ${tested.high}`, tested);
  }
  return [...ranges.values()].flatMap(({ low, high, source }) => {
    const outside = means.filter((mean) => mean < low || mean > high);
    if (outside.length === 0) return [];
    return [
      note(
        "outside-tested-temperatures",
        `${outside.length} of ${means.length} days have a mean temperature outside ${low} to ${high} °C, where the constants were measured (${source}): lowest ${Math.min(...outside).toFixed(1)}, highest ${Math.max(...outside).toFixed(1)} °C. Dates that rest on them are extrapolated.`,
      ),
    ];
  });
}

function methodNotes({ method, clocks, usedUntil }: Context): Note[] {
  const end = clocks[0]?.timeline.to;
  if (!method.startsWith("double-") || end === undefined || usedUntil < end) return [];
  return [
    note(
      "last-day-without-next-minimum",
      "The last day has no next day's minimum; its own minimum was used for the second half.",
    ),
  ];
}

const MARK_NOTES: readonly (readonly [Mark, NoteCode, string])[] = [
  ["from memory", "constant-from-memory", "From memory, not yet looked up in print"],
  ["derived", "derived-constant", "Derived here from published figures"],
  ["common practice, no source", "common-practice", "Common practice, no source"],
];

/** Which constants are not from a text that was read. */
function constantNotes({ lifeCycle, path }: Context): Note[] {
  const stages = lifeCycle.stages.slice(path.period);
  return MARK_NOTES.flatMap(([mark, code, text]) => {
    const of = (what: string, constant: (needs: StageNeeds) => Sourced | null): string[] => {
      const marked = stages
        .filter((needs) => constant(needs)?.mark === mark)
        .map(({ stage }) => stageName(stage));
      return marked.length === 0 ? [] : [`${what} ${listed(marked)}`];
    };
    const values = (what: string, constant: (needs: StageNeeds) => Sourced | null): string[] => {
      const marked = stages.map(constant).filter((one) => one?.mark === mark);
      const distinct = [...new Set(marked.map((one) => `${one?.value} °C`))];
      return distinct.length === 0 ? [] : [`${what} ${listed(distinct)}`];
    };
    const named = [
      ...values("lower threshold", ({ lower }) => lower),
      ...values("upper threshold", ({ upper }) => upper),
      ...of("degree-days of", ({ degreeDays }) => degreeDays),
      ...of("how much animals differ in", ({ cv }) => cv),
      ...(lifeCycle.stageCorrelation.mark === mark
        ? ["how far an animal is equally slow in all stages"]
        : []),
      ...(lifeCycle.hang?.mark === mark ? ["length of the hang"] : []),
      ...(lifeCycle.darkening?.mark === mark ? ["length of the darkening"] : []),
    ];
    return named.length === 0 ? [] : [note(code, `${text}: ${named.join("; ")}.`)];
  });
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

function percent(share: number): string {
  return String(Math.round(share * 100));
}

function note(code: NoteCode, message: string): Note {
  return { code, message };
}
