// Prints the figures of docs/scale.md. Each part runs in a process of its own, so that its peak memory is its own.
// npm run report:scale -- [days for the library] [days for DuckDB]
import { fork } from "node:child_process";
import { cpus, loadavg } from "node:os";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import type { Streamed } from "./scale-days.ts";
import { type ParquetRun, runParquet } from "./scale-parquet.ts";
import { type LibraryRun, scaleMarkdown } from "./scale.ts";

const [part = "all", size = "", threads = ""] = process.argv.slice(2);

/** What reads TypeScript in a process does not reach into its threads, so the thread asks for it itself. */
const THREAD = `
  const { parentPort, workerData } = require("node:worker_threads");
  import("tsx/esm/api")
    .then(({ tsImport }) => tsImport(workerData, workerData))
    .then(({ streamDays }) => {
      parentPort.once("message", (days) => parentPort.postMessage(streamDays(days)));
      parentPort.postMessage("ready");
    });
`;

function messageOf(worker: Worker): Promise<Streamed> {
  return new Promise((resolve, reject) => {
    worker.once("message", resolve);
    worker.once("error", reject);
  });
}

async function streamOn(count: number, days: number): Promise<Omit<LibraryRun, "peak">> {
  const module = new URL("scale-days.ts", import.meta.url).href;
  const workers = Array.from({ length: count }, () => new Worker(THREAD, { eval: true, workerData: module }));
  await Promise.all(workers.map(messageOf));
  const [begun, cpu] = [performance.now(), process.cpuUsage()];
  for (const worker of workers) worker.postMessage(days / count);
  const threads = await Promise.all(workers.map(messageOf));
  const { user, system } = process.cpuUsage(cpu);
  return { threads, seconds: (performance.now() - begun) / 1000, busy: (user + system) / 1e6 };
}

/** What a part sends back from its process, with its peak memory. */
function partOf<T>(...given: readonly string[]): Promise<T & { readonly peak: number }> {
  return new Promise((resolve, reject) => {
    const child = fork(fileURLToPath(import.meta.url), given);
    child.once("message", (message: T & { readonly peak: number }) => resolve(message));
    child.once("exit", (code) => reject(new Error(`${given.join(" ")} ended with ${code}`)));
  });
}

function send(result: object): void {
  // maxRSS is in kilobytes.
  process.send?.({ ...result, peak: process.resourceUsage().maxRSS * 1024 });
}

if (part === "library") send(await streamOn(Number(threads), Number(size)));
else if (part === "parquet") send(await runParquet(Number(size), [1, 2]));
else {
  const [libraryDays, parquetDays] = [part === "all" ? "2e8" : part, size === "" ? "2e7" : size];
  const [before = 0] = loadavg();
  const library = [];
  for (const count of ["1", "2"])
    library.push(await partOf<Omit<LibraryRun, "peak">>("library", libraryDays, count));
  const parquet = await partOf<ParquetRun>("parquet", parquetDays);
  const [after = 0] = loadavg();
  const machine = `${cpus()[0]?.model ?? "unknown processor"}, ${cpus().length} processors`;
  const day = new Date().toISOString().slice(0, 10);
  process.stdout.write(
    `${scaleMarkdown({ machine, node: process.version, day, load: [before, after] }, library, parquet)}\n`,
  );
}
