import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { expectPlainPage } from "../write/plain-text.ts";
import { moltline, refused } from "./in-memory.ts";

const fixture = (path: string): string =>
  readFileSync(new URL(`../../fixtures/${path}`, import.meta.url), "utf8");

const FILES = {
  "trials.csv": fixture("trials/gastrophysa-viridula.csv"),
  "many.csv": fixture("trials/invented-trials.csv"),
  "porch.csv": fixture("loggers/invented-porch.csv"),
  "log.csv": fixture("logs/invented-slow-season.csv"),
};
const flat = (text: string): string => text.replace(/\s+/g, " ");

async function page(words: string, files: Readonly<Record<string, string>> = {}): Promise<string> {
  const { code, out, err } = await moltline(words, { ...FILES, ...files });
  expect([code, err]).toEqual([0, ""]);
  expectPlainPage(out);
  return out;
}

async function json(words: string, files: Readonly<Record<string, string>> = {}) {
  const { code, out, err } = await moltline(`${words} --json`, { ...FILES, ...files });
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out);
}

describe("help of the commands that look back", () => {
  it.each(["fit", "evaluate", "methods", "survival", "room"])("%s fits the page", async (name) => {
    const out = await page(`${name} --help`);
    expect(out).toContain(`moltline ${name}`);
    expect(out).toContain("--json");
    expect(await page(`help ${name}`)).toBe(out);
    expect((await moltline("help")).out).toContain(`\n  ${name} `);
  });
});

describe("fit", () => {
  it("prints the published threshold and thermal constant", async () => {
    const out = await page("fit --trials trials.csv");
    // Printed for Gastrophysa viridula: 7.1 °C and 304.6 degree-days (Honek et al. 2003, abstract read).
    expect(out).toMatch(/straight line through 1\/days +7\.1 +1\.9 +304\.6 +35\.1/);
    expect(out).toMatch(/reduced major axis +7\.8 +- +291\.0 +-/);
    expect(flat(out)).toContain("A fit is as good as its trials");
    expect(out).not.toContain("RATE MODELS");
  });

  it("calls an end bent that is", async () => {
    expect(flat(await page("fit --trials many.csv"))).toContain(
      "34 °C, the hottest: bent. Development is slower there",
    );
    const cold = "temperature °C,days\n10,60\n14,50\n18,25\n22,16.67\n26,12.5\n30,10\n";
    expect(flat(await page("fit --trials a.csv", { "a.csv": cold }))).toContain("10 °C, the coldest: bent");
    const two = "temperature °C,days\n15,40\n20,20\n";
    const out = await page("fit --trials a.csv", { "a.csv": two });
    expect(flat(out)).toContain("cannot be told, because fewer than three other temperatures remain");
    expect(out).toMatch(/1\/days +10\.0 +- +200\.0 +-/);
    expect(flat(out)).toContain("GOOD TO KNOW - There are trials at 2 different temperatures.");
  });

  it("ranks the models, with the optimum and what it means", async () => {
    const out = await page("fit --trials many.csv --models");
    expect(out).toMatch(/briere-1 +3 +-?\d+\.\d +0\.0 +\d+ % +30\.1 °C/);
    expect(out).toMatch(/linear +2 +.* -\n/);
    expect(flat(out)).toContain("the fastest temperature is not the best one to rear at");
    const none = flat(await page("fit --trials trials.csv --models"));
    expect(none).toContain("None can be ranked by these trials");
    expect(none).toContain("- linear: There are too few trials");
  });

  it("says it in °F too for a file in °F", async () => {
    const f = "temperature °F,days\n59,40\n68,20\n77,13.333333333\n";
    expect(await page("fit --trials a.csv", { "a.csv": f })).toContain(
      "In °F: lower threshold 50.0 °F +/- 0.0, 360.0 °F degree-days +/- 0.0.",
    );
  });

  it("prints trials, estimates and models as JSON", async () => {
    const result = await json("fit --trials many.csv --models");
    expect(Object.keys(result)).toEqual(["trials", "estimates", "models", "notes"]);
    expect(result.estimates).toMatchObject([{ method: "x-intercept" }, { method: "reduced-major-axis" }]);
    expect(result.models[0].model).toBe("briere-1");
    expect(await json("fit --trials trials.csv")).not.toHaveProperty("models");
  });

  it.each([
    ["fit --json", "--trials is missing"],
    ["fit trials.csv", "a file is given as --trials FILE"],
    ["fit --trials gone.csv", "gone.csv cannot be read"],
    [
      "fit --trials a.csv",
      "a.csv: ",
      "Add a header row such as temperature °C,days,animals",
      "--days-column",
    ],
    ["fit --trials b.csv", "b.csv: the trials are at one temperature"],
    ["fit --trials c.csv", "c.csv: development gets no faster"],
    ["fit --trials d.csv", "d.csv: row 2", "no unit is named", "--unit F"],
    ["fit --trials two.csv", "could each be the column days; say which with --days-column"],
    ["fit --trials hot.csv", "row 2", "99", "leave the value out."],
  ])("%s is refused", async (words, ...says) => {
    const message = await refused(words, {
      ...FILES,
      "a.csv": "warmth,length\n18,28\n",
      "b.csv": "temperature °C,days\n18,28\n18,27\n",
      "c.csv": "temperature °C,days\n18,20\n22,25\n",
      "d.csv": "temperature,days\n64,28\n77,16\n",
      "two.csv": "temperature °C,days,duration\n18,28,28\n",
      "hot.csv": "temperature °C,days\n99,28\n",
    });
    for (const text of says) expect(message).toContain(text);
    expect(message).toMatch(/^moltline: [^\n]*[.?]\n$/);
  });
});

