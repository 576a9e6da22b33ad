import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { createInterface } from "node:readline";
import { DuckDBInstance } from "@duckdb/node-api";
import { HyperFormula } from "hyperformula";
import { degreeDaysEach } from "../../src/index.ts";
import { daysOf } from "./days.ts";
import { median } from "./timing.ts";

const DAYS = 200_000;
const ROWS = 2_000;
const ROUNDS = 41;
const WARM_UP = 4;
const THRESHOLDS = { lower: 10, upper: 22 };

/** One turn of a peer: nanoseconds a day, and the degree-days of all days where it gives them. */
interface Turn {
  readonly perDay: number;
  readonly sum?: number;
}

interface Peer {
  readonly name: string;
  turn(): Promise<readonly Turn[]>;
  end(): void;
}

/** General engines with the same formula over the same days, each taking its turn after ours. */
export async function benchPeers(): Promise<void> {
  const { min, max } = daysOf(DAYS);
  const out = new Float64Array(DAYS);
  const own = (): number => {
    const begun = performance.now();
    degreeDaysEach(min, max, THRESHOLDS, out);
    return ((performance.now() - begun) * 1e6) / DAYS;
  };
  for (let i = 0; i < 20; i++) own();
  const sum = out.reduce((a, b) => a + b, 0);
  console.log(`\nPeers: single sine, horizontal cutoff, ${DAYS} days, one thread each, turn by turn`);
  for (const start of [numpy, r, duckDb, spreadsheet]) {
    const peer = await start();
    if (typeof peer === "string") {
      console.log(`  left out: ${peer}`);
      continue;
    }
    const mine: number[] = [];
    const theirs: Turn[][] = [];
    for (let round = 0; round < WARM_UP + ROUNDS; round++) {
      mine.push(own());
      theirs.push([...(await peer.turn())]);
    }
    peer.end();
    const names = peer.name.split(" | ");
    names.forEach((name, k) => {
      const turns = theirs.slice(WARM_UP).map((one) => one[k] ?? { perDay: Number.NaN });
      const ours = mine.slice(WARM_UP);
      const times = median(turns.map((one, i) => one.perDay / (ours[i] ?? Number.NaN)));
      const given = turns[0]?.sum;
      const agrees =
        given === undefined || Math.abs(given / sum - 1) < 1e-9 ? "" : `  (its sum is ${given}, not ${sum}!)`;
      console.log(
        `  ${name.padEnd(38)} ${median(turns.map((one) => one.perDay))
          .toFixed(1)
          .padStart(7)} ns a day, ` + `ours ${median(ours).toFixed(1)}: ${times.toFixed(1)} x${agrees}`,
      );
    });
  }
}

function numpy(): Peer | string {
  if (spawnSync("python3", ["-c", "import numpy"]).status !== 0) return "numpy, which is not installed here";
  const script = new URL("peers/degree-days.py", import.meta.url).pathname;
  return inProcess(
    "numpy, whole columns | numpy, blocks of 8192 days",
    spawn("python3", [script, String(DAYS)], {
      env: { ...process.env, OMP_NUM_THREADS: "1" },
      stdio: ["pipe", "pipe", "inherit"],
    }),
    ([whole = Number.NaN, blocks = Number.NaN, sum = Number.NaN]) => [
      { perDay: whole, sum },
      { perDay: blocks },
    ],
  );
}

function r(): Peer | string {
  if (spawnSync("Rscript", ["--version"]).status !== 0) return "R, which is not installed here";
  const script = new URL("peers/degree-days.R", import.meta.url).pathname;
  return inProcess(
    "R, vectors",
    spawn("Rscript", ["--vanilla", script, String(DAYS)], { stdio: ["pipe", "pipe", "inherit"] }),
    ([perDay = Number.NaN, sum = Number.NaN]) => [{ perDay, sum }],
  );
}

/** A peer that lives in a process of its own and takes a turn for each line that it is sent. */
function inProcess(name: string, child: ChildProcess, read: (numbers: number[]) => Turn[]): Peer {
  const { stdin, stdout } = child;
  if (stdin === null || stdout === null) throw new Error(`${name} has no pipes`);
  const lines = createInterface({ input: stdout })[Symbol.asyncIterator]();
  return {
    name,
    async turn() {
      stdin.write("\n");
      const { value } = await lines.next();
      return read(String(value).split(" ").map(Number));
    },
    end: () => stdin.end(),
  };
}

async function duckDb(): Promise<Peer> {
  const instance = await DuckDBInstance.create(":memory:");
  const connection = await instance.connect();
  await connection.run("SET threads = 1");
  await connection.run(
    `CREATE TABLE days AS
       SELECT low, low + 6 + 5 * sin(i * 1.3) * sin(i * 1.3) AS high
       FROM (SELECT i, 12 + 8 * sin(i) - 4 * cos(i * 0.7) AS low FROM range(${DAYS}) t(i))`,
  );
  const excess = (t: number): string =>
    `CASE WHEN high <= ${t} THEN 0 WHEN low >= ${t} THEN mean - ${t}
       ELSE ((mean - ${t}) * (pi() / 2 + asin((mean - ${t}) / half))
         + sqrt(half * half - (mean - ${t}) * (mean - ${t}))) / pi() END`;
  const query = `SELECT sum(${excess(THRESHOLDS.lower)} - ${excess(THRESHOLDS.upper)})
    FROM (SELECT low, high, (high - low) / 2 AS half, low + (high - low) / 2 AS mean FROM days)`;
  return {
    name: "DuckDB, SQL, the sum alone",
    async turn() {
      const begun = performance.now();
      const reader = await connection.runAndReadAll(query);
      const perDay = ((performance.now() - begun) * 1e6) / DAYS;
      return [{ perDay, sum: Number(reader.getRows()[0]?.[0]) }];
    },
    end() {
      connection.closeSync();
      instance.closeSync();
    },
  };
}

function spreadsheet(): Peer {
  const { min, max } = daysOf(ROWS);
  const excess = (t: string, low: string, high: string): string => {
    const half = `((${high}-${low})/2)`;
    const below = `((${low}+${high})/2-${t})`;
    return `IF(${high}<=${t},0,IF(${low}>=${t},${below},(${below}*(PI()/2+ASIN(${below}/${half}))+SQRT(${half}^2-${below}^2))/PI()))`;
  };
  const rows = Array.from(min, (low, i) => {
    const [a, b] = [`A${i + 2}`, `B${i + 2}`];
    return [low, max[i] ?? 0, `=${excess("$A$1", a, b)}-${excess("$B$1", a, b)}`];
  });
  const book = HyperFormula.buildFromArray([[THRESHOLDS.lower, THRESHOLDS.upper, null], ...rows], {
    licenseKey: "gpl-v3",
  });
  let warmer = false;
  return {
    name: `a spreadsheet recalculated (${ROWS} rows)`,
    turn() {
      warmer = !warmer;
      const begun = performance.now();
      book.setCellContents({ sheet: 0, row: 0, col: 0 }, THRESHOLDS.lower + (warmer ? 0.5 : 0));
      return Promise.resolve([{ perDay: ((performance.now() - begun) * 1e6) / ROWS }]);
    },
    end: () => book.destroy(),
  };
}
