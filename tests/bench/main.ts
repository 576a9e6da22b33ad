// Ratios of medians, paired, turn by turn. Nothing here is asserted: machines differ.
// BENCH_LONG=1 streams 1e8 days too. Names as arguments run those topics alone.
import { cpus, loadavg } from "node:os";
import { benchColumns, benchObjects } from "./degree-days.ts";
import { benchForecasts } from "./forecasts.ts";
import { benchLinearity } from "./linearity.ts";
import { benchPeers } from "./peers.ts";

const { BENCH_LONG } = process.env;

const topics: Readonly<Record<string, () => void | Promise<void>>> = {
  // First, so that the peak memory is its own.
  linearity: () => benchLinearity(BENCH_LONG === "1"),
  columns: benchColumns,
  objects: benchObjects,
  peers: benchPeers,
  forecasts: benchForecasts,
};

const [, , ...asked] = process.argv;
const load = loadavg()[0]?.toFixed(1);
console.log(`${cpus()[0]?.model.trim()}, ${cpus().length} cores, load ${load}; Node ${process.version}`);
for (const [name, bench] of Object.entries(topics)) {
  if (asked.length === 0 || asked.includes(name)) await bench();
}
