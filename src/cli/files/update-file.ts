import { rm, stat } from "node:fs/promises";
import { InputError } from "../../errors.ts";
import { claimFile } from "./claim-file.ts";
import { cannotWrite } from "./file-problem.ts";
import { readInput } from "./read-input.ts";
import { fileItself, takePlace, writeDurably } from "./write-file.ts";

/** How often a file that others change without a claim, such as a spreadsheet, is read anew. */
const ATTEMPTS = 5;

/**
 * Changes a file as a whole. Nobody else who uses this function changes it meanwhile, and after a crash at any
 * moment there is the old file or the new one: the new one is written beside it, is on the disk, and then takes
 * its name.
 * @param change The new contents from the old; what it throws leaves the file as it is. It may be called again
 *   when a program that makes no claim changed the file in between.
 * @throws {InputError} `file-busy`, `cannot-write`, what `readInput` and `change` throw.
 */
export async function updateFile(path: string, change: (bytes: Uint8Array) => Uint8Array): Promise<void> {
  if (path === "-") {
    throw new InputError("invalid-option", "standard input cannot be changed; name a file.", {
      path: ["file"],
      value: path,
    });
  }
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) if (await changedOnce(path, change)) return;
  throw new InputError("file-busy", `${path} keeps changing; close the other programs that use it.`, {
    path: ["file"],
    value: path,
  });
}

async function changedOnce(path: string, change: (bytes: Uint8Array) => Uint8Array): Promise<boolean> {
  const file = await existing(path);
  const claim = await written(path, () => claimFile(file));
  try {
    const before = await written(path, () => stat(file));
    const bytes = change(await readInput(file));
    return await written(path, async () => {
      await writeDurably(claim.draft, bytes);
      const now = await stat(file);
      const same = now.mtimeMs === before.mtimeMs && now.size === before.size && now.ino === before.ino;
      if (!same || !(await claim.stands())) return false;
      await takePlace(claim.draft, file, before.mode);
      return true;
    });
  } finally {
    await rm(claim.draft, { force: true });
    await claim.release();
  }
}

/** The file itself, which must be there. */
async function existing(path: string): Promise<string> {
  const file = await fileItself(path).catch(() => null);
  if (file !== null) return file;
  // Reading says best what is wrong with a file that is not there.
  await readInput(path);
  throw cannotWrite(path, new Error("it is not there"));
}

async function written<Result>(path: string, act: () => Promise<Result>): Promise<Result> {
  try {
    return await act();
  } catch (error) {
    throw cannotWrite(path, error);
  }
}
