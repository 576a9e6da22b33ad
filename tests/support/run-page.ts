import { readFileSync } from "node:fs";
import { join } from "node:path";
import { moltline } from "../cli/in-memory.ts";
import { type Command, pageBlocks } from "./command-blocks.ts";

const ROOT = new URL("../..", import.meta.url).pathname;

/** Something that a page says beside what the command line did. */
export interface Said {
  readonly name: string;
  readonly says: string;
  readonly text: string;
}

/** Runs a page from top to bottom, each command on the files that those before it left. */
export async function runPage(markdown: string): Promise<Said[]> {
  const files: Record<string, string> = {};
  const said: Said[] = [];
  for (const block of pageBlocks(markdown)) {
    if (!("commands" in block)) {
      const { name, text, given } = block;
      if (given) files[name] = text;
      else said.push({ name, says: text, text: files[name] ?? "not written" });
      continue;
    }
    let text = "";
    for (const [i, command] of block.commands.entries())
      text = await printed(command, files, block.refused && i === block.commands.length - 1);
    const name = block.commands.map(({ words }) => words.slice(1).join(" ")).join("; ");
    if (block.says !== null) said.push({ name, says: block.says, text });
  }
  return said;
}

/** What a command prints, or why it is refused; the bundled files that it names come from the project. */
async function printed(
  { words, into }: Command,
  files: Record<string, string>,
  isRefused: boolean,
): Promise<string> {
  const rest = words.slice(1);
  for (const word of rest)
    if (word.startsWith("fixtures/")) files[word] = readFileSync(join(ROOT, word), "utf8");
  const { code, out, err, written } = await moltline(rest, files);
  if (isRefused !== (code === 2)) throw new Error(`${rest.join(" ")} ends with ${code}: ${err}`);
  Object.assign(files, written);
  if (into !== null) files[into] = out;
  return isRefused ? err : out;
}
