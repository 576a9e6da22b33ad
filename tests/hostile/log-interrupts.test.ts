import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statfsSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readLog } from "../../src/read/log/log-csv.ts";
import { builtProgram } from "../cli/built-program.ts";
import { randomNumbers } from "./random-numbers.ts";

const HEADER = "stage,seen on,count,note,written\n";

let top = "";
let main = "";

beforeAll(async () => {
  top = mkdtempSync(join(tmpdir(), "moltline-interrupts-"));
  const built = join(top, "built");
  mkdirSync(built);
  ({ main } = await builtProgram(built));
}, 120_000);
afterAll(() => rmSync(top, { recursive: true, force: true }));

const add = (log: string, note: string): ChildProcess =>
  spawn(process.execPath, [
    ...[main, "log", "add", "--log", log],
    ...["--stage", "pupated", "--on", "2026-06-25", "--note", note],
  ]);

/** How a process ended: its exit status or signal, and what it said on standard error. */
function ended(child: ChildProcess): Promise<{ code: number | null; signal: string | null; err: string }> {
  return new Promise((resolve, reject) => {
    let err = "";
    child.stderr?.on("data", (chunk: Buffer) => (err += chunk.toString()));
    child.stdout?.resume();
    child.on("error", reject);
    child.on("close", (code, signal) => resolve({ code, signal, err }));
  });
}

const notesIn = (log: string): string[] => {
  const text = readFileSync(log, "utf8");
  return text === HEADER ? [] : readLog(text).entries.map(({ note }) => note ?? "");
};

describe("log add, killed at a moment of chance", { timeout: 180_000 }, () => {
  it("loses no row that it said was written, writes none twice, and the next writer goes on", async () => {
    const folder = mkdtempSync(join(top, "kill-"));
    const log = join(folder, "log.csv");
    writeFileSync(log, HEADER);
    const random = randomNumbers(20_260_608);
    const acknowledged: string[] = [];
    let killed = 0;
    const writer = async (name: string): Promise<void> => {
      for (let i = 0; i < 4; i++) {
        const note = `${name} ${i}`;
        const child = add(log, note);
        const end = ended(child);
        // Half of them are killed, most while they start, some while they write.
        if (random() < 0.5) void sleep(50 + random() * 900).then(() => child.kill("SIGKILL"));
        const { code, signal, err } = await end;
        if (signal === "SIGKILL") killed++;
        else expect({ code, err }).toEqual({ code: 0, err: "" });
        if (code === 0) acknowledged.push(note);
        // At every moment the file is one that can be read.
        notesIn(log);
      }
    };
    await Promise.all(["a", "b", "c"].map(writer));
    const notes = notesIn(log);
    expect(killed + acknowledged.length).toBe(12);
    expect(new Set(notes).size).toBe(notes.length);
    expect(notes).toEqual(expect.arrayContaining(acknowledged));
    const last = await ended(add(log, "last"));
    expect(last).toEqual({ code: 0, signal: null, err: "" });
    expect(notesIn(log).at(-1)).toBe("last");
    expect(readdirSync(folder)).toEqual(["log.csv"]);
  });
});

/** A small disk of its own; a reason in words where there can be none. */
function smallDisk(folder: string): string | null {
  try {
    mkdirSync(folder, { recursive: true });
    execFileSync("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", folder], { stdio: "pipe" });
    return null;
  } catch (error) {
    return error instanceof Error ? (error.message.split("\n")[0] ?? "mount failed") : "mount failed";
  }
}

describe("log add on a full disk", { timeout: 60_000 }, () => {
  it("says so, leaves the log as it was, and works again when there is room", async (context) => {
    const disk = join(top, "disk");
    const reason = smallDisk(disk);
    if (reason !== null) return context.skip(`no small disk can be mounted here: ${reason}`);
    try {
      const log = join(disk, "log.csv");
      writeFileSync(log, `${HEADER}pupated,2026-06-24,1,first,\n`);
      const before = readFileSync(log, "utf8");
      const ballast = join(disk, "ballast");
      const { bavail, bsize } = statfsSync(disk);
      writeFileSync(ballast, Buffer.alloc(bavail * bsize));
      const { code, err } = await ended(add(log, "second"));
      expect(code).toBe(2);
      expect(err).toMatch(/^moltline: .*log\.csv cannot be written: .*\n$/);
      expect(readFileSync(log, "utf8")).toBe(before);
      expect(readdirSync(disk).sort()).toEqual(["ballast", "log.csv"]);
      rmSync(ballast);
      expect(await ended(add(log, "third"))).toMatchObject({ code: 0, err: "" });
      expect(notesIn(log)).toEqual(["first", "third"]);
      expect(readdirSync(disk)).toEqual(["log.csv"]);
    } finally {
      execFileSync("umount", [disk]);
    }
  });
});
