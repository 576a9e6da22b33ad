import { InputError, shown } from "../../errors.ts";
import type { ForecastInput } from "../../forecast/forecast.ts";
import { AIMS, type Target } from "../../rearing/start/start-plan.ts";
import { type TemperatureUnit, fahrenheitToCelsius } from "../../units.ts";
import type { Given } from "./arguments.ts";
import { givenMilestone } from "./stage-option.ts";

/** What is wanted, as the options say it. */
export function targetOf(day: string, unit: TemperatureUnit, input: ForecastInput, given: Given): Target {
  const { lifeCycle, found, zone, method, place } = input;
  const milestone = givenMilestone(given, lifeCycle);
  const hours = givenPair(given, "hours", "two times of day, such as 09:00,15:00");
  const aim = given.choice("aim", AIMS);
  const hottest = given.number("hottest");
  return {
    lifeCycle,
    start: {
      stage: found.stage,
      ...(found.count !== undefined && { count: found.count }),
      ...(found.age !== undefined && { age: found.age }),
    },
    day,
    zone: zone ?? null,
    ...(milestone !== undefined && { milestone }),
    ...(hours !== undefined && { hours }),
    ...(aim !== undefined && { aim }),
    ...(hottest !== undefined && { hottest: celsiusOf(hottest, unit) }),
    ...(method !== undefined && { method }),
    ...(place !== undefined && { place }),
  };
}

/** The range of a room, °C. @throws {InputError} `invalid-option`. */
export function givenRoom(given: Given, unit: TemperatureUnit): { from: number; to: number } {
  const what = "the coolest and the warmest temperature of the room, such as 20,28";
  const [low, high] = (givenPair(given, "room", what) ?? []).map((text) =>
    text.trim() === "" ? Number.NaN : Number(text),
  );
  if (low !== undefined && high !== undefined && low <= high)
    return { from: celsiusOf(low, unit), to: celsiusOf(high, unit) };
  throw badPair(given, "room", what);
}

function givenPair(given: Given, name: string, what: string): [string, string] | undefined {
  const text = given.text(name);
  if (text === undefined) return undefined;
  const [first, second, ...more] = text.split(",");
  if (first !== undefined && second !== undefined && more.length === 0) return [first.trim(), second.trim()];
  throw badPair(given, name, what);
}

function badPair(given: Given, name: string, what: string): InputError {
  const value = given.text(name);
  return new InputError("invalid-option", `--${name} is ${shown(value)}; it must be ${what}.`, {
    path: [name],
    value,
  });
}

/** Refuses options that would go unused; a reason that ends in `leave out` is followed by the option. */
export function refuse(given: Given, names: readonly string[], reason: string): void {
  const name = names.find((one) => given.list(one).length > 0);
  if (name === undefined) return;
  const message = reason.endsWith("leave out") ? `${reason} --${name}.` : reason;
  throw new InputError("invalid-option", message, { path: [name], value: given.list(name) });
}

function celsiusOf(degrees: number, unit: TemperatureUnit): number {
  return unit === "F" ? fahrenheitToCelsius(degrees) : degrees;
}

/** Options with a day of the find in them, which every start is going to replace. */
export function withOn(day: string, given: Given): Given {
  return { ...given, needed: (name, what) => (name === "on" ? day : given.needed(name, what)) };
}

/** Options with the file of past years as the only temperatures. */
export function fromPast(path: string, given: Given): Given {
  return {
    ...given,
    list: (name) => (name === "temperatures" ? [path] : given.list(name)),
    text: (name) => (name === "past-years" ? undefined : given.text(name)),
  };
}

/** Options of a room held at a temperature, °C. */
export function heldAt(celsius: number, given: Given): Given {
  return {
    ...given,
    number: (name) => (name === "constant" ? celsius : given.number(name)),
    text: (name) => (name === "constant" ? String(celsius) : name === "unit" ? undefined : given.text(name)),
    choice: (name, words) => (name === "unit" ? undefined : given.choice(name, words)),
  };
}
