import { InputError } from "../../errors.ts";
import { type HourlyRead, readHourlyWeather } from "../../read/index.ts";
import type { SeenEmergence } from "../../rearing/release/emergences.ts";
import { RELEASE_CRITERIA, type ReleaseCriteria } from "../../rearing/release/release-criteria.ts";
import { WIND_UNITS, metresPerSecond } from "../../rearing/release/wind-unit.ts";
import { fahrenheitToCelsius } from "../../units.ts";
import type { Given, OptionTable } from "./arguments.ts";
import { DATE_ORDERS, UNITS, inFile } from "../files/input-file.ts";
import { FORECAST_OPTIONS } from "./forecast-options.ts";
import { LEARNED_OPTIONS } from "./learned-options.ts";
import { inNames } from "./option-names.ts";
import type { Terminal } from "../terminal.ts";

/** Options about the weather hour by hour, the emergences and the limits. */
export const RELEASE_OPTIONS: OptionTable = {
  "weather-hours": "text",
  "weather-unit": "text",
  "weather-place": "text",
  "weather-date-column": "text",
  "weather-time-column": "text",
  "weather-temperature-column": "text",
  "wind-unit": "text",
  "wind-column": "text",
  "rain-column": "text",
  "chance-column": "text",
  "cloud-column": "text",
  emerged: "list",
  unfit: "text",
  warm: "text",
  wind: "text",
  rain: "text",
  "rain-chance": "text",
  "fair-hours": "text",
  "sun-left": "text",
  cloud: "text",
  hold: "text",
  "longest-hold": "text",
};

const limit = (name: keyof ReleaseCriteria): number => RELEASE_CRITERIA[name].value;

/** Their part of the help text. */
export const RELEASE_HELP = `The weather, hour by hour
  --weather-hours FILE  a time, a temperature, the wind, and rain or its chance,
                        with cloud where known; CSV or JSON; - for standard
                        input:
                          time,temp °C,wind m/s,rain mm,rain chance %,cloud %
                          2026-07-05 14:00,24,2.5,0,5,20
  --weather-unit C|F    unit of its temperatures, where the file does not say it
  --weather-place NAME  which place, where the file holds several
  --wind-unit UNIT      unit of its wind: ${WIND_UNITS.join(", ")}
  --wind-column NAME    likewise --rain-column, --chance-column, --cloud-column:
                        the header, where it is not plain; likewise
                        --weather-date-column, --weather-time-column and
                        --weather-temperature-column

The place, for the sun
  --latitude, --longitude DEGREES
                        north and east are positive
  --zone NAME           its time zone, such as America/New_York

The adults
  --emerged TIME        when one was seen to emerge, such as 2026-07-05T09:30;
                        again for more; in place of the forecast
  --unfit NUMBER        how many are crumpled, weak or infected: they stay in

What counts as fit (degrees and wind in the units of the weather file)
  --warm DEGREES        least temperature (default ${limit("warm")} °C)
  --wind SPEED          most wind (default ${limit("wind")} m/s; no published limit is known)
  --rain MM             most rain in the hour (default ${limit("rain")})
  --rain-chance PERCENT most chance of rain (default ${limit("rainChance")})
  --fair-hours HOURS    dry hours after it (default ${limit("fairHours")})
  --sun-left HOURS      hours of sun left after it (default ${limit("sunLeft")})
  --cloud PERCENT       most cloud that still counts as sun (default ${limit("sunnyCloud")})
  --hold HOURS          least time in the cage (default ${limit("shortestHold")})
  --longest-hold HOURS  most time in the cage (default ${limit("longestHold")})`;

/** Options of a forecast that mean something for the weather and the adults too. */
const NOT_ONLY_FORECAST = [
  "species",
  "species-file",
  "zone",
  "latitude",
  "longitude",
  "date-order",
  "missing",
];

/** Options of files of temperatures that those of the weather have too, by another name. */
const TEMPERATURES_ONLY = ["unit", "place", "date-column", "time-column", "temperature-column"];

