import { type ChildProcess, spawn } from "node:child_process";
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { claimFile } from "../../src/cli/files/claim-file.ts";
import { updateFile } from "../../src/cli/files/update-file.ts";
import { writeFileWhole } from "../../src/cli/files/write-file.ts";
import { InputError } from "../../src/errors.ts";
import { readLog } from "../../src/read/log/log-csv.ts";
import { builtProgram } from "./built-program.ts";

const HEADER = "stage,seen on,count,note,written\n";

let top = "";
let folder = "";
let log = "";
let program = { main: "", updateFile: "" };

beforeAll(async () => {
  top = mkdtempSync(join(tmpdir(), "moltline-log-"));
  const built = join(top, "built");
  mkdirSync(built);
  program = await builtProgram(built);
}, 120_000);
afterAll(() => rmSync(top, { recursive: true, force: true }));
beforeEach(() => {
  folder = mkdtempSync(join(top, "case-"));
  log = join(folder, "log.csv");
  writeFileSync(log, HEADER);
});

/** How a process ended: its exit status, and what it said on standard error. */
function ended(child: ChildProcess): Promise<{ code: number | null; err: string }> {
  return new Promise((resolve, reject) => {
    let err = "";
    child.stderr?.on("data", (chunk: Buffer) => (err += chunk.toString()));
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, err }));
  });
}

const add = (note: string, ...nodeOptions: string[]): ChildProcess =>
  spawn(process.execPath, [
    ...nodeOptions,
    ...[program.main, "log", "add", "--log", log],
    ...["--stage", "pupated", "--on", "2026-06-25", "--note", note],
  ]);

