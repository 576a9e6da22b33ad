import { execFile } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { digests } from "./digest.ts";

const ROOT = new URL("../..", import.meta.url).pathname;
const run = promisify(execFile);

interface Printed {
  readonly locale: string;
  readonly timeZone: string;
  readonly digests: Readonly<Record<string, string>>;
}

let folder = "";
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "moltline-digests-"));
  await build({
    root: ROOT,
    configFile: false,
    logLevel: "silent",
    ssr: { noExternal: true },
    build: {
      ssr: join(ROOT, "tests/determinism/print-digests.ts"),
      outDir: folder,
      minify: false,
      rolldownOptions: { output: { format: "es", entryFileNames: "print.mjs" } },
    },
  });
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the same input gives the same bytes", { timeout: 120_000 }, () => {
  const here = digests();

  it.each([
    { TZ: "UTC", LC_ALL: "C", LANG: "C" },
    { TZ: "Pacific/Apia", LC_ALL: "de_DE.UTF-8", LANG: "de_DE.UTF-8" },
    { TZ: "America/St_Johns", LC_ALL: "tr_TR.UTF-8", LANG: "tr_TR.UTF-8" },
  ])("in a process with TZ $TZ and LC_ALL $LC_ALL", async (environment) => {
    const { stdout } = await run(process.execPath, [join(folder, "print.mjs")], {
      env: { PATH: process.env["PATH"] ?? "", ...environment },
    });
    const printed = JSON.parse(stdout) as Printed;
    expect(printed.timeZone).toBe(environment.TZ);
    expect(printed.locale.slice(0, 2)).toBe(
      { C: "en", "de_DE.UTF-8": "de", "tr_TR.UTF-8": "tr" }[environment.LC_ALL],
    );
    expect(printed.digests).toEqual(here);
  });
});
