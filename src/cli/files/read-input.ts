import { createReadStream } from "node:fs";
import type { Readable } from "node:stream";
import { InputError } from "../../errors.ts";
import { LARGEST_TEXT_BYTES } from "../../read/text.ts";

/**
 * The bytes of a file, or of standard input for `-`.
 * @throws {InputError} `malformed-file` when it cannot be read; `input-too-large` as soon as it has
 *   more bytes than a text may have, so that a huge file is never held in memory.
 */
export async function readInput(path: string): Promise<Uint8Array> {
  const name = path === "-" ? "standard input" : path;
  if (path === "-" && process.stdin.isTTY) {
    process.stderr.write("moltline: reading from the keyboard; end with Ctrl-D, or stop with Ctrl-C.\n");
  }
  const chunks: Buffer[] = [];
  let size = 0;
  try {
    // Opening throws where a name cannot be one, such as one with a NUL in it.
    const stream: Readable = path === "-" ? process.stdin : createReadStream(path);
    for await (const chunk of stream) {
      const bytes = Buffer.isBuffer(chunk) ? chunk : Buffer.from(String(chunk));
      size += bytes.length;
      if (size > LARGEST_TEXT_BYTES) throw tooLarge(name);
      chunks.push(bytes);
    }
  } catch (error) {
    if (error instanceof InputError) throw error;
    throw new InputError("malformed-file", `${name} cannot be read: ${reasonOf(error)}.`, {
      path: ["file"],
      value: path,
    });
  }
  return Buffer.concat(chunks);
}

function tooLarge(name: string): InputError {
  const limit = Math.round(LARGEST_TEXT_BYTES / 2 ** 20);
  return new InputError(
    "input-too-large",
    `${name} has more than ${limit} MiB; split it, by year for example.`,
    {
      path: ["file"],
      value: name,
    },
  );
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "it is a folder; name a file",
  EACCES: "you may not read it",
  ERR_INVALID_ARG_VALUE: "its name has a character that no name can have",
};

function reasonOf(error: unknown): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}
