// How long the built command line takes to start and end, against Node alone: medians of ratios, each round
// running every command once. Nothing is asserted: machines differ. Run `npm run build` first.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";

const ROOT = new URL("../..", import.meta.url).pathname;
const MAIN = join(ROOT, "dist/cli/main.js");
const ROUNDS = Number(process.argv[2] ?? 21);
const LIMIT = 2.5;

const folder = mkdtempSync(join(tmpdir(), "moltline-start-"));
const small = join(folder, "three-days.csv");
writeFileSync(small, "date,min,max\n2015-06-08,15,27\n2015-06-09,15,27\n2015-06-10,15,27\n");
const large = join(ROOT, "fixtures/temperatures/new-york-2012-2015.csv");

const from = (file: string): string[] => ["--temperatures", file, "--unit", "C"];
const found = ["--species", "danaus-plexippus", "--found", "egg", "--on", "2015-06-08", "--count", "12"];
// With three days to read, reading costs next to nothing; with four years it is seen apart.
const cases: Readonly<Record<string, readonly string[]>> = {
  "node -e 0": ["-e", "0"],
  "--help": [MAIN, "--help"],
  "forecast --help": [MAIN, "forecast", "--help"],
  species: [MAIN, "species"],
  "degree-days, 3 days": [MAIN, "degree-days", ...from(small), "--lower", "10"],
  "degree-days, 4 years": [MAIN, "degree-days", ...from(large), "--lower", "10"],
  "forecast, 3 days": [MAIN, "forecast", ...from(small), ...found],
  "forecast, 4 years": [MAIN, "forecast", ...from(large), ...found],
};

const times = new Map(Object.keys(cases).map((name): [string, number[]] => [name, []]));
for (let round = 0; round < ROUNDS + 1; round++) {
  for (const [name, words] of Object.entries(cases)) {
    const begun = performance.now();
    const { status, stderr } = spawnSync(process.execPath, words, { encoding: "utf8" });
    if (status !== 0) throw new Error(`${name}: ${stderr}`);
    // The first round fills the file cache.
    if (round > 0) times.get(name)?.push(performance.now() - begun);
  }
}
rmSync(folder, { recursive: true });

const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[list.length >> 1] ?? NaN;
const alone = times.get("node -e 0") ?? [];
console.log(`${cpus()[0]?.model}, Node ${process.version}, ${ROUNDS} rounds`);
for (const [name, list] of times) {
  const ratio = median(list.map((time, i) => time / (alone[i] ?? NaN)));
  const over = ratio > LIMIT ? `  over ${LIMIT}` : "";
  console.log(`  ${name.padEnd(22)} ${median(list).toFixed(0).padStart(5)} ms  ${ratio.toFixed(2)} x${over}`);
}
