import { randomUUID } from "node:crypto";
import { constants, copyFile, link, open, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";
import { InputError } from "../errors.ts";
import { cannotWrite, codeOf } from "./file-problem.ts";

/**
 * Writes a whole file: after a crash at any moment there is the old file or the new one, never a part.
 * @param replace Whether a file that is there already may be replaced. Default no.
 * @throws {InputError} `file-exists`, `cannot-write`.
 */
export async function writeFileWhole(path: string, text: string, replace = false): Promise<void> {
  const draft = `${path}.${randomUUID()}.new`;
  try {
    await writeDurably(draft, new TextEncoder().encode(text));
    if (replace) await rename(draft, path);
    else await appear(draft, path);
    await syncFolder(path);
  } catch (error) {
    if (codeOf(error) !== "EEXIST") throw cannotWrite(path, error);
    throw new InputError(
      "file-exists",
      `${path} is there already; name another file, or replace it with --force.`,
      {
        path: ["file"],
        value: path,
      },
    );
  } finally {
    // Where the draft could not be made, removing it fails for the same reason, which was told already.
    await rm(draft, { force: true }).catch(() => undefined);
  }
}

/** Gives a draft its name where no file has it yet; a link cannot replace one, as renaming would. */
async function appear(draft: string, path: string): Promise<void> {
  try {
    await link(draft, path);
  } catch (error) {
    if (!["EPERM", "ENOTSUP", "ENOSYS", "EOPNOTSUPP"].includes(codeOf(error))) throw error;
    // Disks without links, such as memory cards.
    await copyFile(draft, path, constants.COPYFILE_EXCL);
  }
}

/** Writes a file of a new name and waits until the disk has it. */
export async function writeDurably(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, "wx");
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Waits until the disk knows the names of the folder that a file is in, where the system can. */
export async function syncFolder(path: string): Promise<void> {
  try {
    const folder = await open(dirname(path), "r");
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  } catch {
    // Windows opens no folders. The file itself is on the disk by now.
  }
}
