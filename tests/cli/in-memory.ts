import { readFileSync } from "node:fs";
import { InputError } from "../../src/errors.ts";
import { run } from "../../src/cli/run.ts";

/** What a run of the command line left behind. */
export interface Outcome {
  readonly code: 0 | 2;
  readonly out: string;
  readonly err: string;
  /** Files that were written or changed, by name. */
  readonly written: Readonly<Record<string, string>>;
}

/** The moment at which every run in memory takes place. */
export const NOW = Date.parse("2026-06-25T18:04:05Z");

const NEW_YORK = new URL("../../fixtures/temperatures/new-york-2012-2015.csv", import.meta.url);

const FILES: Readonly<Record<string, string>> = {
  "new-york.csv": readFileSync(NEW_YORK, "utf8"),
  "cold.csv": "date,min,max\n2026-06-07,2,9\n2026-06-08,3,8\n2026-06-09,1,9.5\n",
  "fahrenheit.csv": "date,low °F,high °F\n2026-06-08,50,86\n2026-06-09,52,88\n2026-06-10,55,90\n",
  "gap.csv": "date,min,max\n2026-06-08,12,24\n2026-06-10,12,26\n2026-06-11,13,27\n",
};

/**
 * Runs the command line on files in memory.
 * @param words Words as typed, or one line of them separated by blanks.
 * @param files Files by name; `-` is standard input.
 */
export async function moltline(
  words: string | readonly string[],
  files: Readonly<Record<string, string | Uint8Array>> = {},
): Promise<Outcome> {
  let [out, err] = ["", ""];
  const known = new Map(Object.entries({ ...FILES, ...files }));
  const written: Record<string, string> = {};
  const bytesOf = (path: string): Uint8Array => {
    const file = known.get(path) ?? (path === "-" ? "" : undefined);
    if (file === undefined) {
      throw new InputError("malformed-file", `${path} cannot be read: there is no such file.`, {
        path: ["file"],
      });
    }
    return typeof file === "string" ? new TextEncoder().encode(file) : file;
  };
  const leave = (path: string, file: string | Uint8Array): void => {
    known.set(path, file);
    written[path] =
      typeof file === "string" ? file : new TextDecoder("utf-8", { ignoreBOM: true }).decode(file);
  };
  const code = await run(typeof words === "string" ? words.split(" ").filter(Boolean) : words, {
    out: (text) => (out += text),
    err: (text) => (err += text),
    read: (path) => Promise.resolve(bytesOf(path)),
    write: (path, text, replace = false) => {
      if (known.has(path) && !replace) {
        throw new InputError(
          "file-exists",
          `${path} is there already; name another file, or replace it with --force.`,
          {
            path: ["file"],
            value: path,
          },
        );
      }
      leave(path, text);
      return Promise.resolve();
    },
    isThere: (path) => Promise.resolve(known.has(path)),
    update: (path, change) => {
      leave(path, change(bytesOf(path)));
      return Promise.resolve();
    },
    now: () => NOW,
  });
  return { code, out, err, written };
}

/** The message of a run that must be refused, with nothing on standard output. */
export async function refused(
  words: string | readonly string[],
  files: Readonly<Record<string, string | Uint8Array>> = {},
): Promise<string> {
  const { code, out, err } = await moltline(words, files);
  if (code !== 2 || out !== "") throw new Error(`not refused: ${JSON.stringify({ code, out })}`);
  return err;
}

/** Options of a find that the bundled temperatures cover. */
export const FOUND = "--species danaus-plexippus --found egg --on 2015-06-08 --unit C";
