import { randomUUID } from "node:crypto";
import { open, readdir, rm, stat } from "node:fs/promises";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { InputError } from "../../errors.ts";
import { codeOf } from "./file-problem.ts";

/** A claim whose maker cannot be asked counts as left behind after this long; changing a file takes milliseconds. */
const OLD_MS = 180_000;

/** What follows the name of the file: host, process, a name never used again. Other files are not touched. */
const CLAIM = /^[\w-]+\.\d+\.[0-9a-f-]{36}\.claim$/;

/** How long to wait for others. */
const PATIENCE_MS = 60_000;

/** The sole right to change a file, until it is given back. */
export interface Claim {
  /** Name for a draft; drafts of makers that ended halfway are cleared away with their claims. */
  readonly draft: string;
  /** Whether it was not taken for left behind and cleared away, as after a sleep of the machine. */
  readonly stands: () => Promise<boolean>;
  readonly release: () => Promise<void>;
}

/**
 * Claims a file. Each maker has a claim file of its own name beside it, and holds the right when it has made its
 * claim and then sees no other: of two that come together at least one sees the other. Claims of processes that
 * ended are cleared away, which harms nobody, since no name is used twice.
 * @param path The file itself, no link to it.
 * @throws {InputError} `file-busy` after a minute.
 */
export async function claimFile(path: string, patienceMs = PATIENCE_MS): Promise<Claim> {
  const own = `${basename(path)}.${marked(hostname())}.${process.pid}.${randomUUID()}.claim`;
  const claim = join(dirname(path), own);
  const draft = `${claim}.draft`;
  const release = (): Promise<void> => rm(claim, { force: true });
  const start = Date.now();
  for (;;) {
    const others = await livingClaims(path, own);
    if (others.length === 0) {
      await makeOnce(claim);
      const rivals = await livingClaims(path, own);
      if (rivals.length === 0) return { draft, stands: async () => exists(claim), release };
      // The first by name stays in the queue, or two could make way for each other for ever.
      if (rivals.some((rival) => rival < own)) await release();
    } else if (others.some((other) => other < own)) {
      await release();
    }
    if (Date.now() - start > patienceMs) {
      await release();
      throw busy(path, others[0] ?? own);
    }
    // By chance, so that those who wait do not come back together.
    await sleep(2 + Math.random() * 20);
  }
}

/** Claims by others whose makers are still at work; those left behind are cleared away. */
async function livingClaims(path: string, own: string): Promise<string[]> {
  const folder = dirname(path);
  const prefix = `${basename(path)}.`;
  const claims = (await readdir(folder)).filter(
    (name) => name.startsWith(prefix) && CLAIM.test(name.slice(prefix.length)) && name !== own,
  );
  const living: string[] = [];
  for (const name of claims) {
    if (await isLiving(join(folder, name), name.slice(prefix.length))) living.push(name);
    else {
      await rm(join(folder, `${name}.draft`), { force: true });
      await rm(join(folder, name), { force: true });
    }
  }
  return living;
}

async function isLiving(claim: string, name: string): Promise<boolean> {
  const [host, pid] = name.split(".");
  if (host === marked(hostname()) && !runs(Number(pid))) return false;
  try {
    return Date.now() - (await stat(claim)).mtimeMs < OLD_MS;
  } catch (error) {
    if (codeOf(error) === "ENOENT") return false;
    throw error;
  }
}

function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // A process of somebody else runs too.
    return codeOf(error) === "EPERM";
  }
}

async function makeOnce(claim: string): Promise<void> {
  try {
    await (await open(claim, "wx")).close();
  } catch (error) {
    if (codeOf(error) !== "EEXIST") throw error;
  }
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

function marked(host: string): string {
  return host.replace(/[^\w-]/g, "_") || "_";
}

function busy(path: string, claim: string): InputError {
  return new InputError(
    "file-busy",
    `${path} is being changed by another program, which does not finish; try again. If none is at work, remove ${claim} beside it.`,
    { path: ["file"], value: path },
  );
}