const RECORD = "--temperatures new-york.csv --unit C --species monarch";

describe("evaluate", () => {
  it("prints a row for each lead, how many runs, and what it proves", async () => {
    const out = await page(`evaluate ${RECORD} --every 30 --leads 0,14 --months 6,7`);
    expect(out).toMatch(/^ {2}0 +\d+ .* -$/m);
    expect(out).toMatch(/^ {2}14 +\d+ +[+-]?\d+\.\d +\d+\.\d +\d+\.\d\d +\d+ % +-?\d\.\d\d +-?\d\.\d\d$/m);
    expect(flat(out)).toContain("A start every 30 days, those in Jun, Jul.");
    expect(flat(out)).toContain("none was left out");
    expect(flat(out)).toContain("nothing of the biology");
  });

  it("counts the runs that the record ends before", async () => {
    const out = flat(await page(`evaluate ${RECORD} --every 14 --leads 7 --months 8,9,10,11,12`));
    expect(out).toMatch(/The record ends before [1-9]\d* of them do/);
    expect(out).toMatch(/wrong \(\d+ at 7 days\)/);
  });

  it("gives the library's scores as JSON, of the leads asked for", async () => {
    const result = await json(`evaluate ${RECORD} --every 30 --leads 7 --months 6,7`);
    expect(result).toMatchObject({
      species: "danaus-plexippus",
      from: "2012-01-01",
      to: "2015-12-31",
      every: 30,
      months: [6, 7],
    });
    expect(result.leads).toHaveLength(1);
    expect(result.leads[0]).toMatchObject({ lead: 7, beyondRecord: 0 });
    expect(result.leads[0].skillOnClimatology).toBeGreaterThan(0);
  });

  it("takes a record in files of single years", async () => {
    const lines = fixture("temperatures/new-york-2012-2015.csv");
    const [header = "", ...rows] = lines.trimEnd().split("\n");
    const years = ["2013", "2012", "2015", "2014"];
    const files = Object.fromEntries(
      years.map((year) => [
        `${year}.csv`,
        `${[header, ...rows.filter((row) => row.startsWith(year))].join("\n")}\n`,
      ]),
    );
    const named = years.map((year) => `--temperatures ${year}.csv`).join(" ");
    const rest = "--unit C --species monarch --every 60 --leads 0 --months 5,6,7";
    const apart = await json(`evaluate ${named} ${rest}`, files);
    expect(apart.leads).toEqual((await json(`evaluate --temperatures new-york.csv ${rest}`)).leads);
  });

  it.each([
    [`evaluate --temperatures new-york.csv --unit C`, "--species is missing"],
    [`evaluate ${RECORD} --leads 0,x`, '--leads is "0,x"', "whole numbers separated by commas"],
    [`evaluate ${RECORD} --months 13`, '--months is "13"', "from 1 to 12"],
    [`evaluate ${RECORD} --months ,`, '--months is ","'],
    [`evaluate ${RECORD} --every 0`, '--every is "0"', "a whole number from 1 to 366"],
    [`evaluate ${RECORD} --every 1.5`, '--every is "1.5"'],
    [`evaluate ${RECORD} --every 400`, '--every is "400"'],
    [`evaluate ${RECORD} --every 366 --months 5`, "no animal that starts in the months 5"],
    [`evaluate ${RECORD} --method sunrise-sine`, '--method is "sunrise-sine"'],
    [`evaluate --temperatures gap.csv --unit C --species monarch`, "2026-06-09", "with --fill-gaps first"],
    [`evaluate --temperatures gap.csv --fill-gaps 1 --unit C --species monarch`, "four years are needed"],
    [
      `evaluate --temperatures porch.csv --species monarch`,
      "a minimum and a maximum for each day, not readings",
    ],
    [`evaluate ${RECORD} --normals new-york.csv`, "there is no option --normals"],
  ])("%s is refused", async (words, ...says) => {
    const message = await refused(words, FILES);
    for (const text of says) expect(message).toContain(text);
    expect(message).toMatch(/^moltline: [^\n]*[.?]\n$/);
  });
});

