import { randomUUID } from "node:crypto";
import { chmod, constants, copyFile, link, lstat, open, realpath, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";
import { cannotWrite, codeOf, fileExists } from "./file-problem.ts";

/**
 * Writes a whole file: after a crash at any moment there is the old file or the new one, never a part. A link is
 * replaced itself and not followed, so that nothing is written but what was named; a file keeps its rights.
 * @param replace Whether a file that is there already may be replaced. Default no.
 * @throws {InputError} `file-exists`, `cannot-write`.
 */
export async function writeFileWhole(path: string, text: string, replace = false): Promise<void> {
  let draft: string | null = null;
  try {
    const before = replace ? await lstat(path).catch(() => null) : null;
    draft = `${path}.${randomUUID()}.new`;
    await writeDurably(draft, new TextEncoder().encode(text));
    if (before?.isFile() === true) await takePlace(draft, path, before.mode);
    else {
      await (replace ? rename(draft, path) : appear(draft, path));
      await syncFolder(path);
    }
  } catch (error) {
    throw codeOf(error) === "EEXIST" ? fileExists(path) : cannotWrite(path, error);
  } finally {
    // Where the draft could not be made, removing it fails for the same reason, which was told already.
    if (draft !== null) await rm(draft, { force: true }).catch(() => undefined);
  }
}

/** Whether a path names something, be it a link that leads nowhere. */
export async function isThere(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

/** The file itself, where a path is a link to it; `null` where there is none. */
export async function fileItself(path: string): Promise<string | null> {
  try {
    return await realpath(path);
  } catch (error) {
    if (codeOf(error) === "ENOENT") return null;
    throw error;
  }
}

/**
 * Puts a draft in the place of a file, with the rights that this one had.
 * @param file The file itself, no link to it.
 * @param mode Mode of the file.
 */
export async function takePlace(draft: string, file: string, mode: number): Promise<void> {
  await chmod(draft, mode & 0o7777);
  await rename(draft, file);
  await syncFolder(file);
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
