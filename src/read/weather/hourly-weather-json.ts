import * as z from "zod/mini";
import { InputError, type Wording } from "../../errors.ts";
import { WIND_UNITS, type WindUnit, metresPerSecond } from "../../rearing/release/wind-unit.ts";
import { assembleHours } from "./assemble-hours.ts";
import type { HourlyOptions } from "./hourly-options.ts";
import type { HourlyRead } from "./hourly-read.ts";
import { jsonValue } from "../json/json-text.ts";
import { listPlaces } from "../place.ts";
import { inShape } from "../json/shape.ts";
import { stampColumn } from "../table/stamp-column.ts";
import { fileUnit, temperatureCells } from "../temperatures/temperature-cells.ts";
import { type Scale, plainScale, weatherValues } from "./weather-cells.ts";

const ISO_STAMP = /^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}/;
const value = z.nullable(z.number());

const hourRecord = z.strictObject({
  /** When the hour begins: ISO 8601 date and time, with or without an offset from UTC. */
  at: z
    .string()
    .check(z.regex(ISO_STAMP, "it must be an ISO 8601 date and time, such as 2026-07-05T13:00:00-04:00")),
  temperature: value,
  wind: value,
  /** mm within the hour. */
  rain: z.optional(value),
  /** % */
  rainChance: z.optional(value),
  /** % of the sky */
  cloud: z.optional(value),
});
const document = z.strictObject({
  unit: z.optional(z.enum(["C", "F"])),
  windUnit: z.optional(z.enum(WIND_UNITS)),
  hours: z.array(hourRecord),
});

/** An hour of weather as JSON has it. */
export type HourRecord = Readonly<z.infer<typeof hourRecord>>;

/** Hourly weather from JSON; the text is decoded and the options are checked. */
export function hourlyFromJson(plain: string, options: HourlyOptions): HourlyRead {
  const whole = jsonValue(plain);
  const bare = Array.isArray(whole);
  const {
    unit: ownUnit,
    windUnit: ownWind,
    hours,
  } = bare
    ? { hours: inShape(z.array(hourRecord), whole, "malformed-file", "the list") }
    : inShape(document, whole, "malformed-file", "the document");
  if (hours.length === 0) {
    throw new InputError("too-few-readings", "the list of hours is empty; at least one is needed.", {
      path: ["hours"],
    });
  }
  const unit = fileUnit([{ by: "the field unit", unit: ownUnit ?? null }], options.unit);
  if (!unit.stated) throw unnamed("temperatures", (name) => `${name("unit")} C or ${name("unit")} F`, "unit");
  const windUnit = windUnitFrom(ownWind, options.windUnit);

  const places = listPlaces(bare ? "" : "hours");
  const entries = hours.map((_, i) => i);
  const texts = hours.map(({ at }) => at);
  const stamps = stampColumn({ texts, column: "at" }, null, entries, "year-first", places);
  const degrees = temperatureCells(unit, places, { probeFaults: false, sentinels: options.sentinels });
  const celsius = Float64Array.from(hours, ({ temperature }, i) =>
    degrees.celsius(temperature, i, "temperature"),
  );
  const read = (field: "wind" | "rain" | "rainChance" | "cloud", scale: Scale) => {
    // A field that no hour has is no column.
    if (hours.every((hour) => hour[field] === undefined)) return null;
    const cells = hours.map((hour) => hour[field] ?? null);
    return weatherValues(field, cells, { entries, column: field, places }, scale, options.sentinels);
  };
  const wind = { ...plainScale(windUnit), convert: (speed: number) => metresPerSecond(speed, windUnit) };
  const others = {
    wind: read("wind", wind),
    rain: read("rain", plainScale("mm")),
    rainChance: read("rainChance", plainScale("%")),
    cloud: read("cloud", plainScale("%")),
  };
  const { weather, notes } = assembleHours({ stamps, entries, celsius, others }, places, {
    zone: options.zone,
    headerOffset: null,
    field: "at",
  });
  return {
    weather,
    units: { temperature: unit.unit, wind: windUnit },
    notes: [...degrees.notes(), ...notes],
  };
}

function windUnitFrom(own: WindUnit | undefined, option: WindUnit | undefined): WindUnit {
  if (own !== undefined && option !== undefined && own !== option) {
    throw new InputError(
      "conflicting-units",
      (name) => `the field windUnit says ${own}, the option ${name("windUnit")} ${option}; they must agree.`,
      { path: ["windUnit"], value: option },
    );
  }
  const unit = own ?? option;
  if (unit === undefined)
    throw unnamed("wind", (name) => `${name("windUnit")}, one of ${WIND_UNITS.join(", ")}`, "windUnit");
  return unit;
}

function unnamed(what: string, remedy: Wording, field: string): InputError {
  const wording: Wording = (name) => `nothing names the unit of the ${what}; say ${remedy(name)}.`;
  return new InputError("unknown-unit", wording, { path: [field] });
}
