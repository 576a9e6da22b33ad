#!/usr/bin/env node
import { readInput } from "./files/read-input.ts";
import { run } from "./run.ts";
import { updateFile } from "./files/update-file.ts";
import { isThere, writeFileWhole } from "./files/write-file.ts";

// A reader that closes early, such as `head`, is not an error.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  read: readInput,
  write: writeFileWhole,
  isThere,
  update: updateFile,
  now: () => Date.now(),
});
