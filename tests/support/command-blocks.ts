/** Commands of a page and what the page says that the last of them prints. */
export interface CommandBlock {
  readonly commands: readonly Command[];
  /** Text of the block that follows, or `null` where none does. */
  readonly says: string | null;
  /** Whether the last command is refused and the text is its reason: ```` ```text refused ````. */
  readonly refused: boolean;
}

/**
 * A file of a page: ```` ```csv NAME ```` or ```` ```json NAME ```` is given to the commands, ```` ```text NAME ````
 * was written by one.
 */
export interface FileBlock {
  readonly name: string;
  readonly text: string;
  readonly given: boolean;
}

/** One command as it was typed. */
export interface Command {
  readonly words: readonly string[];
  /** File that its output goes to, or `null` for the screen. */
  readonly into: string | null;
}

const COMMANDS =
  /^```sh\n(?<code>[\s\S]*?)^```\n(?:\n```text(?<refused> refused)?\n(?<says>[\s\S]*?)^```\n)?/;
const FILE = /^```(?<kind>csv|json|text) (?<name>\S+)\n(?<text>[\s\S]*?)^```\n/;
const BLOCK = new RegExp(`${COMMANDS.source}|${FILE.source}`, "gm");

/** Ways to call the command line: of a built package, and in the folder of the project. */
const PROGRAM = /^(?:moltline|npx tsx src\/cli\/main\.ts)(?= )/;

/**
 * The `sh` blocks of a page of Markdown that call the command line, each with the `text` block right after it, and
 * the named files of the page.
 */
export function pageBlocks(markdown: string): (CommandBlock | FileBlock)[] {
  return [...markdown.matchAll(BLOCK)].flatMap(({ groups = {} }): (CommandBlock | FileBlock)[] => {
    const { code, says, refused, kind, name = "", text = "" } = groups;
    if (code === undefined) return [{ name, text, given: kind !== "text" }];
    const commands = code
      .replace(/\\\n\s*/g, "")
      .split("\n")
      .map((line) => line.replace(/(^|\s+)# .*$/, ""))
      .filter((line) => PROGRAM.test(line))
      .map((line) => commandOf(line.replace(PROGRAM, "moltline")));
    return commands.length === 0 ? [] : [{ commands, says: says ?? null, refused: refused !== undefined }];
  });
}

function commandOf(line: string): Command {
  const [command = "", into] = line.split(" > ");
  const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
  return { words, into: into?.trim() ?? null };
}

/** Whether a text is what a page says, where a line of three dots stands for any lines left out. */
export function isAsSaid(text: string, says: string): boolean {
  const parts = says.split(/^\.\.\.\n/m);
  let at = 0;
  return parts.every((part, i) => {
    const last = i === parts.length - 1;
    if (i > 0 && last && part === "") return true;
    const found =
      i === 0
        ? text.startsWith(part)
          ? 0
          : -1
        : last
          ? endIndex(text, part, at)
          : lineIndex(text, part, at);
    if (found < 0) return false;
    at = found + part.length;
    return !last || at === text.length;
  });
}

/** Where a part stands at the begin of a line, from a place on. */
function lineIndex(text: string, part: string, from: number): number {
  for (let at = text.indexOf(part, from); at >= 0; at = text.indexOf(part, at + 1))
    if (at === 0 || text[at - 1] === "\n") return at;
  return -1;
}

function endIndex(text: string, part: string, from: number): number {
  const at = text.length - part.length;
  return at >= from && text.endsWith(part) && text[at - 1] === "\n" ? at : -1;
}