describe("methods", () => {
  const SPAN = "--temperatures new-york.csv --unit C --from 2015-05-01 --to 2015-06-30";

  it("lays the methods beside each other, and says when each reaches an amount", async () => {
    const out = await page(`methods ${SPAN} --lower 10 --upper 30 --amount 300`);
    expect(out).toContain("2015-05-01 to 2015-06-30, lower threshold 10 °C, upper threshold 30 °C.");
    expect(out).toMatch(/single-sine +horizontal +\d+\.\d +0\.0 +2015-06-\d\d +0\.0/);
    expect(out).not.toContain("sunrise");
  });

  it("adds the methods that follow the sun where place and zone are known", async () => {
    const out = await page(
      `methods ${SPAN} --lower 10 --zone America/New_York --latitude 40.7 --longitude -74`,
    );
    expect(out).toContain("sunrise-exponential");
  });

  it("holds them against a logger's readings", async () => {
    const out = await page("methods --temperatures porch.csv --lower 10");
    expect(out).toMatch(/measured +none +\d+\.\d +0\.0/);
    expect(flat(out)).toContain("compare with the readings themselves");
  });

  it("speaks in the unit of the file", async () => {
    const out = await page("methods --temperatures fahrenheit.csv --lower 50 --upper 95 --amount 30");
    expect(out).toContain("lower threshold 50 °F, upper threshold 95 °F.");
    // 68, 70 and 72.5 °F less 50, as degree-days prints them.
    expect(out).toMatch(/average +none +60\.5 +0\.0 +2026-06-09/);
    expect(flat(out)).toContain("on which 30 °F·day are full");
    const result = await json("methods --temperatures fahrenheit.csv --lower 50 --upper 95 --amount 30");
    expect(result).toMatchObject({ upper: 35, reference: { method: "single-sine" } });
    expect(result.lower).toBeCloseTo(10, 12);
  });

  it.each([
    [`methods ${SPAN}`, "--lower is missing"],
    [`methods ${SPAN} --lower 30 --upper 10`, "--lower is 30; it must be below --upper, 10"],
    [`methods ${SPAN} --lower 10 --amount 0`, "--amount is 0; it must be above 0"],
    [`methods ${SPAN} --lower 10 --latitude 40.7`, "--longitude is missing"],
    [
      "methods --temperatures new-york.csv --unit C --lower 10 --from 2016-05-01",
      "--from is 2016-05-01",
      "2015-12-31",
    ],
    [
      "methods --temperatures gap.csv --unit C --lower 10 --to 2026-06-11",
      "2026-06-09",
      "with --fill-gaps or",
    ],
  ])("%s is refused", async (words, ...says) => {
    const message = await refused(words, FILES);
    for (const text of says) expect(message).toContain(text);
  });
});

