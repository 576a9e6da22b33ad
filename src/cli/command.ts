import type { Given, OptionTable } from "./options/arguments.ts";
import type { Terminal } from "./terminal.ts";

/** One command of the command line. */
export interface Command {
  readonly name: string;
  readonly help: string;
  readonly options: OptionTable;
  /** Whether words that belong to no option mean something. */
  readonly takesWords: boolean;
  readonly run: (given: Given, terminal: Terminal) => Promise<void> | void;
}
