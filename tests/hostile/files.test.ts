import { describe, expect, it } from "vitest";
import { FILE_KINDS } from "./file-readers.ts";
import { fuzzed } from "./fuzzed.ts";

const FILES = 6 * Number(process.env["FC_RUNS"] ?? 100);

describe("files with faults", () => {
  it.each(FILE_KINDS)("$name: right ones keep the laws", ({ files, read }) => {
    for (const file of files) read(file);
  });

  it("are read or refused, without loss, NaN or delay", () => {
    // `npm run fuzz` reads a great many more of the same; a seed names a file.
    for (let seed = 1; seed <= FILES; seed++) {
      const { kind, file, fault } = fuzzed(seed);
      expect(fault, `seed ${seed}, ${kind}:\n${String(file).slice(0, 2000)}`).toBeNull();
    }
  });
});
