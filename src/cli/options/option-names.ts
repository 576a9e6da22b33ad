import type { InputError } from "../../errors.ts";
import type { OptionTable } from "./arguments.ts";

/** Places of the library's input and the options that fill them. */
const OPTION_OF_PLACE: Readonly<Record<string, string>> = {
  "found.stage": "--found",
  "found.on": "--on",
  "found.count": "--count",
  "found.age": "--age",
  zone: "--zone",
  shares: "--shares",
  species: "--species",
  from: "--from",
  to: "--to",
  lower: "--lower",
  upper: "--upper",
  until: "--until",
  count: "--count",
  amount: "--amount",
  "place.latitude": "--latitude",
  "place.longitude": "--longitude",
  day: "--day",
  leavesPerLarva: "--leaves-per-larva",
  leavesPerStem: "--leaves-per-stem",
  "cohorts.0.name": "--name",
  milestone: "--milestone",
  "hours.0": "--hours",
  "hours.1": "--hours",
  "constant.to": "--room",
  "constant.from": "--room",
  hottest: "--hottest",
  "dates.from": "--first",
  "dates.to": "--last",
  share: "--share",
  level: "--level",
  firstEggs: "--first-eggs",
  "firstEggs.degreeDays": "--first-heat",
  preLayingDays: "--pre-laying",
  unfit: "--unfit",
  "criteria.warm.value": "--warm",
  "criteria.wind.value": "--wind",
  "criteria.rain.value": "--rain",
  "criteria.rainChance.value": "--rain-chance",
  "criteria.fairHours.value": "--fair-hours",
  "criteria.sunLeft.value": "--sun-left",
  "criteria.sunnyCloud.value": "--cloud",
  "criteria.shortestHold.value": "--hold",
  "criteria.longestHold.value": "--longest-hold",
};

/** Names that the library's messages use for its options, and those of the command line. */
const OPTION_OF_NAME: readonly (readonly [name: RegExp, option: string])[] = [
  [/\bexchangeSwapped\b/g, "--exchange-swapped"],
  [/\bsentinels\b/g, "--missing"],
  [/\b(?:options\.)?longestGapHours\b/g, "--longest-gap"],
  [/\bdateOrder\b/g, "--date-order"],
  [/\bupToDays\b/g, "--fill-gaps"],
  // The name of the file stands before it.
  [/(?<=^|: )location is\b/g, "--place is"],
  [/\bchoose one with location\b/g, "choose one with --place"],
  // The columns of a log have no options of their own.
  [
    /(the day it was seen on\).*) Add a header row, or say with columns which is which\./g,
    "$1 Add a header row such as stage,seen on,count.",
  ],
  [
    /(day of each cohort\).*) Add a header row, or say with columns which is which\./g,
    "$1 Add a header row such as name,species,found,on,count.",
  ],
  [
    /(the days that development took\).*) Add a header row, or say with columns which is which\./g,
    "$1 Add a header row such as temperature,days,animals, or name them with --temperature-column and --days-column.",
  ],
  [
    /(rain or its chance\).*) Add a header row, or say with columns which is which\./g,
    "$1 Add a header row such as time,temp °C,wind m/s,rain mm, or name them with --wind-column, --rain-column and --chance-column.",
  ],
  [/\bwith columns which is which\b/g, "with --date-column, --min-column and the like which is which"],
  [/\bthat columns names\b/g, "that an option names"],
  [/\bthe option unit\b/g, "--unit"],
  [/\bsay unit F\b/g, "say --unit F"],
  [/\bor unit C\b/g, "or --unit C"],
  [/(?<!the field )\b(?:the option )?windUnit\b/g, "--wind-unit"],
  [/^hours are\b/g, "--hours are"],
  [/^constant runs from\b/g, "--room runs from"],
  [/^dates run from\b/g, "the days from --first to --last run from"],
  [/\bshortestHold\b/g, "--hold"],
  [/\bemergences\.\d+\.at\b/g, "--emerged"],
  [
    /\bno time zone was given; name the zone that they are in, such as\b/g,
    "no time zone was given; name the zone that they are in with --zone, such as",
  ],
  [/\bthroughRow\b/g, "--rows"],
  [/\bpaceVariation\b/g, "--pace-variation"],
  [/\boffsetDeviation\b/g, "--offset-deviation"],
  [/\bgive the place as latitude and longitude\b/g, "give the place with --latitude and --longitude"],
  [
    /\bno time zone was given; name the zone that the (dates|days) are in, such as\b/g,
    "no time zone was given; name the zone that the $1 are in with --zone, such as",
  ],
];

/** Names that depend on what a command can do. */
function namesFor(options: OptionTable): readonly (readonly [name: RegExp, option: string])[] {
  const fill = ["fill-gaps", "normals"].filter((name) => name in options).map((name) => `--${name}`);
  const columns = Object.keys(options).flatMap((name) =>
    name.endsWith("-column") ? [name.slice(0, -"-column".length)] : [],
  );
  return [
    ...columns.map((name) => [new RegExp(`\\bcolumns\\.${name}\\b`, "g"), `--${name}-column`] as const),
    // The columns of a log have no options of their own.
    [/ say which with columns\.\w+, or /g, " "],
    ...(fill.length > 0 ? [[/\bby a named policy\b/g, `with ${fill.join(" or ")}`] as const] : []),
    ...("constant" in options ? [] : [[/, give --constant/g, ""] as const]),
    ...("temperatures" in options ? [] : [[/ with --temperatures\b/g, ""] as const]),
    ...("missing" in options ? [] : [[/, or list it in sentinels if it means missing/g, ""] as const]),
  ];
}

/**
 * The message of a refusal in the words of the command line, where the library names its own input.
 * @param options Options of the command that was refused.
 */
export function inOptionNames({ message, path }: InputError, options: OptionTable): string {
  const place = path.join(".");
  const option = Object.hasOwn(OPTION_OF_PLACE, place) ? OPTION_OF_PLACE[place] : undefined;
  const told =
    option !== undefined && message.startsWith(`${place} is `)
      ? `${option}${message.slice(place.length)}`
      : message;
  return [...namesFor(options), ...OPTION_OF_NAME].reduce(
    (text, [name, words]) => text.replace(name, words),
    told,
  );
}
