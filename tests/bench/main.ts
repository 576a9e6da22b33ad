// Ratios of medians, paired in one process. Nothing here is asserted: machines differ.
import { cpus } from "node:os";
import { benchDegreeDays } from "./degree-days.ts";
import { benchForecasts } from "./forecasts.ts";

console.log(`${cpus()[0]?.model}, Node ${process.version}`);
benchDegreeDays();
benchForecasts();
