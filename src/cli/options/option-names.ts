import { InputError, type Naming } from "../../errors.ts";

/** Inputs of the library, as its errors name them, and the options that fill them. */
const OPTION_OF_INPUT: Readonly<Record<string, string>> = {
  "found.stage": "found",
  "found.on": "on",
  "found.count": "count",
  "found.age": "age",
  zone: "zone",
  shares: "shares",
  species: "species",
  from: "from",
  to: "to",
  lower: "lower",
  upper: "upper",
  until: "until",
  count: "count",
  amount: "amount",
  latitude: "latitude",
  longitude: "longitude",
  "place.latitude": "latitude",
  "place.longitude": "longitude",
  day: "day",
  leavesPerLarva: "leaves-per-larva",
  leavesPerStem: "leaves-per-stem",
  "cohorts.0.name": "name",
  milestone: "milestone",
  hours: "hours",
  "hours.0": "hours",
  constant: "room",
  "constant.to": "room",
  "constant.from": "room",
  hottest: "hottest",
  "dates.from": "first",
  "dates.to": "last",
  share: "share",
  level: "level",
  firstEggs: "first-eggs",
  "firstEggs.degreeDays": "first-heat",
  preLayingDays: "pre-laying",
  unfit: "unfit",
  "criteria.warm.value": "warm",
  "criteria.wind.value": "wind",
  "criteria.rain.value": "rain",
  "criteria.rainChance.value": "rain-chance",
  "criteria.fairHours.value": "fair-hours",
  "criteria.sunLeft.value": "sun-left",
  "criteria.sunnyCloud.value": "cloud",
  "criteria.shortestHold.value": "hold",
  shortestHold: "hold",
  "emergences.0.at": "emerged",
  "criteria.longestHold.value": "longest-hold",
  exchangeSwapped: "exchange-swapped",
  sentinels: "missing",
  longestGapHours: "longest-gap",
  dateOrder: "date-order",
  upToDays: "fill-gaps",
  location: "place",
  format: "format",
  unit: "unit",
  windUnit: "wind-unit",
  throughRow: "rows",
  paceVariation: "pace-variation",
  offsetDeviation: "offset-deviation",
};

/** What a file or a command has for an input: an option, `null` for none, `undefined` where it does not say. */
type Names = (input: string) => string | null | undefined;

/** Names of the inputs of a file whose columns no option names, such as a log. */
export const NO_COLUMN_OPTIONS: Names = (input) =>
  input === "columns" || input.startsWith("columns.") ? null : undefined;

/**
 * What a command calls the inputs of the library: its options. An input that it has no option for keeps its name,
 * and words that are only about such an option are left out.
 * @param options Options of the command, by name.
 */
export function optionNames(options: Readonly<Record<string, unknown>>): Naming {
  const has = (name: string): boolean => Object.hasOwn(options, name);
  return naming((input) => {
    if (input === "columns") {
      const names = Object.keys(options).filter((name) => name.endsWith("-column"));
      return names.length === 0 ? null : `--${names.join(", --")}`.replace(/, (?=--[\w-]+$)/, " or ");
    }
    if (input === "by a named policy") {
      const ways = ["fill-gaps", "normals"].filter(has);
      return ways.length === 0 ? null : `with ${ways.map((name) => `--${name}`).join(" or ")}`;
    }
    const option = input.startsWith("--") ? input.slice(2) : optionOf(input);
    return option === undefined || !has(option) ? null : `--${option}`;
  });
}

/**
 * Runs what reads a file that has options of its own, and names these where it refuses something.
 * @param names Options by input.
 * @throws {InputError} What `read` throws.
 */
export function inNames<Result>(names: Names, read: () => Result): Result {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { code, path, value } = error;
    throw new InputError(code, (outer) => error.worded(naming(names, outer)), { path, value });
  }
}

/**
 * A refusal in the words of the command line. Most messages about an option begin with its place in the input of
 * the library; after the name of a file stands a place in that file.
 */
export function inOptionNames(error: InputError, name: Naming): string {
  const place = error.path.join(".");
  const told = error.worded(name);
  return place !== "" && told.startsWith(`${place} `) ? name(place) + told.slice(place.length) : told;
}

function naming(names: Names, otherwise?: Naming): Naming {
  return (input, phrase) => {
    const found = names(input);
    if (found === undefined && otherwise !== undefined) return otherwise(input, phrase);
    if (typeof found !== "string") return phrase === undefined ? input : "";
    return phrase === undefined ? found : phrase(found);
  };
}

/** The option that fills an input; the entries of a list have one together. */
function optionOf(input: string): string | undefined {
  const place = input.replace(/\.\d+(?=\.|$)/g, ".0");
  if (place.startsWith("columns.")) return `${place.slice("columns.".length)}-column`;
  return Object.hasOwn(OPTION_OF_INPUT, place) ? OPTION_OF_INPUT[place] : undefined;
}
