import { degreeDaysEach } from "../../src/index.ts";
import { daysOf } from "./days.ts";
import { median } from "./timing.ts";

const CHUNK = 65_536;

/**
 * Cost a day of ever more days, streamed: three columns of a chunk are filled, counted and filled again, as
 * a caller does who reads a file too long for the memory.
 */
export function benchLinearity(withLongest: boolean): void {
  const { min, max } = daysOf(CHUNK);
  const out = new Float64Array(CHUNK);
  console.log(`\nEver more days, streamed in chunks of ${CHUNK}; filling the chunks is not timed`);
  for (const days of withLongest ? [1e6, 1e7, 1e8] : [1e6, 1e7]) {
    const costs = Array.from({ length: days > 1e7 ? 1 : 5 }, () => {
      let [ms, total] = [0, 0];
      for (let done = 0; done < days; done += CHUNK) {
        // Other temperatures in each chunk, so that no two are alike.
        const shift = Math.sin(done);
        for (let i = 0; i < CHUNK; i++) {
          min[i] = (min[i] ?? 0) + shift;
          max[i] = (max[i] ?? 0) + shift;
        }
        const count = Math.min(CHUNK, days - done);
        const begun = performance.now();
        const heat = degreeDaysEach(
          min.subarray(0, count),
          max.subarray(0, count),
          { lower: 10, upper: 22 },
          out.subarray(0, count),
        );
        for (let i = 0; i < count; i++) total += heat[i] ?? 0;
        ms += performance.now() - begun;
        for (let i = 0; i < CHUNK; i++) {
          min[i] = (min[i] ?? 0) - shift;
          max[i] = (max[i] ?? 0) - shift;
        }
      }
      if (!(total > 0)) throw new Error("there must be degree-days");
      return (ms * 1e6) / days;
    });
    const peak = process.resourceUsage().maxRSS / 1024;
    console.log(
      `  ${days.toExponential(0)} days ${median(costs).toFixed(1).padStart(6)} ns a day, peak memory of the process ${peak.toFixed(0)} MB`,
    );
  }
  if (!withLongest) console.log("  1e+8 days: with BENCH_LONG=1");
}
