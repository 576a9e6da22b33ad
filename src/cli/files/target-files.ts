import { InputError } from "../../errors.ts";
import type { Given } from "../options/arguments.ts";
import { fileExists } from "./file-problem.ts";
import type { Terminal } from "../terminal.ts";

/**
 * The files that options name to be written, by option. All are looked at before one of them is written, so that
 * a refusal of the second does not leave the first behind.
 * @param names Options, each with an example of what it may name.
 * @throws {InputError} `invalid-option` for no name of a file, one name twice, and `--force` without a file;
 *   `file-exists`.
 */
export async function givenTargets<Name extends string>(
  given: Given,
  names: Readonly<Record<Name, string>>,
  terminal: Terminal,
): Promise<Readonly<Partial<Record<Name, string>>>> {
  const targets: Partial<Record<Name, string>> = {};
  const options: Name[] = [];
  for (const name in names) {
    options.push(name);
    const path = given.text(name);
    if (path === undefined) continue;
    if (path === "-" || path === "") {
      throw refused(name, path, `--${name} needs the name of a file, such as ${names[name]}.`);
    }
    const other = options.find((one) => one !== name && targets[one] === path);
    if (other !== undefined)
      throw refused(name, path, `--${other} and --${name} both name ${path}; give each its own file.`);
    targets[name] = path;
  }
  const paths = options.flatMap((name) => targets[name] ?? []);
  if (given.flag("force")) {
    if (paths.length > 0) return targets;
    const which = options.length > 1 ? "neither of which was given" : "which was not given";
    throw refused("force", undefined, `--force belongs to --${options.join(" and --")}, ${which}.`);
  }
  for (const path of paths) if (await terminal.isThere(path)) throw fileExists(path);
  return targets;
}

function refused(name: string, value: unknown, message: string): InputError {
  return new InputError("invalid-option", message, { path: [name], value });
}
