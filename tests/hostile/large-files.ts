// Time and memory of reading large files, one size in each process: `npx tsx tests/hostile/large-files.ts 1000000`.
import { InputError } from "../../src/errors.ts";
import { readTemperatures } from "../../src/read/index.ts";

const rows = Number(process.argv[2] ?? 1_000_000);

/** Readings every minute, as bytes: rows of 21 bytes. */
function readings(count: number): Uint8Array {
  const bytes = Buffer.alloc(17 + 22 * count);
  let at = bytes.write("time,temp degC\n");
  const first = Date.UTC(2000, 0, 1);
  for (let i = 0; i < count; i++) {
    const stamp = new Date(first + i * 60_000).toISOString().slice(0, 16).replace("T", " ");
    at += bytes.write(`${stamp},${(15 + 5 * Math.sin(i / 229)).toFixed(1)}\n`, at);
  }
  return new Uint8Array(bytes.subarray(0, at));
}

const bytes = readings(rows);
const [before, begin] = [process.memoryUsage().rss, process.cpuUsage()];
let outcome: string;
try {
  const { series } = readTemperatures(bytes, { unit: "C" });
  outcome = series.kind === "readings" ? `read, ${series.at.length} readings` : series.kind;
} catch (error) {
  if (!(error instanceof InputError)) throw error;
  outcome = `refused: ${error.message}`;
}
const { user, system } = process.cpuUsage(begin);
const megabytes = (size: number): number => Math.round(size / 2 ** 20);
console.log(
  `${rows} rows, ${megabytes(bytes.length)} MiB: ${outcome}; ${((user + system) / 1e6).toFixed(1)} s of the processor, peak ${megabytes(process.resourceUsage().maxRSS * 1024)} MiB, of which ${megabytes(before)} MiB before reading`,
);