const ANIMALS = "survival --log log.csv --species monarch --found egg";

describe("survival", () => {
  it("prints the life table and the adults to expect", async () => {
    const out = await page(`${ANIMALS} --count 10`);
    expect(out).toMatch(/fourth instar +10 +1 +0 +90 % +55 to 100 +90 % +55 to 100/);
    expect(out).toMatch(/adult +9$/m);
    // Derived: Jeffreys' mean of 9 of 10 for 10 animals is 10 · 9.5 / 11.
    expect(flat(out)).toContain("Of 10 eggs: about 8.6 on average");
    expect(out).toContain("Take sick and dead animals out");
  });

  it("takes missing animals as lost, or as dead in a closed log", async () => {
    const open = await json(`${ANIMALS} --count 12`);
    expect(open.rows[0]).toMatchObject({ entered: 12, died: 0, censored: 2 });
    expect(open.unaccounted).toEqual([{ stage: "egg", count: 2 }]);
    const closed = await json(`${ANIMALS} --count 12 --closed --next 20`);
    expect(closed.rows[0]).toMatchObject({ entered: 12, died: 2, censored: 0 });
    expect(closed.next).toMatchObject({ stage: "egg", count: 20 });
    expect(closed.next.expected.mean).toBeCloseTo((20 * 9.5) / 13, 10);
    expect(flat(await page(`${ANIMALS} --count 12`))).toContain("2 in egg; they were taken as still in it");
  });

  it("says that it cannot say, with the stages that nobody was followed through", async () => {
    const log = "stage,seen on,count\nhatched,2026-06-10,4\ndied as egg,2026-06-11,1\n";
    const out = flat(
      await page("survival --log a.csv --species monarch --found egg --count 6", { "a.csv": log }),
    );
    expect(out).toContain("none has become adult by the end of your log");
    expect(out).toContain(
      "- second instar, third instar, fourth instar, fifth instar, pupa: No animal entered",
    );
    expect(out).toContain("That cannot be said of 6 eggs");
  });

  it("begins with the stage found, hanging ones too", async () => {
    const log = "stage,seen on,count,fate\npupa,2026-06-10,4,\npupa,2026-06-12,1,lost\nadult,2026-06-20,3,\n";
    const rows = async (found: string) =>
      (await json(`survival --log a.csv --species monarch --found ${found} --count 5`, { "a.csv": log }))
        .rows;
    expect(await rows("prepupa")).toMatchObject([{ stage: "prepupa" }, { stage: "pupa" }]);
    expect((await rows("pupa"))[0]).toMatchObject({ entered: 5, died: 0, censored: 2 });
  });

  it.each([
    ["survival --species monarch --found egg", "--log is missing"],
    ["survival --log log.csv --species monarch", "--found is missing"],
    [`${ANIMALS} --count 3`, "--count is 3, but the log tells of 10 animals"],
    [`${ANIMALS} --count 1.5`, '--count is "1.5"; it must be a whole number from 1'],
    [`${ANIMALS} --next 0`, '--next is "0"'],
    [ANIMALS.replace("egg", "pupa"), "tells of the first instar, which does not come after --found pupa"],
    [ANIMALS.replace("egg", "larva"), '--found is "larva"', "instar-1"],
    [ANIMALS.replace("egg", "adult"), '--found is "adult"'],
  ])("%s is refused", async (words, ...says) => {
    const message = await refused(words, FILES);
    for (const text of says) expect(message).toContain(text);
  });
});

const ROOM = "room --logger porch.csv --station new-york.csv --unit C";

