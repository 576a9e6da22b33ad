import fc from "fast-check";
import { expect, test, vi } from "vitest";
import { InputError } from "../../src/errors.ts";
import { type ReadOptions, readLog, readTemperatures } from "../../src/read/index.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { instantsAt, localClock } from "../../src/time/zone.ts";
import { celsiusToFahrenheit } from "../../src/units.ts";
import { degrees } from "../support/arbitraries.ts";

// Thousands of runs take seconds on a busy machine; the usual limit of five would fail them at random.
vi.setConfig({ testTimeout: 60_000 });

const start = fc.integer({ min: 0, max: 3000 }).map((count) => addDays("2020-01-01", count));
const extremes = fc
  .array(fc.tuple(degrees(-30, 45), degrees(-30, 45)), { minLength: 1, maxLength: 60 })
  .map((pairs) => pairs.map(([a, b]) => ({ min: Math.min(a, b), max: Math.max(a, b) })));

// One way of writing a table of days, and the options that are then needed to read it.
const spelling = fc.record({
  delimiter: fc.constantFrom(",", ";", "\t", "|"),
  decimalComma: fc.boolean(),
  quoted: fc.boolean(),
  unit: fc.constantFrom("C" as const, "F" as const),
  unitInHeader: fc.boolean(),
  dates: fc.constantFrom("iso", "compact", "day-first", "month-first"),
  columns: fc.shuffledSubarray(["date", "min", "max", "note"], { minLength: 4 }),
  newline: fc.constantFrom("\n", "\r\n", "\r"),
  title: fc.boolean(),
  mark: fc.boolean(),
});

function writtenDate(day: string, spelled: string): string {
  const [year = "", month = "", date = ""] = day.split("-");
  if (spelled === "compact") return year + month + date;
  if (spelled === "day-first") return `${date}.${month}.${year}`;
  return spelled === "month-first" ? `${Number(month)}/${Number(date)}/${year}` : day;
}

test("a table of days in any spelling and any order of rows is read back", () => {
  fc.assert(
    fc.property(start, extremes, spelling, fc.infiniteStream(fc.nat()), (first, days, how, order) => {
      const decimalComma = how.decimalComma && (how.delimiter !== "," || how.quoted);
      const quote = (text: string): string => (how.quoted ? `"${text}"` : text);
      const number = (celsius: number): string => {
        const text = how.unit === "C" ? String(celsius) : celsiusToFahrenheit(celsius).toFixed(4);
        return decimalComma ? text.replace(".", ",") : text;
      };
      const unit = how.unitInHeader ? ` (°${how.unit})` : "";
      const header = how.columns.map((column) =>
        quote(column === "min" || column === "max" ? column + unit : column),
      );
      const rows = days.map(({ min, max }, i) => {
        const cells = new Map([
          ["date", writtenDate(addDays(first, i), how.dates)],
          ["min", number(min)],
          ["max", number(max)],
          ["note", ""],
        ]);
        return how.columns.map((column) => quote(cells.get(column) ?? "")).join(how.delimiter);
      });
      const shuffled = rows
        .map((row) => ({ row, key: order.next().value ?? 0 }))
        .sort((a, b) => a.key - b.key)
        .map(({ row }) => row);
      const lines = [
        ...(how.title ? ["Shelf by the window (invented)"] : []),
        header.join(how.delimiter),
        ...shuffled,
      ];
      const text = (how.mark ? "\uFEFF" : "") + lines.join(how.newline) + how.newline;
      const options: ReadOptions = {
        ...(how.unitInHeader ? {} : { unit: how.unit }),
        ...(how.dates === "day-first" || how.dates === "month-first" ? { dateOrder: how.dates } : {}),
      };
      const { series } = readTemperatures(text, options);
      const expected = dailyTemperatures(
        first,
        days.map(({ min }) => min),
        days.map(({ max }) => max),
      );
      if (series.kind !== "daily") throw new Error("not read as days");
      expect(series.start).toBe(first);
      expect(series.min.length).toBe(days.length);
      // Four decimals in °F are at most 0.00003 °C off.
      series.min.forEach((low, i) => expect(Math.abs(low - (expected.min[i] ?? NaN))).toBeLessThan(5e-5));
      series.max.forEach((high, i) => expect(Math.abs(high - (expected.max[i] ?? NaN))).toBeLessThan(5e-5));
    }),
    { numRuns: 500 },
  );
});