async function refusalOf(promise: Promise<unknown>): Promise<InputError> {
  try {
    await promise;
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error("not refused");
}

const append = (text: string) => (bytes: Uint8Array) => Buffer.concat([bytes, Buffer.from(text)]);

describe("many writers at once", { timeout: 180_000 }, () => {
  it("twenty processes that each add a row leave twenty rows and nothing else", async () => {
    const notes = Array.from({ length: 20 }, (_, i) => `row of ${i}`);
    const ends = await Promise.all(notes.map((note) => ended(add(note))));
    expect(ends).toEqual(notes.map(() => ({ code: 0, err: "" })));
    const { entries } = readLog(readFileSync(log));
    expect(entries.map(({ note }) => note).sort()).toEqual([...notes].sort());
    expect(readdirSync(folder)).toEqual(["log.csv"]);
  });

  it("twenty in one process too", async () => {
    await Promise.all(Array.from({ length: 20 }, (_, i) => updateFile(log, append(`${i}\n`))));
    const lines = readFileSync(log, "utf8").trimEnd().split("\n").slice(1);
    expect(lines.map(Number).sort((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, i) => i));
  });
});

describe("a process that is killed", { timeout: 180_000 }, () => {
  // Adds line after line to a file that takes a while to write, and tells of each that is done.
  const adder = (): ChildProcess => {
    const code = [
      `import { updateFile } from ${JSON.stringify(program.updateFile)};`,
      "for (let i = Number(process.argv[1]); ; i++) {",
      `  await updateFile(${JSON.stringify(log)}, (bytes) => Buffer.concat([bytes, Buffer.from(i + " end\\n")]));`,
      '  process.stdout.write(i + "\\n");',
      "}",
    ].join("\n");
    const next = readFileSync(log, "utf8").trimEnd().split("\n").length - 1;
    return spawn(process.execPath, ["--input-type=module", "-e", code, String(next)]);
  };

  it("leaves the old file or the new one, whole, and the next goes on at once", async () => {
    writeFileSync(log, `${HEADER.trimEnd()}${"x".repeat(4_000_000)}\n`);
    let caught = 0;
    // At least twelve, and more on a machine so slow or fast that none was killed at work.
    for (let round = 0; round < 12 || (caught === 0 && round < 60); round++) {
      const child = adder();
      let told = -1;
      await new Promise<void>((resolve) => {
        child.stdout?.on("data", (chunk: Buffer) => {
          told = Number(chunk.toString().trim().split("\n").at(-1));
          resolve();
        });
      });
      await sleep((round * 7) % 90);
      const end = ended(child);
      child.kill("SIGKILL");
      await end;
      const text = readFileSync(log, "utf8");
      const lines = text.split("\n").slice(1, -1);
      expect(text.endsWith("\n")).toBe(true);
      expect(lines).toEqual(lines.map((_, i) => `${i} end`));
      // What was told as done is there.
      expect(lines.length).toBeGreaterThan(told);
      if (readdirSync(folder).length > 1) caught++;
    }
    // Some were killed at work and left their claim behind, which holds nobody up.
    expect(caught).toBeGreaterThan(0);
    const start = Date.now();
    await updateFile(log, append("last\n"));
    expect(Date.now() - start).toBeLessThan(5000);
    expect(readdirSync(folder)).toEqual(["log.csv"]);
  });
});

describe("claims", () => {
  const claimOf = (host: string, pid: number): string => {
    const path = join(folder, `log.csv.${host}.${pid}.00000000-0000-4000-8000-000000000000.claim`);
    writeFileSync(path, "");
    return path;
  };
  const here = hostname().replace(/[^\w-]/g, "_");

  it("a living one is waited for, and then said to be in the way", async () => {
    const path = claimOf(here, process.pid);
    const error = await refusalOf(claimFile(log, 100));
    expect(error.code).toBe("file-busy");
    expect(error.message).toContain(".claim beside it");
    expect(readdirSync(folder).sort()).toEqual(["log.csv", path.slice(folder.length + 1)]);
  });

  it("one of a process that ended is cleared away with its draft", async () => {
    const child = spawn(process.execPath, ["-e", ""]);
    await ended(child);
    writeFileSync(`${claimOf(here, child.pid ?? 1)}.draft`, "half of a fi");
    await updateFile(log, append("row\n"));
    expect(readdirSync(folder)).toEqual(["log.csv"]);
  });

  it("one of another machine is cleared away when it is old", async () => {
    const path = claimOf("elsewhere", 1);
    expect((await refusalOf(claimFile(log, 50))).code).toBe("file-busy");
    const old = Date.now() / 1000 - 300;
    utimesSync(path, old, old);
    await updateFile(log, append("row\n"));
    expect(readdirSync(folder)).toEqual(["log.csv"]);
  });

  it("other files beside the log are not touched", async () => {
    for (const name of ["log.csv.old.claim", "log.csv.bak", "log.csv.a.1.b.claim"]) {
      writeFileSync(join(folder, name), "mine");
      utimesSync(join(folder, name), 1, 1);
    }
    await updateFile(log, append("row\n"));
    expect(readdirSync(folder)).toHaveLength(4);
  });

  it("a holder whose claim was cleared away meanwhile writes nothing over the others", async () => {
    let times = 0;
    await updateFile(log, (bytes) => {
      times++;
      if (times === 1) {
        for (const name of readdirSync(folder)) if (name.endsWith(".claim")) rmSync(join(folder, name));
      }
      return append(`row ${times}\n`)(bytes);
    });
    expect(readFileSync(log, "utf8")).toBe(`${HEADER}row 2\n`);
  });
});

describe("changing a file", () => {
  it("that a program without a claim changes meanwhile: nothing of it is lost", async () => {
    let times = 0;
    await updateFile(log, (bytes) => {
      if (++times === 1) writeFileSync(log, `${HEADER}by hand\n`);
      return append("by us\n")(bytes);
    });
    expect(readFileSync(log, "utf8")).toBe(`${HEADER}by hand\nby us\n`);
  });

  it("keeps who may read a file that is replaced", async () => {
    chmodSync(log, 0o640);
    await writeFileWhole(log, "new\n", true);
    expect(readFileSync(log, "utf8")).toBe("new\n");
    expect(statSync(log).mode & 0o777).toBe(0o640);
  });

  it("keeps who may read it, and follows a link to it", async () => {
    const link = join(folder, "link.csv");
    symlinkSync(log, link);
    const mode = statSync(log).mode;
    await updateFile(link, append("row\n"));
    expect(readFileSync(log, "utf8")).toBe(`${HEADER}row\n`);
    expect(readdirSync(folder).sort()).toEqual(["link.csv", "log.csv"]);
    expect(statSync(log).mode).toBe(mode);
  });

  it("what the change throws leaves it as it is", async () => {
    await expect(
      updateFile(log, () => {
        throw new Error("no");
      }),
    ).rejects.toThrow("no");
    expect(readFileSync(log, "utf8")).toBe(HEADER);
    expect(readdirSync(folder)).toEqual(["log.csv"]);
  });

  it("that is not there, or is standard input, is refused", async () => {
    expect((await refusalOf(updateFile(join(folder, "gone.csv"), append("x")))).message).toContain(
      "no such file",
    );
    expect((await refusalOf(updateFile("-", append("x")))).message).toContain("name a file");
    expect(readdirSync(folder)).toEqual(["log.csv"]);
  });
});

describe("writing a file", () => {
  const target = (): string => join(folder, "out.ics");

  it("anew, and over one only when told", async () => {
    await writeFileWhole(target(), "one");
    const error = await refusalOf(writeFileWhole(target(), "two"));
    expect(error.code).toBe("file-exists");
    expect(error.message).toContain("--force");
    expect(readFileSync(target(), "utf8")).toBe("one");
    await writeFileWhole(target(), "two", true);
    expect(readFileSync(target(), "utf8")).toBe("two");
    expect(readdirSync(folder).sort()).toEqual(["log.csv", "out.ics"]);
  });

  it("of ten that write at once one wins, and its text is whole", async () => {
    const ends = await Promise.allSettled(
      Array.from({ length: 10 }, (_, i) => writeFileWhole(target(), String(i).repeat(100_000))),
    );
    expect(ends.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
    expect(readFileSync(target(), "utf8")).toMatch(/^(\d)\1{99999}$/);
  });

  it("where there is no folder is refused", async () => {
    const error = await refusalOf(writeFileWhole(join(folder, "none", "out.ics"), "x"));
    expect(error.message).toMatch(/out\.ics cannot be written: there is no such file or folder\./);
  });
});