describe("room", () => {
  it("finds the figures that the invented porch was made with", async () => {
    const out = await page(ROOM);
    expect(out).toContain("21 whole days that both were measured, from Sun 1 Jun 2014 to Sat 21 Jun 2014.");
    const { relation } = await json(ROOM);
    for (const [found, made] of [
      [relation.offset, 9],
      [relation.damping, 0.62],
      [relation.rangeRatio, 0.4],
    ])
      expect(Math.abs(found.value - made)).toBeLessThan(3 * found.standardError);
    expect(flat(out)).toContain("it follows the weather, but less far");
    expect(flat(out)).toContain("These are estimates, not measurements");
    expect(flat(out)).toContain("what the room does on them is extrapolated");
  });

  it("prints the estimated days as a file that a forecast reads, and notes beside it", async () => {
    const { code, out, err } = await moltline(`${ROOM} --csv`, FILES);
    expect(code).toBe(0);
    expect(out.split("\r\n").slice(0, 2).join(" ")).toMatch(
      /^date,min °C,max °C 2012-01-01,\d+\.\d\d,\d+\.\d\d$/,
    );
    expect(out.trimEnd().split("\r\n")).toHaveLength(1462);
    expect(err).toContain("GOOD TO KNOW");
    const { days } = await json(ROOM);
    expect(days).toHaveLength(1461);
    expect(Number(out.split("\r\n")[1]?.split(",")[1])).toBeCloseTo(days[0].min, 2);
    const forecast = await moltline(
      "forecast --temperatures room.csv --species monarch --found egg --on 2014-06-25",
      { "room.csv": out },
    );
    expect([forecast.code, forecast.err]).toEqual([0, ""]);
    expect(forecast.out).not.toContain("Columns");
  });

  it("says so when the sun shines on the cage", async () => {
    const header = "time,temp °C";
    const rows = FILES["porch.csv"].trimEnd().split("\n").slice(2);
    const sunny = rows.map((row) => {
      const [stamp = "", temperature = ""] = row.split(",");
      return `${stamp},${(Number(temperature) + (stamp.endsWith("15:00") ? 14 : 0)).toFixed(1)}`;
    });
    const out = flat(await page(ROOM, { "porch.csv": `${[header, ...sunny].join("\n")}\n` }));
    expect(out).toContain("Sun on the cage, or on the logger");
    expect(out).toContain("can kill");
  });

  it("keeps days that the station lacks empty, and fills them when told", async () => {
    const station = (await moltline(`${ROOM} --csv`, FILES)).out
      .split("\r\n")
      .filter((row) => row.startsWith("date") || (row >= "2014-05-25" && row < "2014-06-30"));
    const files = {
      ...FILES,
      "s.csv": `${station.filter((row) => !row.startsWith("2014-06-25")).join("\n")}\n`,
    };
    const words = "room --logger porch.csv --station s.csv";
    expect((await moltline(`${words} --csv`, files)).out).toContain("2014-06-25,,\r\n");
    const missing = { date: "2014-06-25", min: null, max: null };
    expect((await json(words, files)).days).toContainEqual(missing);
    expect(flat(await page(words, files))).toContain("1 day that the station lacks is left out");
    expect((await moltline(`${words} --csv --fill-gaps 1`, files)).out).not.toContain(",,");
  });

  it("takes a place for the station alone, and fewer days when told", async () => {
    const two = `place,date,min °C,max °C\n${["a", "b"]
      .flatMap((place) =>
        Array.from(
          { length: 10 },
          (_, i) => `${place},2014-06-${String(i + 1).padStart(2, "0")},${10 + i},${20 + i}`,
        ),
      )
      .join("\n")}\n`;
    const files = { ...FILES, "s.csv": two };
    const words = "room --logger porch.csv --station s.csv --place b";
    expect(await refused(words, files)).toContain("share 10 complete days; at least 14 are needed");
    expect((await json(`${words} --at-least 10`, files)).relation.days).toBe(10);
  });

  it.each([
    ["room --station new-york.csv", "--logger is missing"],
    ["room --logger porch.csv", "--station is missing"],
    ["room --logger new-york.csv --station new-york.csv --unit C", "--logger needs readings", "has days"],
    [
      "room --logger porch.csv --station porch.csv",
      "--station needs a minimum and a maximum",
      "has readings",
    ],
    [`${ROOM} --csv --json`, "--csv and --json were both given"],
    [`${ROOM} --at-least 3`, '--at-least is "3"', "from 5 to"],
    [`${ROOM} --zone Mars`, '--zone is "Mars"'],
    ["room --logger - --station -", "can be read only once"],
  ])("%s is refused", async (words, ...says) => {
    const message = await refused(words, { ...FILES, "-": FILES["porch.csv"] });
    for (const text of says) expect(message).toContain(text);
  });
});