test("readings through a zone come back at the instants they were taken, over both clock changes", () => {
  const zones = [
    "America/New_York",
    "Europe/Berlin",
    "Australia/Lord_Howe",
    "America/St_Johns",
    "Pacific/Apia",
    "Etc/GMT+5",
  ];
  fc.assert(
    fc.property(
      fc.constantFrom(...zones),
      fc.integer({ min: 0, max: 365 * 24 * 4 }),
      fc.constantFrom(10, 15, 20, 30),
      fc.boolean(),
      (zone, quarterHours, step, backwards) => {
        const from = Date.UTC(2026, 0, 1) + quarterHours * 900_000;
        const instants = Array.from({ length: 200 }, (_, i) => from + i * step * 60_000);
        // A file that begins in the second pass of an hour shown twice says nothing of a first one.
        fc.pre(instantsAt(localClock(from, zone), zone).length === 1);
        const clock = new Intl.DateTimeFormat("sv-SE", {
          timeZone: zone,
          dateStyle: "short",
          timeStyle: "medium",
        });
        const rows = instants.map((instant, i) => `${clock.format(instant)},${(i % 100) / 4}`);
        const text = ["time,temp C", ...(backwards ? rows.toReversed() : rows)].join("\n");
        const { series } = readTemperatures(text, { zone });
        if (series.kind !== "readings") throw new Error("not read as readings");
        expect([...series.at]).toEqual(instants);
      },
    ),
    { numRuns: 300 },
  );
});

// Reads something, and passes on anything but a refusal in a full sentence.
function refusedOrRead(read: () => unknown): void {
  try {
    read();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    expect(error.message.length).toBeGreaterThan(10);
    expect(error.message.length).toBeLessThan(1500);
  }
}

test("random bytes are read or refused, never a crash", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      refusedOrRead(() => readTemperatures(bytes));
      refusedOrRead(() => readLog(bytes));
    }),
    { numRuns: 3000 },
  );
});

test("random cells under a good header are read or refused, never a crash", () => {
  const cell = fc.oneof(
    fc.constantFrom(
      "2026-05-01",
      "03/04/2026",
      "13.04.2026",
      "2026-05-01 06:00",
      "6:00 PM",
      "2026-05-01T06:00Z",
      "",
      "NA",
      "12",
      "8,5",
      "-9999",
      "85",
      '"',
      "pupa",
      "hatched",
      "Infinity",
    ),
    fc.string({ unit: "grapheme", maxLength: 12 }),
  );
  const header = fc.constantFrom(
    "date,min,max",
    "time,temp °F",
    "date;time;temp",
    "stage,seen on,count,animals",
    "ID,DATE,ELEMENT,X",
    "__proto__,date,tmin,tmax",
    "location,date,low,high",
  );
  const zone = fc.constantFrom(undefined, "America/New_York");
  fc.assert(
    fc.property(
      header,
      fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 8 }),
      zone,
      (top, rows, zoned) => {
        const delimiter = top.includes(";") ? ";" : ",";
        const text = [top, ...rows.map((cells) => cells.join(delimiter))].join("\n");
        refusedOrRead(() => readTemperatures(text, { zone: zoned }));
        refusedOrRead(() => readLog(text));
      },
    ),
    { numRuns: 3000 },
  );
});

test("random JSON is read or refused, never a crash", () => {
  const record = fc.record(
    {
      date: fc.constantFrom("2026-05-01", "x"),
      min: fc.double(),
      max: fc.jsonValue(),
      at: fc.constantFrom("2026-05-01T06:00", "2026-05-01 99:00"),
      temperature: fc.double(),
    },
    { requiredKeys: [] },
  );
  const document = fc.oneof(
    fc.jsonValue(),
    fc.array(record, { maxLength: 4 }),
    fc.record(
      {
        unit: fc.constantFrom("C", "F", 1),
        days: fc.array(record),
        readings: fc.array(record),
        constant: fc.jsonValue(),
      },
      { requiredKeys: [] },
    ),
  );
  fc.assert(
    fc.property(document, (value) =>
      refusedOrRead(() => readTemperatures(JSON.stringify(value), { format: "json" })),
    ),
    { numRuns: 2000 },
  );
});
