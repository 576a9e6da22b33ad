import { describe, expect, it } from "vitest";
import type { Forecast } from "../../src/forecast/question/result.ts";
import type { DayPlan } from "../../src/rearing/plan/day-plan-result.ts";
import { expectPlainPage } from "../write/plain-text.ts";
import { FOUND, moltline, refused } from "./in-memory.ts";

const HERE = `plan --temperatures new-york.csv ${FOUND} --count 12`;
const SEVERAL = "plan --temperatures new-york.csv --unit C --cohorts cohorts.csv";
const COHORTS =
  "name,species,found,on,count,age,cages\nporch,danaus-plexippus,egg,2015-06-08,12,new,2\nshelf,monarch,L3,2015-06-15,3,,\n";

const planOf = async (words: string, files = {}): Promise<DayPlan> => {
  const { code, out, err } = await moltline(`${words} --json`, files);
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out);
};

describe("plan", () => {
  it("prints a plan that fits the page", async () => {
    const { code, out, err, written } = await moltline(HERE);
    expect([code, err, written]).toEqual([0, "", {}]);
    expectPlainPage(out);
    expect(out).toContain("12 eggs, found on Mon 8 Jun 2015");
    expect(out).toMatch(/Sun {2}5 Jul {2}\[ \] Watch for emergence/);
    expect(out).toContain("TAKE CARE");
  });

  it("names every option it has in its help", async () => {
    const { out } = await moltline("plan --help");
    expectPlainPage(out);
    for (const name of [
      "cohorts",
      "name",
      "cages",
      "per-cage",
      "clean-every",
      "away",
      "leaves-per-larva",
      "stock",
    ])
      expect(out).toContain(`--${name}`);
    for (const name of ["delivery", "leaves-per-stem", "page", "force", "json", "species", "temperatures"])
      expect(out).toContain(`--${name}`);
  });

  it("prints JSON alone with --json", async () => {
    const plan = await planOf(
      `${HERE} --away 2015-07-04 --away 2015-07-05 --stock 60 --leaves-per-stem 12 --name porch`,
    );
    expect(plan.cohorts).toMatchObject([{ name: "porch", count: 12, cages: 1, adults: "release" }]);
    expect(plan.foliage).toMatchObject([{ food: "milkweed", supplied: 60, leavesPerStem: 12 }]);
    expect(plan.conflicts.map(({ code }) => code)).toEqual(
      expect.arrayContaining(["nobody-there", "foliage-short", "cage-crowded"]),
    );
    expect(plan.days.filter(({ away }) => away).map(({ day }) => day)).toEqual(["2015-07-04", "2015-07-05"]);
  });

  it("takes cages, limits, cleaning, deliveries and own needs", async () => {
    const plan = await planOf(
      `${HERE} --cages 2 --clean-every 3 --stock 10 --delivery 2015-06-15=90 --leaves-per-larva 6`,
    );
    expect(plan.conflicts.map(({ code }) => code)).not.toContain("cage-crowded");
    expect(plan.foliage[0]?.total).toBeCloseTo(72, 6);
    expect(plan.foliage[0]?.supplied).toBe(100);
    expect((await planOf(`${HERE} --per-cage 3`)).cageLimit.larvae).toBe(3);
  });

  it("plans several cohorts from a table or from JSON", async () => {
    const plan = await planOf(`${SEVERAL} --stock 200`, { "cohorts.csv": COHORTS });
    expect(plan.cohorts.map(({ name, count, cages }) => [name, count, cages])).toEqual([
      ["porch", 12, 2],
      ["shelf", 3, 1],
    ]);
    const json = JSON.stringify([
      { name: "porch", species: "monarch", found: "egg", on: "2015-06-08", count: 12, age: "new", cages: 2 },
      { name: "shelf", species: "monarch", found: "instar-3", on: "2015-06-15", count: 3 },
    ]);
    expect(await planOf(`${SEVERAL} --stock 200`, { "cohorts.csv": json })).toEqual(plan);
    const { out } = await moltline(SEVERAL, { "cohorts.csv": COHORTS });
    expectPlainPage(out);
    expect(out).toContain("[ ] porch: ");
  });

  it("plans never-release species to the freezer", async () => {
    const { out } = await moltline(
      "plan --temperatures new-york.csv --unit C --species pieris-rapae --found egg --on 2015-06-08",
    );
    expectPlainPage(out);
    expect(out).toContain("Freeze, never release");
    expect(out).not.toContain("Release healthy adults");
  });

  it("writes a page, and replaces one only when told to", async () => {
    const { out, written } = await moltline(`${HERE} --page plan.html`);
    expect(out).toMatch(/\n\nWrote plan\.html\.\n$/);
    expect(out).toContain("DAY BY DAY");
    expect(written["plan.html"]).toMatch(/^<!doctype html>/);
    const there = { "plan.html": "mine" };
    expect(await refused(`${HERE} --page plan.html`, there)).toContain(
      "plan.html is there already; name another file, or replace it with --force.",
    );
    const replaced = await moltline(`${HERE} --page plan.html --force`, there);
    expect(replaced.written["plan.html"]).toMatch(/^<!doctype html>/);
  });

  it.each([
    [`${HERE} --page -`, "--page needs the name of a file"],
    [`${HERE} --force`, "--force belongs to --page"],
    [`${HERE} --away 2015-02-30`, '--away is "2015-02-30", which does not exist'],
    [`${HERE} --away saturday`, '--away is "saturday"; it must be a day written YYYY-MM-DD'],
    [`${HERE} --cages 0`, '--cages is "0"'],
    [`${HERE} --cages 1.5`, '--cages is "1.5"'],
    [`${HERE} --per-cage 0`, '--per-cage is "0"'],
    [`${HERE} --clean-every 0`, '--clean-every is "0"'],
    [`${HERE} --stock -3`, "--stock is -3; it must name a number of leaves"],
    [`${HERE} --stock many`, '--stock is "many"'],
    [`${HERE} --delivery 40`, '--delivery is "40"; it must be DAY=LEAVES'],
    [`${HERE} --delivery 2015-06-31=40`, '--delivery is "2015-06-31", which does not exist'],
    [`${HERE} --delivery 2015-06-30=`, "--delivery is 2015-06-30=; it must name a number of leaves"],
    [`${HERE} --leaves-per-stem 0`, "--leaves-per-stem is 0"],
    [`${HERE} --leaves-per-larva 0`, "--leaves-per-larva is 0"],
    [`plan --temperatures new-york.csv ${FOUND} --count 0`, "--count is 0"],
    ["plan --temperatures new-york.csv", "--species is missing"],
    [
      "plan --temperatures new-york.csv --unit C --species pieris-rapae --found egg --on 2015-06-08 --stock 5",
      "--stock cannot be counted: what these larvae eat is not known; give --leaves-per-larva",
    ],
  ])("%s is refused", async (words, says) => {
    const message = await refused(words);
    expect(message).toContain(says);
    expect(message).toMatch(/^moltline: [^\n]*[.?]\n$/);
  });

  it.each([
    [`${SEVERAL} --found egg`, COHORTS, "--cohorts and --found were both given"],
    [
      SEVERAL,
      "name,species,found,on\na,monach,egg,2015-06-08\n",
      'cohorts.csv: row 2, column "species" is "monach"',
    ],
    [SEVERAL, "who\na\n", "Add a header row such as name,species,found,on,count."],
    [SEVERAL, "name,species,found,on\na,monarch,egg,2016-06-08\n", "cohorts.csv, cohort a: "],
    [
      `${SEVERAL} --stock 5 --leaves-per-larva 3`,
      "name,species,found,on\na,monarch,egg,2015-06-08\nb,pieris-rapae,egg,2015-06-08\n",
      "the cohorts eat food plant and milkweed; plan them one by one",
    ],
  ])("%s is refused for its file", async (words, file, says) => {
    expect(await refused(words, { "cohorts.csv": file })).toContain(says);
  });
});

