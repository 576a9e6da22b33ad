import { type ParseArgsConfig, parseArgs } from "node:util";
import { InputError, type Naming, nearestNames, shown } from "../../errors.ts";
import { optionNames } from "./option-names.ts";

/** Options of a command by name. `list` options may be given more than once. */
export type OptionTable = Readonly<Record<string, "text" | "flag" | "list">>;

/** Options as given, read by name. */
export interface Given {
  /** Text of an option, or `undefined` when it was not given. */
  text(name: string): string | undefined;
  /** Text of an option that must be given. `what` says what it is. */
  needed(name: string, what: string): string;
  /** A number, or `undefined` when the option was not given. */
  number(name: string): number | undefined;
  /** One of some words, or `undefined` when the option was not given. */
  choice<Word extends string>(name: string, words: readonly Word[]): Word | undefined;
  list(name: string): readonly string[];
  /** Numbers of an option that may be given more than once. */
  numbers(name: string): readonly number[];
  flag(name: string): boolean;
  readonly words: readonly string[];
  /** What the command calls the inputs of the library. */
  readonly names: Naming;
}

/**
 * Reads the options of a command.
 * @throws {InputError} `invalid-option` for an option that the command does not have or a value that it
 *   cannot take, naming near ones.
 */
export function givenOptions(argv: readonly string[], table: OptionTable): Given {
  const options: NonNullable<ParseArgsConfig["options"]> = { help: { type: "boolean", short: "h" } };
  for (const [name, kind] of Object.entries(table)) {
    options[name] = kind === "flag" ? { type: "boolean" } : { type: "string", multiple: true };
  }
  const { values, positionals } = parsed(argv, options, Object.keys(table));
  const text = (name: string): string | undefined => {
    const [value, ...more] = textsOf(values[name]);
    if (more.length === 0) return value;
    // Of two values one would be dropped without a word.
    throw refused(name, more, `--${name} was given ${more.length + 1} times; give it once.`);
  };
  return {
    text,
    needed(name, what) {
      const value = text(name);
      if (value !== undefined) return value;
      throw refused(name, undefined, `--${name} is missing; it gives ${what}.`);
    },
    number(name) {
      const value = text(name);
      return value === undefined ? undefined : numberOf(name, value);
    },
    numbers: (name) => textsOf(values[name]).map((value) => numberOf(name, value)),
    choice(name, words) {
      const value = text(name);
      if (value === undefined) return undefined;
      const found = words.find((word) => word.toLowerCase() === value.toLowerCase());
      if (found !== undefined) return found;
      // Of two or three words all are near.
      const near = words.length > 3 ? nearestNames(value, words) : [];
      const offer = near.length > 0 ? `did you mean ${near.join(" or ")}? ` : "";
      throw refused(
        name,
        value,
        `--${name} is ${shown(value)}; ${offer}${offer === "" ? "it" : "It"} must be one of ${words.join(", ")}.`,
      );
    },
    list: (name) => textsOf(values[name]),
    flag: (name) => values[name] === true,
    words: positionals,
    names: optionNames(table),
  };
}

function parsed(
  argv: readonly string[],
  options: NonNullable<ParseArgsConfig["options"]>,
  known: readonly string[],
): { values: Record<string, unknown>; positionals: readonly string[] } {
  try {
    return parseArgs({ args: joinNegatives(argv), options, allowPositionals: true, strict: true });
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const unknown = /Unknown option '(--?[^']+)'/.exec(message)?.[1];
    if (unknown === undefined) throw valueRefused(message);
    const near = nearestNames(unknown.replace(/^-+/, ""), known).map((name) => `--${name}`);
    throw refused(
      unknown,
      unknown,
      `there is no option ${unknown}${near.length > 0 ? `; did you mean ${near.join(" or ")}?` : "; --help lists them."}`,
    );
  }
}

/** What the parser says of an option without its value, or of a flag with one, as a plain sentence. */
function valueRefused(message: string): InputError {
  const option = /'(?:-\w, )?--([\w-]+)/.exec(message)?.[1] ?? "option";
  return message.includes("does not take an argument")
    ? refused(option, undefined, `--${option} takes no value; leave out what follows it.`)
    : refused(
        option,
        undefined,
        `--${option} needs a value after it; one that begins with - is written --${option}=value.`,
      );
}

function numberOf(name: string, value: string): number {
  const number = value.trim() === "" ? Number.NaN : Number(value);
  if (Number.isFinite(number)) return number;
  throw refused(name, value, `--${name} is ${shown(value)}; it must be a number, with a point for decimals.`);
}

function textsOf(value: unknown): string[] {
  return Array.isArray(value) ? value.map(String) : [];
}

// `--lower -5` would be refused as ambiguous: a negative number after an option is its value.
function joinNegatives(argv: readonly string[]): string[] {
  const joined: string[] = [];
  for (const word of argv) {
    const last = joined.at(-1);
    if (/^-\d/.test(word) && last?.startsWith("--") && !last.includes("="))
      joined[joined.length - 1] = `${last}=${word}`;
    else joined.push(word);
  }
  return joined;
}

function refused(name: string, value: unknown, message: string): InputError {
  return new InputError("invalid-option", message, { path: [name], value });
}
