import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { forecast } from "../../src/forecast/forecast.ts";
import type { Forecast, Window } from "../../src/forecast/question/result.ts";
import { cautionsFor } from "../../src/rearing/cautions.ts";
import { SPECIES } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { type CalendarOptions, calendarIcs } from "../../src/write/tables/calendar-ics.ts";
import { contentLines, dateValue, textValue } from "../../src/write/tables/calendar-lines.ts";
import { city } from "../support/city.ts";
import { refusalOf } from "../support/refusal.ts";

const MADE = { madeAt: "2015-06-08T17:30:00Z", sequence: 7 };
const season = forecast({
  lifeCycle: danausPlexippus,
  found: { stage: "egg", on: "2015-06-08", count: 12 },
  temperatures: city("new-york"),
  zone: "America/New_York",
});

interface Read {
  readonly calendar: ICAL.Component;
  readonly events: readonly ICAL.Event[];
}

// ical.js, a general parser of RFC 5545, stands for the calendars that people use.
function read(text: string): Read {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return { calendar, events: calendar.getAllSubcomponents("vevent").map((one) => new ICAL.Event(one)) };
}

const made = (result: Forecast = season, options: Partial<CalendarOptions> = {}): string =>
  calendarIcs(result, { ...MADE, ...options });

function only(begins: Window): Forecast {
  const [first] = season.stages;
  if (first === undefined) throw new Error("no stages");
  const absence = begins.late === null ? ({ reason: "gap", message: "A hole comes first." } as const) : null;
  return { ...season, signs: [], stages: [{ ...first, begins, absence }] };
}

describe("a forecast as a calendar", () => {
  it("has the find and every milestone, from the early to the late day", () => {
    const { calendar, events } = read(made());
    expect(calendar.getFirstPropertyValue("version")).toBe("2.0");
    expect(calendar.getFirstPropertyValue("prodid")).toContain("Moltline");
    expect(events).toHaveLength(1 + season.stages.length + season.signs.length);
    const adult = season.stages.at(-1)?.begins;
    const event = events.at(-1);
    expect(event?.summary).toMatch(/^monarch: adult, expected Sun 5 Jul$/);
    expect(event?.startDate.toString()).toBe(adult?.early?.slice(0, 10));
    expect(event?.startDate.isDate).toBe(true);
    const lastDay = event?.endDate.clone();
    lastDay?.adjust(-1, 0, 0, 0);
    expect(lastDay?.toString()).toBe(adult?.late?.slice(0, 10));
    expect(event?.description).toContain("Expected: Sun 5 Jul (50 % of such animals by then)");
    expect(events[0]?.summary).toBe("monarch: 12 eggs found");
  });

  it("carries cautions and notes", () => {
    const [found] = read(made(season, { cautions: cautionsFor(danausPlexippus) })).events;
    for (const { text } of cautionsFor(danausPlexippus)) expect(found?.description).toContain(text);
    for (const { message } of season.notes) expect(found?.description).toContain(message);
  });

  it("says once and for all when it was made, in which order, and nothing of zones", () => {
    const text = made();
    for (const event of read(text).events) {
      expect(event.sequence).toBe(7);
      expect(event.component.getFirstPropertyValue("dtstamp")?.toString()).toBe("2015-06-08T17:30:00Z");
    }
    expect(text).not.toMatch(/TZID|VTIMEZONE/);
    expect(made()).toBe(text);
  });

  it("names events by find and milestone, so that a new forecast updates them", () => {
    const uids = (options: Partial<CalendarOptions>, result = season): string[] =>
      read(made(result, options)).events.map(({ uid }) => uid);
    const warmer = forecast({
      lifeCycle: danausPlexippus,
      found: { stage: "egg", on: "2015-06-08", count: 9 },
      temperatures: city("seattle"),
      zone: "America/New_York",
    });
    expect(uids({ sequence: 8, madeAt: "2015-06-20T08:00:00-04:00" }, warmer)).toEqual(uids({}));
    expect(new Set(uids({})).size).toBe(uids({}).length);
    const other = { ...season, found: { ...season.found, on: "2015-06-09" } };
    const apart = [
      uids({}),
      uids({ cohort: "cage A" }),
      uids({ cohort: "Käfig B/2" }),
      uids({}, other),
    ].flat();
    expect(new Set(apart).size).toBe(apart.length);
    for (const uid of apart) expect(uid).toMatch(/^[\x21-\x7e]+@moltline$/);
  });

  it("can hold the expected days alone", () => {
    for (const [i, event] of read(made(season, { days: "expected" }))
      .events.slice(1, 3)
      .entries()) {
      expect(event.startDate.toString()).toBe(season.stages[i]?.begins.expected?.slice(0, 10));
      expect(event.duration.toSeconds()).toBe(86_400);
    }
  });

  it("an open window ends with what is known of it, and says so", () => {
    const open = only({
      early: "2015-06-10T08:00:00-04:00",
      expected: "2015-06-12T08:00:00-04:00",
      late: null,
    });
    const event = read(made(open)).events[1];
    expect(event?.summary).toContain("late day not known");
    expect(event?.endDate.toString()).toBe("2015-06-13");
    expect(event?.description).toContain("A hole comes first.");
  });

  it("what cannot be placed is named in the event of the find", () => {
    const { events } = read(made(only({ early: null, expected: null, late: null })));
    expect(events).toHaveLength(1);
    expect(events[0]?.description).toContain("Not in this calendar: first instar. A hole comes first.");
  });

  it("every species and find makes a file that the parser takes", () => {
    for (const lifeCycle of SPECIES) {
      const stage = lifeCycle.stages[0]?.stage ?? "egg";
      const result = forecast({
        lifeCycle,
        found: { stage, on: "2015-06-08" },
        temperatures: city("new-york"),
        zone: null,
      });
      expect(read(made(result)).events.length).toBeGreaterThan(1);
    }
  });

  it("refuses a moment without its offset and a number that is none", () => {
    for (const madeAt of ["2015-06-08", "2015-06-08T17:30:00", "now"])
      expect(refusalOf(() => made(season, { madeAt })).path).toEqual(["madeAt"]);
    for (const sequence of [-1, 1.5, NaN, 2 ** 31])
      expect(refusalOf(() => made(season, { sequence })).path).toEqual(["sequence"]);
  });
});

