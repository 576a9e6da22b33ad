import { FILE_KINDS } from "./file-readers.ts";
import { mutatedFile } from "./mutated-files.ts";
import { oneOf, randomNumbers } from "./random-numbers.ts";

/** One file with faults, read; the same seed gives the same file. */
export function fuzzed(seed: number): { kind: string; file: string | Uint8Array; fault: Error | null } {
  const random = randomNumbers(seed);
  const { name, files, read } = oneOf(FILE_KINDS, random);
  const file = mutatedFile(oneOf(files, random), random);
  try {
    read(file);
    return { kind: name, file, fault: null };
  } catch (error) {
    return { kind: name, file, fault: error instanceof Error ? error : new Error(String(error)) };
  }
}
