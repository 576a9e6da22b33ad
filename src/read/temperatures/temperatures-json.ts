import * as z from "zod/mini";
import { InputError } from "../../errors.ts";
import { constantTemperature } from "../../temperature/constant.ts";
import type {
  ConstantTemperature,
  DailyTemperatures,
  TemperatureReadings,
} from "../../temperature/series.ts";
import { dayNumber } from "../../time/civil-day.ts";
import { DAY_MS } from "../../time/zone.ts";
import type { TemperatureUnit } from "../../units.ts";
import { assembleDays } from "./assemble-days.ts";
import { assembleReadings } from "./assemble-readings.ts";
import { jsonValue } from "../json/json-text.ts";
import { type CheckedReadOptions, type ReadOptions, checkedReadOptions } from "../options.ts";
import { type Places, listPlaces, readAt, refusal } from "../place.ts";
import type { ReadResult } from "../result.ts";
import { inShape } from "../json/shape.ts";
import { stampColumn } from "../table/stamp-column.ts";
import { type FileUnit, fileUnit, temperatureCells } from "./temperature-cells.ts";
import { plainText } from "../text.ts";

const unit = z.optional(z.enum(["C", "F"]));
const degrees = z.nullable(z.number());
const ISO_STAMP = /^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}/;

const dayRecord = z.strictObject({
  /** ISO 8601 day. */
  date: z.string(),
  /** Lowest temperature, or `null` where it is missing. */
  min: degrees,
  /** Highest temperature, or `null` where it is missing. */
  max: degrees,
});
const readingRecord = z.strictObject({
  /** ISO 8601 date and time, with or without an offset from UTC. */
  at: z
    .string()
    .check(z.regex(ISO_STAMP, "it must be an ISO 8601 date and time, such as 2026-07-04T13:05:00-04:00")),
  /** The reading, or `null` where it is missing. */
  temperature: degrees,
});
const daysDocument = z.strictObject({ unit, days: z.array(dayRecord) });
const readingsDocument = z.strictObject({ unit, readings: z.array(readingRecord) });
const constantDocument = z.strictObject({
  unit,
  /** The temperature that is held. */
  constant: z.number(),
  /** First day it holds. */
  from: z.optional(z.string()),
  /** Last day it holds. */
  to: z.optional(z.string()),
});

/** A day of temperatures as JSON has it. */
export type DayRecord = Readonly<z.infer<typeof dayRecord>>;
/** A reading as JSON has it. */
export type ReadingRecord = Readonly<z.infer<typeof readingRecord>>;

/** The series that a JSON document can hold. */
export type JsonSeries = DailyTemperatures | TemperatureReadings | ConstantTemperature;

/**
 * Temperatures from JSON: `{ "unit": "C", "days": [{ "date", "min", "max" }] }`,
 * `{ "unit": "C", "readings": [{ "at", "temperature" }] }`, `{ "unit": "C", "constant": 24, "from", "to" }`,
 * or a bare list of such days or readings.
 * @param text Text, or the bytes of the file.
 * @returns The series in °C, with notes. Errors and notes count list entries from 0.
 * @throws {InputError} `malformed-file` (not JSON, a missing or unknown field), and those of the other
 *   readers for the values.
 * @example
 * readTemperaturesJson('{ "unit": "F", "constant": 77 }').series.kind // → "constant"
 */
export function readTemperaturesJson(
  text: string | Uint8Array,
  options: ReadOptions = {},
): ReadResult<JsonSeries> {
  const checked = checkedReadOptions(options);
  const { text: plain, notes } = plainText(text);
  if (checked.location !== undefined) {
    throw new InputError(
      "unknown-location",
      (name) => `${name("location")} is given, but JSON temperatures have no places; leave it out.`,
      {
        path: ["location"],
        value: checked.location,
      },
    );
  }
  const result = fromValue(jsonValue(plain), checked);
  return { series: result.series, format: "json", notes: [...notes, ...result.notes] };
}

type Read = Omit<ReadResult<JsonSeries>, "format">;