/** The emergences that were seen, or `null` where a forecast is wanted. */
export function givenEmergences(given: Given): readonly SeenEmergence[] | null {
  const times = given.list("emerged");
  if (times.length === 0) return null;
  const unused = Object.keys({ ...FORECAST_OPTIONS, ...LEARNED_OPTIONS }).find(
    (name) =>
      ![...NOT_ONLY_FORECAST, ...TEMPERATURES_ONLY].includes(name) &&
      (given.flag(name) || given.list(name).length > 0),
  );
  const ofTemperatures = TEMPERATURES_ONLY.find((name) => given.text(name) !== undefined);
  if (unused === undefined && ofTemperatures !== undefined) {
    throw new InputError(
      "invalid-option",
      `--${ofTemperatures} is about files of temperatures, and with --emerged none is read; for the weather it is --weather-${ofTemperatures}.`,
      { path: [ofTemperatures] },
    );
  }
  if (unused === undefined) return times.map((at) => ({ at }));
  throw new InputError(
    "invalid-option",
    `--emerged and --${unused} were both given; with emergences that were seen no forecast is made, so leave one of them out.`,
    { path: [unused] },
  );
}

/** Options about the weather whose inputs are, for other files, those of other options. */
const WEATHER_NAMES: Readonly<Record<string, string>> = {
  unit: "--weather-unit",
  location: "--weather-place",
  columns: "--weather-time-column, --wind-column, --rain-column and the like",
  "columns.date": "--weather-date-column",
  "columns.time": "--weather-time-column",
  "columns.temperature": "--weather-temperature-column",
};

/** The weather hour by hour that the options name. */
export async function givenHours(given: Given, terminal: Terminal): Promise<HourlyRead> {
  const path = given.needed("weather-hours", "the file of the weather hour by hour");
  return inFile(path, async () => {
    const bytes = await terminal.read(path);
    return inNames(
      (input) => (Object.hasOwn(WEATHER_NAMES, input) ? WEATHER_NAMES[input] : undefined),
      () =>
        readHourlyWeather(bytes, {
          unit: given.choice("weather-unit", UNITS),
          windUnit: given.choice("wind-unit", WIND_UNITS),
          zone: given.text("zone"),
          location: given.text("weather-place"),
          dateOrder: given.choice("date-order", DATE_ORDERS),
          columns: {
            date: given.text("weather-date-column"),
            time: given.text("weather-time-column"),
            temperature: given.text("weather-temperature-column"),
            wind: given.text("wind-column"),
            rain: given.text("rain-column"),
            chance: given.text("chance-column"),
            cloud: given.text("cloud-column"),
          },
          sentinels: [...given.numbers("missing")],
        }),
    );
  });
}

/** The criteria with what the options change of them. */
export function givenCriteria(given: Given, { temperature, wind }: HourlyRead["units"]): ReleaseCriteria {
  const celsius = (degrees: number): number => (temperature === "F" ? fahrenheitToCelsius(degrees) : degrees);
  const same = (value: number): number => value;
  const changes: readonly (readonly [keyof ReleaseCriteria, string, (value: number) => number])[] = [
    ["warm", "warm", celsius],
    ["wind", "wind", (speed) => metresPerSecond(speed, wind)],
    ["rain", "rain", same],
    ["rainChance", "rain-chance", same],
    ["fairHours", "fair-hours", same],
    ["sunLeft", "sun-left", same],
    ["sunnyCloud", "cloud", same],
    ["shortestHold", "hold", same],
    ["longestHold", "longest-hold", same],
  ];
  const criteria = { ...RELEASE_CRITERIA };
  for (const [name, option, convert] of changes) {
    const value = given.number(option);
    if (value !== undefined)
      criteria[name] = {
        value: convert(value),
        mark: "common practice, no source",
        source: `set by the user with --${option}`,
      };
  }
  return criteria;
}
