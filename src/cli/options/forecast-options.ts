import { CURVE_METHODS } from "../../diurnal/method.ts";
import { InputError } from "../../errors.ts";
import type { ForecastInput } from "../../forecast/forecast.ts";
import type { AgeGiven } from "../../forecast/question/life-path.ts";
import type { Note } from "../../notes.ts";
import { decodeText, readLifeCycle } from "../../read/index.ts";
import { jsonValue } from "../../read/json/json-text.ts";
import { findSpecies } from "../../species/catalogue.ts";
import type { LifeCycle } from "../../species/life-cycle.ts";
import type { Given, OptionTable } from "./arguments.ts";
import { givenPlace } from "./given-place.ts";
import { inFile } from "../files/input-file.ts";
import { methodHelp } from "./method-help.ts";
import { givenFound } from "./stage-option.ts";
import { TEMPERATURE_HELP, TEMPERATURE_OPTIONS } from "./temperature-options.ts";
import { givenWeather } from "./weather-options.ts";
import type { Terminal } from "../terminal.ts";

/** Options that a forecast takes. */
export const FORECAST_OPTIONS: OptionTable = {
  ...TEMPERATURE_OPTIONS,
  species: "text",
  "species-file": "text",
  found: "text",
  on: "text",
  count: "text",
  age: "text",
  method: "text",
  shares: "text",
  latitude: "text",
  longitude: "text",
  "past-years": "text",
  weather: "text",
  until: "text",
};

/** Their part of the help text, what is always needed first. */
export const FORECAST_HELP = `The animals
  --species NAME        such as danaus-plexippus; "moltline species" lists them
  --species-file FILE   your own species, as JSON
  --found STAGE         egg, instar-1 to instar-5, larva (where a species has no
                        instars), prepupa (hanging) or pupa
  --on DAY              when they were found: 2026-06-08, counted from noon, or
                        with a time, 2026-06-08T17:30
  --count NUMBER        how many (default 1)
  --age AGE             how far into that stage: unknown (default), new for just
                        begun, or a share of it that is done, 0 to 1

${TEMPERATURE_HELP}

Weather still to come
  --past-years FILE     past years at the same place: what the weather may do
                        after the last day known; the windows carry it
  --weather FILE        a weather forecast for the days after the last one known
  --until DAY           the last day known, where the files go on beyond it

How to reckon
${methodHelp(CURVE_METHODS)}
  --latitude, --longitude DEGREES
                        where the place is, for the sunrise methods
  --shares A,B,C        shares of animals at early, expected and late (default
                        0.1,0.5,0.9)`;

/** The life cycle that the options name. */
export async function givenLifeCycle(given: Given, terminal: Terminal): Promise<LifeCycle> {
  const path = given.text("species-file");
  if (path === undefined)
    return findSpecies(given.needed("species", "the species, such as danaus-plexippus"));
  if (given.text("species") !== undefined) {
    throw new InputError(
      "invalid-option",
      "--species and --species-file were both given; give one of them.",
      {
        path: ["species-file"],
        value: path,
      },
    );
  }
  return inFile(path, async () => readLifeCycle(jsonValue(decodeText(await terminal.read(path)))));
}

/** What the options ask to be forecast, with what reading the files found. */
export async function givenInput(
  given: Given,
  terminal: Terminal,
): Promise<{ input: ForecastInput; notes: readonly Note[] }> {
  const lifeCycle = await givenLifeCycle(given, terminal);
  const stage = givenFound(given, lifeCycle);
  const on = given.needed("on", "the day they were found, such as 2026-06-08");
  const { around, notes } = await givenSurroundings(given, terminal);
  const count = given.number("count");
  const age = givenAge(given);
  const found = { stage, on, ...(count !== undefined && { count }), ...(age !== undefined && { age }) };
  return { input: { lifeCycle, found, ...around }, notes };
}

/** All that a forecast needs but the animals: temperatures, place and how to reckon. */
export async function givenSurroundings(
  given: Given,
  terminal: Terminal,
): Promise<{ around: Omit<ForecastInput, "lifeCycle" | "found">; notes: readonly Note[] }> {
  const { temperatures, notes } = await givenWeather(given, terminal);
  const method = given.choice("method", CURVE_METHODS);
  const shares = givenShares(given);
  const place = givenPlace(given);
  const around = {
    temperatures,
    zone: given.text("zone") ?? null,
    ...(place !== undefined && { place }),
    ...(method !== undefined && { method }),
    ...(shares !== undefined && { shares }),
  };
  return { around, notes };
}

function givenAge(given: Given): AgeGiven | undefined {
  const text = given.text("age");
  if (text === undefined || text === "unknown" || text === "new") return text;
  const share = Number(text);
  if (text.trim() !== "" && share >= 0 && share <= 1) return share;
  throw new InputError(
    "invalid-option",
    `--age is "${text}"; it must be unknown, new, or a share from 0 to 1 such as 0.5.`,
    {
      path: ["age"],
      value: text,
    },
  );
}

function givenShares(given: Given): [number, number, number] | undefined {
  const text = given.text("shares");
  if (text === undefined) return undefined;
  const [early, expected, late, ...more] = text
    .split(",")
    .map((part) => (part.trim() === "" ? Number.NaN : Number(part)));
  if (early !== undefined && expected !== undefined && late !== undefined && more.length === 0)
    return [early, expected, late];
  throw new InputError(
    "invalid-option",
    `--shares is "${text}"; it must be three shares such as 0.1,0.5,0.9.`,
    {
      path: ["shares"],
      value: text,
    },
  );
}