function fromValue(value: unknown, options: CheckedReadOptions): Read {
  if (Array.isArray(value)) {
    const first: unknown = value[0];
    const unitOf = fileUnit([], options.unit);
    return has(first, "at")
      ? readings(inShape(z.array(readingRecord), value, "malformed-file", "the list"), "", unitOf, options)
      : days(inShape(z.array(dayRecord), value, "malformed-file", "the list"), "", unitOf, options);
  }
  const written = (unit: TemperatureUnit | undefined): FileUnit =>
    fileUnit([{ by: "the field unit", unit: unit ?? null }], options.unit);
  if (has(value, "days")) {
    const document = inShape(daysDocument, value, "malformed-file", "the document");
    return days(document.days, "days", written(document.unit), options);
  }
  if (has(value, "readings")) {
    const document = inShape(readingsDocument, value, "malformed-file", "the document");
    return readings(document.readings, "readings", written(document.unit), options);
  }
  if (has(value, "constant")) {
    const document = inShape(constantDocument, value, "malformed-file", "the document");
    const cells = temperatureCells(written(document.unit), ONE_VALUE, { probeFaults: false });
    const { from, to } = document;
    const celsius = cells.celsius(document.constant, 0, "constant");
    if (Number.isNaN(celsius)) {
      const mustBe = "it stands for a missing temperature, and a held one must be there.";
      throw refusal("no-temperatures", ONE_VALUE, 0, "constant", document.constant, mustBe);
    }
    const series = constantTemperature(celsius, {
      ...(from !== undefined && { from }),
      ...(to !== undefined && { to }),
    });
    return { series, notes: cells.notes() };
  }
  throw new InputError(
    "malformed-file",
    "the JSON holds no temperatures; it must be an object with days, readings or constant, or a list of days or readings.",
    { path: ["text"] },
  );
}

const ONE_VALUE: Places = {
  one: "value",
  many: "values",
  cell: (_, field) => ({ text: field, path: [field] }),
};

function days(
  records: readonly DayRecord[],
  list: string,
  unit: FileUnit,
  options: CheckedReadOptions,
): Read {
  const places = listPlaces(list);
  const cells = temperatureCells(unit, places, { probeFaults: false, sentinels: options.sentinels });
  const { series, notes } = assembleDays(
    {
      days: records.map(({ date }, i) => readAt(places.cell(i, "date"), (path) => dayNumber(date, path))),
      min: records.map(({ min }, i) => cells.celsius(min, i, "min")),
      max: records.map(({ max }, i) => cells.celsius(max, i, "max")),
      entries: records.map((_, i) => i),
    },
    places,
    { fields: { date: "date", min: "min", max: "max" }, exchangeSwapped: options.exchangeSwapped },
  );
  return { series, notes: [...cells.notes(), ...notes] };
}

function readings(
  records: readonly ReadingRecord[],
  list: string,
  unit: FileUnit,
  options: CheckedReadOptions,
): Read {
  const places = listPlaces(list);
  const entries = records.map((_, i) => i);
  const texts = records.map(({ at }) => at);
  const stamps = stampColumn({ texts, column: "at" }, null, entries, "year-first", places);
  const cells = temperatureCells(unit, places, { probeFaults: true, sentinels: options.sentinels });
  const { series, notes } = assembleReadings(
    {
      local: stamps.days.map((day, i) => day * DAY_MS + (stamps.ms[i] ?? 0)),
      offset: stamps.offset,
      temperature: records.map(({ temperature }, i) => cells.celsius(temperature, i, "temperature")),
      entries,
    },
    places,
    { zone: options.zone, headerOffset: null, longestGapHours: options.longestGapHours, field: "at" },
  );
  return { series, notes: [...cells.notes(), ...notes] };
}

function has(value: unknown, field: string): boolean {
  return typeof value === "object" && value !== null && Object.hasOwn(value, field);
}

/** Every shape of temperatures as JSON, for the published schema. */
export const temperaturesShape = z.union([
  daysDocument,
  readingsDocument,
  constantDocument,
  z.array(dayRecord),
  z.array(readingRecord),
]);
