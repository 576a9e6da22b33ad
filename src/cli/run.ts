import { InputError, nearestNames, shown } from "../errors.ts";
import { givenOptions } from "./options/arguments.ts";
import { COMMAND_GROUPS, COMMANDS, type CommandEntry } from "./command-table.ts";
import type { Command } from "./command.ts";
import { inOptionNames, optionNames } from "./options/option-names.ts";
import type { Terminal } from "./terminal.ts";

const HELP = `moltline: from temperatures to the days on which an animal molts.

You have a file of temperatures and the day you found an egg or a larva.
Moltline tells you when it will hatch, molt, pupate and emerge, early and late:

  moltline forecast --temperatures porch.csv --unit F --zone America/New_York \\
    --species danaus-plexippus --found egg --on 2026-06-08

${COMMAND_GROUPS.map(([heading, commands]) => `${heading}\n${commands.map(lineOf).join("\n")}`).join("\n\n")}

moltline COMMAND --help tells more, such as moltline forecast --help.
`;

function lineOf({ name, summary }: CommandEntry): string {
  return `  ${name.padEnd(13)}${summary}`;
}

/**
 * Runs the command line.
 * @param argv The words after the program's name.
 * @returns Exit status: 0, or 2 for input that cannot be used, with the reason on standard error.
 */
export async function run(argv: readonly string[], terminal: Terminal): Promise<0 | 2> {
  const [name, ...rest] = argv;
  const asksHelp = name === "help" || name === "--help" || name === "-h";
  if (name === undefined || (asksHelp && rest.length === 0)) {
    terminal.out(HELP);
    return 0;
  }
  if (asksHelp) return run([...rest.slice(0, 1), "--help"], terminal);
  const command = await COMMANDS.find((one) => one.name === name)?.load();
  try {
    if (command === undefined) throw unknownCommand(name);
    if (rest.includes("--help") || rest.includes("-h")) {
      terminal.out(`${command.help}\n`);
      return 0;
    }
    const given = givenOptions(rest, command.options);
    const [extra] = given.words;
    if (extra !== undefined && !command.takesWords) throw extraWord(extra, command);
    await command.run(given, readingStandardInputOnce(terminal));
    return 0;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    terminal.err(`moltline: ${inOptionNames(error, optionNames(command?.options ?? {}))}\n`);
    if (command !== undefined && rest.length === 0) terminal.err(beginningOf(command));
    return 2;
  }
}

/** What a command is for, with its examples: who typed its name alone needs more than the first option missing. */
function beginningOf({ name, help }: Command): string {
  const examples = help.split("\n\n").find((part) => part.startsWith("  moltline ")) ?? "";
  return `\nFor example:\n${examples}\n\nmoltline ${name} --help explains each option.\n`;
}

/** A file named without its option would otherwise be ignored, and standard input be waited for. */
function extraWord(word: string, { name, options }: Command): InputError {
  const option = ["temperatures", "trials", "log", "logger"].find((one) => one in options);
  const file = option === undefined ? "" : `; a file is given as --${option} FILE`;
  return new InputError(
    "invalid-option",
    `${shown(word)} belongs to no option${file}. moltline ${name} --help lists the options.`,
    { path: ["words"], value: word },
  );
}

/** Standard input is empty the second time, which would look like an empty file. */
function readingStandardInputOnce(terminal: Terminal): Terminal {
  let wasRead = false;
  return {
    ...terminal,
    read(path) {
      if (path === "-" && wasRead) {
        throw new InputError(
          "invalid-option",
          "standard input would be read for two things and can be read only once; name a file for each but one.",
          { path: ["file"], value: path },
        );
      }
      wasRead ||= path === "-";
      return terminal.read(path);
    },
  };
}

function unknownCommand(name: string): InputError {
  const names = COMMANDS.map((one) => one.name);
  const near = nearestNames(name, names);
  const remedy = near.length > 0 ? `did you mean ${near.join(" or ")}?` : `use one of ${names.join(", ")}.`;
  return new InputError("invalid-option", `there is no command "${name}"; ${remedy}`, {
    path: ["command"],
    value: name,
  });
}