describe("RFC 5545, as remembered", () => {
  // Each example from memory, with its section.
  it("3.3.11: line ends in a text", () => {
    expect(textValue("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.")).toBe(
      "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.",
    );
    expect(textValue("a;b,c\\d:e\"f'")).toBe("a\\;b\\,c\\\\d:e\"f'");
  });

  it("3.3.4: a date", () => {
    expect(dateValue("1997-07-14")).toBe("19970714");
  });

  it("3.3.5, form 2: a moment in UTC", () => {
    expect(made(season, { madeAt: "1998-01-19T07:00:00Z" })).toContain("\r\nDTSTAMP:19980119T070000Z\r\n");
    expect(made(season, { madeAt: "1998-01-19T02:00:00-05:00" })).toContain(
      "\r\nDTSTAMP:19980119T070000Z\r\n",
    );
  });

  it("3.6.1: an event of several days ends on the day after its last", () => {
    const days = {
      early: "2007-06-28T09:00:00",
      expected: "2007-07-01T09:00:00",
      late: "2007-07-08T09:00:00",
    };
    const text = made(only(days));
    expect(text).toContain("\r\nDTSTART;VALUE=DATE:20070628\r\nDTEND;VALUE=DATE:20070709\r\n");
  });

  it("3.1: at most 75 octets to a line, the blank of a further line counted, characters whole", () => {
    expect(contentLines(["x".repeat(75)])).toBe(`${"x".repeat(75)}\r\n`);
    expect(contentLines(["x".repeat(76)])).toBe(`${"x".repeat(75)}\r\n x\r\n`);
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 300 }), (raw) => {
        const line = raw.replace(/[\r\n]/g, "");
        const text = contentLines([line]);
        for (const part of text.split("\r\n")) {
          expect(Buffer.byteLength(part)).toBeLessThanOrEqual(75);
          expect(part).not.toContain("\uFFFD");
        }
        expect(text.replaceAll("\r\n ", "")).toBe(`${line}\r\n`);
      }),
    );
  });

  it("any name of a group comes back from the parser", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 100 }), (raw) => {
        const cohort = raw.replace(/[\u0000-\u001f\u007f]/g, "");
        const { events } = read(made(season, { cohort }));
        expect(events[0]?.summary).toBe(`monarch, ${cohort}: 12 eggs found`);
      }),
    );
  });
});
