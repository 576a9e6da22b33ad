import { expect, test } from "vitest";
import { FOUND, moltline, refused } from "./in-memory.ts";

const HERE = `--temperatures new-york.csv ${FOUND}`;
const FILES = { "log.csv": "stage,seen on,count\nhatched,2014-06-10,3\npupated,2014-07-01,3\n" };
const SAYS = "All 2 entries of the log lie about a year before the find";

test.each([
  `forecast ${HERE} --log log.csv --json`,
  `compare ${HERE} --log log.csv --json`,
  `plan ${HERE} --log log.csv --json`,
])("%s says once that the log is of another year", async (words) => {
  const { code, out } = await moltline(words, FILES);
  expect(code).toBe(0);
  expect(out.split(SAYS)).toHaveLength(2);
  expect(out).not.toContain("one of the two dates must be wrong");
});

test("a picture with a cohort and no log to look for it in is refused", async () => {
  expect(await refused(`draw --out a.svg ${HERE} --cohort A`)).toContain("name the log with --log");
});

test("a log is exported with the stages of a species file", async () => {
  const { out: own } = await moltline("species cydia-pomonella --json");
  const { code, out } = await moltline("log export --log log.csv --species-file own.json", {
    ...FILES,
    "own.json": own,
  });
  expect(code).toBe(0);
  expect(out).toContain("larva,2014-06-10");
});
