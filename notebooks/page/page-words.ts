import type { InputError, Naming } from "../../src/errors.ts";

/** A page has no options by which a program could be told more: what is only about one is left out. */
const NO_OPTIONS: Naming = (input, phrase) => (phrase === undefined ? input : "");

/** What a program is advised to do, and what a reader of a page can do instead. */
const REMEDIES: readonly (readonly [said: RegExp, onPage: string])[] = [
  [
    /say unit F if it is Fahrenheit, or unit C if it is a fault/,
    "choose °F as the unit if it is Fahrenheit, or correct it if it is a fault",
  ],
  [
    /say dateOrder month-first or day-first/,
    "write the dates as year-month-day, such as 2026-07-04, so that they can be read in one way only",
  ],
  [/say which with columns\.\w+, or rename or remove one/, "rename or remove one"],
  [/say with columns\.time which holds the time/, "rename it to time"],
  [/, or say unit C or unit F\./, ", or choose the unit."],
  [
    /^dates run from (\S+) to (\S+); they must run forwards.*$/,
    "The eggs can be had from $1 on, and the wanted day is $2; it must not come before, nor more than 400 days after.",
  ],
  [
    /^(?:the start|until|from|to|found\.on|day) is (\d{4}-\d\d-\d\d)\S*, but the temperatures run from (\S+) to ([^;]+);.*$/,
    "$1 lies outside the temperatures, which run from $2 to $3; choose other days or other temperatures.",
  ],
];

/** What was refused, in words for the fields of a page. */
export function pageWords(error: InputError): string {
  if (error.code === "invalid-day" && error.value === "")
    return "A date is missing or not complete; fill it in.";
  return REMEDIES.reduce((text, [said, onPage]) => text.replace(said, onPage), error.worded(NO_OPTIONS));
}
