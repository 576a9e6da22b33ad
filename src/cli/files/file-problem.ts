import { InputError } from "../../errors.ts";

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  EISDIR: "it is a folder; name a file",
  ENOTDIR: "a part of its path is a file and no folder",
  EACCES: "you may not write there",
  EPERM: "you may not write there",
  EROFS: "the disk can only be read",
  ENOSPC: "the disk is full",
  ERR_INVALID_ARG_VALUE: "its name has a character that no name can have",
};

/** The code of an error of the file system, such as `ENOENT`; the empty text for any other error. */
export function codeOf(error: unknown): string {
  return error instanceof Error && "code" in error ? String(error.code) : "";
}

/** The refusal for a file that would be replaced. */
export function fileExists(path: string): InputError {
  return new InputError(
    "file-exists",
    `${path} is there already; name another file, or replace it with --force.`,
    {
      path: ["file"],
      value: path,
    },
  );
}

/** The refusal for a file that cannot be written. */
export function cannotWrite(path: string, error: unknown): InputError {
  if (error instanceof InputError) return error;
  const why = REASONS[codeOf(error)] ?? (error instanceof Error ? error.message : String(error));
  return new InputError("cannot-write", `${path} cannot be written: ${why}.`, {
    path: ["file"],
    value: path,
  });
}
