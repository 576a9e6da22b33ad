// Reads a great many files with faults: `npm run fuzz -- --files 1000000 --seed 1`. Stops at the first broken law,
// with the file that broke it.
import { parseArgs } from "node:util";
import { FILE_KINDS } from "./file-readers.ts";
import { fuzzed } from "./fuzzed.ts";

const { values } = parseArgs({
  options: {
    files: { type: "string", default: "100000" },
    seed: { type: "string", default: "1" },
    all: { type: "boolean", default: false },
  },
});
const [files, first] = [Number(values.files), Number(values.seed)];
const begin = performance.now();
const counts = new Map(FILE_KINDS.map(({ name }) => [name, 0]));
let [broken, read] = [0, 0];
for (let i = 0; i < files; i++) {
  const { kind, fault, file } = fuzzed(first + i);
  read++;
  counts.set(kind, (counts.get(kind) ?? 0) + 1);
  if (fault === null) {
    if (i % 10_000 === 9_999)
      console.log(`${i + 1} files, ${Math.round((performance.now() - begin) / 1000)} s`);
    continue;
  }
  broken++;
  console.error(
    `seed ${first + i}, ${kind}: ${fault.stack ?? fault.message}\n${typeof file === "string" ? file : Buffer.from(file).toString("latin1")}`,
  );
  if (!values.all) break;
}
console.log(
  `${read} files from seed ${first} in ${Math.round((performance.now() - begin) / 1000)} s, ${broken} broken laws`,
);
for (const [name, count] of counts) console.log(`  ${name}: ${count}`);
process.exitCode = broken === 0 ? 0 : 1;