describe("plan with a log", () => {
  const ONE = `${HERE} --age new --zone America/New_York`;
  const THREE =
    "name,species,found,on,count,age,cages\nporch,danaus-plexippus,egg,2015-06-08,12,new,2\nshelf,monarch,L3,2015-06-15,3,,\nlate,monarch,egg,2015-06-20,5,new,1\n";
  const LOG =
    "stage,seen on,count,cohort\nL2,2015-06-16,10,porch\ndied as L1,2015-06-14,2,porch\nL4,2015-06-19,3,shelf\nL4,2015-06-18,3,bench\n";
  const FILES = { "cohorts.csv": THREE, "log.csv": LOG };
  const SHARED = `${SEVERAL} --zone America/New_York --log log.csv`;
  const adults = (plan: DayPlan, name: string): string =>
    plan.cohorts.find((one) => one.name === name)?.windows.at(-1)?.window.expected ?? "";

  it("goes on from the last stage seen, at the dates of a forecast that learned, without those that died", async () => {
    const words = `${ONE} --log log.csv --cohort porch`;
    const plan = await planOf(words, FILES);
    expect(plan.from).toBe("2015-06-16");
    expect(plan.cohorts).toMatchObject([{ name: "porch", count: 10, stage: "instar-2" }]);
    const { out } = await moltline(`${words.replace("plan ", "forecast ")} --json`, FILES);
    const learned: Forecast = JSON.parse(out);
    expect(adults(plan, "porch")).toBe(learned.stages.at(-1)?.begins.expected);
    expect(adults(plan, "porch")).not.toBe(adults(await planOf(ONE), "A"));
    const text = (await moltline(words, FILES)).out;
    expectPlainPage(text);
    const flat = text.replace(/\s+/g, " ");
    expect(flat).toContain("10 larvae in the second instar since about Tue 16 Jun, found on Mon 8 Jun 2015");
    expect(flat).toContain("log.csv: 2 of cohort porch died or were lost; the plan leaves them out.");
    expect(flat).toContain("of the log: these animals need");
    expect((await planOf(`${words} --name window`, FILES)).cohorts[0]?.name).toBe("window");
  });

  it("begins with the find where the log has only what was found", async () => {
    const plan = await planOf(`${ONE} --log log.csv`, {
      "log.csv": "stage,seen on,count\negg,2015-06-08,12\n",
    });
    expect(plan).toMatchObject({ from: "2015-06-08", cohorts: [{ name: "A", count: 12, stage: "egg" }] });
  });

  it("gives each cohort of a file the entries of its own name", async () => {
    const plan = await planOf(SHARED, FILES);
    expect(plan.cohorts.map(({ name, count, stage, from }) => [name, count, stage, from])).toEqual([
      ["late", 5, "egg", "2015-06-20"],
      ["porch", 10, "instar-2", "2015-06-16"],
      ["shelf", 3, "instar-4", "2015-06-19"],
    ]);
    const alone = await planOf(`${ONE} --log log.csv --cohort porch`, FILES);
    expect(adults(plan, "porch")).toBe(adults(alone, "porch"));
    const messages = plan.notes.map(({ message }) => message);
    expect(messages).toContain('log.csv: Entries of "bench" were not used; cohorts.csv has no such cohort.');
  });

  it("takes entries without a name for the only cohort of a file", async () => {
    const files = {
      "cohorts.csv": THREE.split("\n").slice(0, 2).join("\n"),
      "log.csv": "stage,seen on,count\nL2,2015-06-16,10\n",
    };
    expect((await planOf(SHARED, files)).cohorts).toMatchObject([{ name: "porch", stage: "instar-2" }]);
  });

  it("leaves out a cohort of which none is left, and plans the others", async () => {
    const log = `${LOG}died as L4,2015-06-20,3,shelf\n`;
    const plan = await planOf(SHARED, { ...FILES, "log.csv": log });
    expect(plan.cohorts.map(({ name }) => name)).toEqual(["late", "porch"]);
    expect(plan.notes.map(({ message }) => message)).toContain(
      "log.csv: 2 of cohort porch, 3 of cohort shelf died or were lost; the plan leaves them out.",
    );
  });

  it.each([
    [`${SHARED} --cohort porch`, LOG, "--cohorts and --cohort were both given"],
    [
      SHARED,
      "stage,seen on,count\nL2,2015-06-16,10\n",
      'log.csv tells of animals without a name, and cohorts.csv of "porch", "shelf", "late"; each entry must name',
    ],
    [SHARED, "stage,seen on,count,cohort\nL9,2015-06-16,10,porch\n", "log.csv: "],
    [`${SHARED} --pace-variation 5`, LOG, "cohorts.csv, cohort porch: --pace-variation is 5"],
    [`${SHARED.replace(" --log log.csv", "")} --pace-variation 0.2`, LOG, "name one with --log"],
    [`${ONE} --cohort porch`, LOG, "--cohort is about what a log teaches; name one with --log."],
    [`${ONE} --log log.csv`, LOG, "the log has several groups; name one of them with --cohort"],
    [
      `${ONE} --log log.csv`,
      "stage,seen on,count\ndied as L2,2015-06-16,12\n",
      "log.csv: all animals of cohort A died or were lost, so that nothing is left to plan",
    ],
  ])("%s is refused for its log", async (words, log, says) => {
    const message = await refused(words, { ...FILES, "log.csv": log });
    expect(message).toContain(says);
    expect(message).toMatch(/^moltline: [^\n]*[.?]\n$/);
  });
});
