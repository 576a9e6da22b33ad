import { InputError, shown } from "../../errors.ts";
import { given, givenList } from "../../given.ts";
import type { Absence, Forecast, Window } from "../../forecast/question/result.ts";
import type { Caution } from "../../rearing/cautions.ts";
import { stageName } from "../../species/stage-names.ts";
import { addDays } from "../../time/civil-day.ts";
import { formatInstant, parseMoment } from "../../time/zone.ts";
import { contentLines, dateValue, textValue } from "./calendar-lines.ts";
import { foundAnimals } from "../pages/calendar-text.ts";
import { dayLabel } from "../layout/text-layout.ts";

/** How a forecast becomes a calendar file. */
export interface CalendarOptions {
  /** The moment at which it is made, ISO 8601 with its offset, such as `2026-06-08T17:30:00Z`. */
  readonly madeAt: string;
  /** Number of this making, 0 or more; calendars take events of a higher number for newer ones. Default 0. */
  readonly sequence?: number;
  /** Which animals, where there are several groups; two without a name, found on one day, would be taken for one. */
  readonly cohort?: string | null;
  /** `windows`: each event lasts from the early to the late day. `expected`: it is the expected day. Default `windows`. */
  readonly days?: "windows" | "expected";
  /** Cautions that fit the species; they stand in the event of the find. */
  readonly cautions?: readonly Caution[];
}

interface Milestone {
  readonly id: string;
  readonly name: string;
  readonly begins: Window;
  readonly absence: Absence | null;
}

/**
 * A forecast as an iCalendar object (RFC 5545) of all-day events: the find, and each stage that begins. Days are
 * those of the forecast's own zone, so no zone stands in the file. The same find makes events of the same names, so
 * that a later import of a new forecast updates them.
 * @throws {InputError} `invalid-instant` for a moment without its offset, `invalid-option`.
 */
export function calendarIcs(forecast: Forecast, options: CalendarOptions): string {
  given(forecast, ["forecast"], "a forecast, as forecast returns it", "stages", "found", "notes", "tables");
  given(options, ["options"], "an object with madeAt");
  if (options.cautions !== undefined) givenList(options.cautions, ["cautions"]);
  const { sequence = 0, days = "windows", cautions = [], cohort = null } = options;
  if (!Number.isInteger(sequence) || sequence < 0 || sequence > 2_147_483_647) {
    throw new InputError(
      "invalid-option",
      `sequence is ${shown(sequence)}; it must be a whole number from 0 to 2147483647.`,
      {
        path: ["sequence"],
        value: sequence,
      },
    );
  }
  const stamp = stampOf(options.madeAt);
  const group = cohort === null ? "" : `, ${cohort}`;
  const title = `${forecast.commonName}${group}`;
  const event = (
    id: string,
    first: string,
    last: string,
    summary: string,
    text: readonly string[],
  ): string[] => [
    "BEGIN:VEVENT",
    `UID:${uidOf(forecast, cohort, id)}`,
    `DTSTAMP:${stamp}`,
    `SEQUENCE:${sequence}`,
    `DTSTART;VALUE=DATE:${dateValue(first)}`,
    // Section 3.6.1: the end is the first day that the event does not take.
    `DTEND;VALUE=DATE:${dateValue(addDays(last, 1))}`,
    `SUMMARY:${textValue(`${title}: ${summary}`)}`,
    `DESCRIPTION:${textValue(text.join("\n\n"))}`,
    // The days are not taken: somebody who waits for an animal is free.
    "TRANSP:TRANSPARENT",
    "END:VEVENT",
  ];
  const milestones = milestonesOf(forecast);
  const dated = milestones.flatMap((one) => {
    const span = spanOf(one.begins, days);
    return span === null ? [] : event(one.id, span[0], span[1], summaryOf(one), descriptionOf(one, forecast));
  });
  const missing = milestones.filter((one) => spanOf(one.begins, days) === null);
  const foundOn = forecast.found.at.slice(0, 10);
  return contentLines([
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Moltline//Stage dates//EN",
    "CALSCALE:GREGORIAN",
    ...event("found", foundOn, foundOn, `${foundAnimals(forecast.found)} found`, [
      ...missing.map((one) => `Not in this calendar: ${one.name}. ${one.absence?.message ?? ""}`.trim()),
      ...cautions.map((one) => `${one.title}: ${one.text}`),
      ...forecast.notes.map(({ message }) => message),
    ]),
    ...dated,
    "END:VCALENDAR",
  ]);
}

function milestonesOf({ stages, signs }: Forecast): Milestone[] {
  return stages.flatMap(({ stage, begins, absence }): Milestone[] => [
    ...(stage === "adult" ? signs : []).map((one) => ({ ...one, id: one.sign, name: "pupa darkens" })),
    { id: stage, name: stageName(stage), begins, absence },
  ]);
}

/** First and last day of an event, or `null` where it cannot be placed. An open window ends with what is known of it. */
function spanOf({ early, expected, late }: Window, days: "windows" | "expected"): [string, string] | null {
  const first = (days === "expected" ? expected : early)?.slice(0, 10);
  if (first === undefined) return null;
  return [first, days === "expected" ? first : (late ?? expected ?? early ?? first).slice(0, 10)];
}

function summaryOf({ name, begins }: Milestone): string {
  if (begins.expected === null) return `${name}, expected day not known`;
  return `${name}, expected ${labelOf(begins.expected)}${begins.late === null ? ", late day not known" : ""}`;
}

function descriptionOf({ begins, absence }: Milestone, { shares }: Forecast): string[] {
  const names = ["Early", "Expected", "Late"];
  const lines = [begins.early, begins.expected, begins.late].map((instant, i) => {
    const share = Number(((shares[i] ?? 0) * 100).toPrecision(3));
    return `${names[i]}: ${instant === null ? "not known" : `${labelOf(instant)} (${share} % of such animals by then)`}`;
  });
  return [lines.join("\n"), ...(absence === null ? [] : [absence.message])];
}

function labelOf(instant: string): string {
  return dayLabel(instant.slice(0, 10)).replace(/ +/g, " ");
}

/** One name for one event of one find, whenever it is made. Letters beyond ASCII are spelled out. */
function uidOf({ species, found }: Forecast, cohort: string | null, id: string): string {
  const parts = [species, ...(cohort === null ? [] : [cohort]), found.on, id];
  return `${parts.map((part) => encodeURIComponent(part.replace(/\p{Surrogate}/gu, "\uFFFD"))).join("/")}@moltline`;
}

/** A moment as a UTC DATE-TIME value: RFC 5545, section 3.3.5, form 2. */
function stampOf(madeAt: string): string {
  const { instant } = parseMoment(madeAt, "UTC", ["madeAt"]);
  if (instant === null || !/(?:Z|[+-]\d{2}:?\d{2})$/.test(madeAt)) {
    throw new InputError(
      "invalid-instant",
      `madeAt is ${shown(madeAt)}; it must be a date and time with its offset, such as 2026-06-08T17:30:00Z.`,
      { path: ["madeAt"], value: madeAt },
    );
  }
  return `${formatInstant(instant, null).replace(/[-:]/g, "")}Z`;
}
