import { describe, expect, it } from "vitest";
import { readLog } from "../../src/read/log/log-csv.ts";
import type { Forecast } from "../../src/forecast/question/result.ts";
import { expectPlainPage } from "../write/plain-text.ts";
import { FOUND, moltline, refused } from "./in-memory.ts";

const LOG = "stage,seen on,count,note\r\nhatched,2026-06-11,4,\r\npupated,2026-06-25,3,one hangs\r\n";
const words = (text: string, ...more: string[]): string[] => [...text.split(" "), ...more];

/** Runs commands one after another on one log. */
async function after(...runs: readonly (readonly string[])[]): Promise<{ log: string; outs: string[] }> {
  let log = LOG;
  const outs: string[] = [];
  for (const run of runs) {
    const { code, out, err, written } = await moltline(run, { "log.csv": log });
    expect([code, err], err).toEqual([0, ""]);
    log = written["log.csv"] ?? log;
    outs.push(out);
  }
  return { log, outs };
}

const ADD = words("log add --log log.csv --stage emerged --on 2026-07-05 --count 2");

describe("log template", () => {
  it("prints a log whose examples are no animals", async () => {
    const { out } = await moltline("log template --species danaus-plexippus");
    expect(out).toMatch(/^stage,seen on,time,count,cohort,fate,not yet,note,corrects,written\r\n/);
    expect(out.match(/EXAMPLE: delete this row/g)).toHaveLength(2);
    expect(readLog(out)).toMatchObject({ entries: [], superseded: [] });
  });

  it("writes it where nothing is yet, and names the stages of the species", async () => {
    const { out, written } = await moltline("log template --species cydia-pomonella --out new.csv");
    expectPlainPage(out);
    expect(out.replace(/\s+/g, " ")).toContain("egg, larva, pupa, adult");
    expect(written["new.csv"]).toContain("hatched");
    expect(await refused("log template --species monarch --out log.csv", { "log.csv": LOG })).toContain(
      "log.csv is there already; name another file, or replace it with --force.",
    );
    const forced = await moltline("log template --species monarch --out log.csv --force", { "log.csv": LOG });
    expect(forced.written["log.csv"]).toContain("EXAMPLE");
  });
});

describe("a log that is only begun", () => {
  const template = async (): Promise<string> => (await moltline("log template --species monarch")).out;
  const here = `--temperatures new-york.csv ${FOUND}`;

  it("is a log with its examples and without them", async () => {
    const text = await template();
    const header = `${text.split("\r\n")[0]}\r\n`;
    for (const log of [text, header]) {
      const { code, out } = await moltline("log show --log log.csv", { "log.csv": log });
      expect([code, out.includes("Nothing.")]).toEqual([0, true]);
      expect((await moltline("log export --log log.csv", { "log.csv": log })).code).toBe(0);
      const added = await moltline(ADD, { "log.csv": log });
      expect([added.code, added.out]).toEqual([0, expect.stringContaining("2026-07-05, adult, 2 animals")]);
    }
    const forecast = await moltline(`forecast --log log.csv ${here}`, { "log.csv": header });
    expect([forecast.code, forecast.err]).toEqual([0, ""]);
    expect(await refused(`compare --log log.csv ${here}`, { "log.csv": header })).toContain(
      "the log has no entries",
    );
    const survival = "survival --log log.csv --species monarch --found egg";
    expect((await moltline(survival, { "log.csv": header })).out).toContain("0 eggs");
  });
});

describe("log add", () => {
  it("adds a row with the moment of writing, in the form that the file has", async () => {
    const { log, outs } = await after(ADD);
    expect(log).toBe(
      `${LOG.replace("note\r\n", "note,written\r\n")}emerged,2026-07-05,2,,2026-06-25T18:04:05Z\r\n`,
    );
    expect(outs).toEqual(["Row 4: 2026-07-05, adult, 2 animals.\n"]);
  });

  it("takes all that a log can say, and guards what a spreadsheet would run", async () => {
    const { log } = await after(
      words(
        "log add --log log.csv --stage pupa --fate died --on 2026-06-28 --time 18:30 --not-yet 2026-06-27 --count 1",
        "--cohort",
        "cage A",
        "--note",
        '=cmd, "x"',
      ),
    );
    expect(readLog(log).entries.at(-1)).toEqual({
      stage: "pupa",
      on: "2026-06-28T18:30:00",
      count: 1,
      cohort: "cage A",
      note: '=cmd, "x"',
      row: 4,
      fate: "died",
      notYet: "2026-06-27",
    });
    expect(log).toContain(`"'=cmd, ""x"""`);
  });

  it.each([
    ["--stage pupatd --on 2026-06-25", 'log.csv: row 4, column "stage" is "pupatd"; did you mean pupated'],
    ["--stage pupa --on 2026-06-31", 'row 4, column "seen on" is "2026-06-31"'],
    ["--stage pupa --on 2026-06-25 --count 0", 'row 4, column "count" is "0"'],
    ["--stage pupa --on 2026-06-25 --time noon", 'row 4, column "time" is "noon"'],
    ["--stage pupa --on 2026-06-25 --not-yet 2026-06-26", "must be before 2026-06-25"],
    ["--stage pupa", "--on is missing"],
    ["--on 2026-06-25", "--stage is missing"],
    ["--stage pupa --on 2026-06-25 --row 3", "--row is for log correct, log retract, not for log add"],
    [
      "--stage pupa --on 2026-06-25 more",
      '"more" belongs to no option; a text of several words stands in quotation marks',
    ],
  ])("%s is refused and nothing is written", async (given, text) => {
    const run = words(`log add --log log.csv ${given}`);
    const { code, err, written } = await moltline(run, { "log.csv": LOG });
    expect([code, written]).toEqual([2, {}]);
    expect(err).toContain(text);
  });

  it("refuses a count where each row is one animal, and a file that is not there", async () => {
    const run = words("log add --log log.csv --stage pupa --on 2026-06-25 --count 2");
    expect(await refused(run, { "log.csv": "stage,seen on\nhatched,2026-06-11\n" })).toContain(
      "no column of counts",
    );
    expect(await refused(run)).toContain("log.csv cannot be read: there is no such file");
    expect(await refused(run, { "log.csv": "when,what\n1,2\n" })).toContain("Add a header row such as");
  });

  it("adds to a log that cannot be read for another reason, and says so", async () => {
    const bad = "stage,seen on,count\nhatchd,2026-06-11,4\n";
    const { code, out, written } = await moltline(ADD, { "log.csv": bad });
    expect(code).toBe(0);
    expect(written["log.csv"]).toContain("emerged,2026-07-05,2");
    expect(out).toContain("Written, but the log cannot be read yet: row 2, column");
    const mend = words("log correct --log log.csv --row 2 --stage hatched");
    const mended = await moltline(mend, { "log.csv": written["log.csv"] ?? "" });
    expect(mended.out).toBe("Row 4 stands in the place of row 2: 2026-06-11, first instar, 4 animals.\n");
  });
});

describe("log correct and log retract", () => {
  it("leave the old rows as they are", async () => {
    const { log, outs } = await after(
      ADD,
      words("log correct --log log.csv --row 3 --count 2 --note="),
      words("log retract --log log.csv --row 4 --note", "seen in another cage"),
      words("log correct --log log.csv --row 5 --time 09:15"),
      words("log correct --log log.csv --row 4 --count 1"),
    );
    expect(log.split("\r\n").map((line) => line.replace(/2026-06-25T18:04:05Z/, "W"))).toEqual([
      "stage,seen on,count,note,written,corrects,time",
      "hatched,2026-06-11,4,",
      "pupated,2026-06-25,3,one hangs",
      "emerged,2026-07-05,2,,W",
      ",,2,(none),W,3",
      "retracted,,,seen in another cage,W,4",
      ",,,,W,5,09:15",
      ",,1,,W,4,",
      "",
    ]);
    expect(outs.slice(1)).toEqual([
      "Row 5 stands in the place of row 3: 2026-06-25, pupa, 2 animals.\n",
      "Row 6 takes back row 4.\n",
      "Row 7 stands in the place of row 5: 2026-06-25T09:15:00, pupa, 2 animals.\n",
      "Row 8 stands in the place of row 4, which was retracted: 2026-07-05, adult, 1\nanimal.\n",
    ]);
  });

  it.each([
    ["correct --row 3", "nothing is to be corrected"],
    ["correct --row 9 --count 2", 'column "corrects" is "9"; it must be the number of a row above it'],
    ["correct --row 1 --count 2", 'is "1"; it must be the number of a row above it'],
    ["correct --row two --count 2", '--row is "two"; it must be a whole number'],
    ["correct --count 2", "--row is missing; it gives the row"],
    ["correct --row 3 --stage=", 'row 4, column "stage" is ""'],
    ["retract --row 3 --count 2", "--count is for log add, log correct, not for log retract"],
  ])("log %s is refused", async (given, text) => {
    const { code, err, written } = await moltline(words(`log ${given} --log log.csv`), { "log.csv": LOG });
    expect([code, written]).toEqual([2, {}]);
    expect(err).toContain(text);
  });

  it("a row is taken back once, through all that corrects it", async () => {
    const { log } = await after(
      words("log correct --log log.csv --row 3 --count 2"),
      words("log retract --log log.csv --row 4"),
    );
    for (const row of [3, 4])
      expect(await refused(words(`log retract --log log.csv --row ${row}`), { "log.csv": log })).toContain(
        `row ${row} was retracted by row 5 already`,
      );
  });
});

describe("log show", () => {
  it("prints what counts and what does not any more", async () => {
    const { log } = await after(
      words("log correct --log log.csv --row 3 --count 2"),
      words("log retract --log log.csv --row 2"),
    );
    const { out } = await moltline("log show --log log.csv", { "log.csv": log });
    expectPlainPage(out);
    expect(out).toBe(
      [
        "THE LOG AS IT STANDS",
        "   row  seen on",
        "     4  2026-06-25  pupa, 2 animals: one hangs",
        "",
        "ROWS THAT NO LONGER COUNT",
        "  - row 3, corrected by row 4: pupated, 2026-06-25, 3, one hangs",
        "  - row 2, retracted by row 5: hatched, 2026-06-11, 4",
        "",
      ].join("\n"),
    );
  });

  it("reads earlier states back, by row and by moment", async () => {
    const log =
      "stage,seen on,count,corrects,written\nhatched,2026-06-11,4,,2026-06-11T18:00:00Z\n,,3,2,2026-06-12T02:00:00Z\n";
    const show = async (given: string) =>
      (await moltline(`log show --log log.csv ${given}`, { "log.csv": log })).out;
    expect(await show("--rows 2")).toMatch(
      /DOWN TO ROW 2\n.*\n +2 {2}2026-06-11 {2}first instar, 4 animals\n$/,
    );
    expect(await show("--as-of 2026-06-11")).toContain("4 animals");
    expect(await show("--as-of 2026-06-12")).toContain("3 animals");
    expect(await show("--as-of 2026-06-11 --zone America/New_York")).toContain("3 animals");
    expect(await show("--as-of 2026-06-11T21:59:59 --zone America/New_York")).toContain("4 animals");
    expect(await show("--as-of 2026-06-10")).toContain("Nothing.");
    expect(JSON.parse(await show("--as-of 2026-06-12 --json"))).toMatchObject({
      entries: [{ stage: "instar-1", count: 3, row: 3 }],
      superseded: [{ row: 2, by: 3, how: "corrected" }],
    });
    const refusal = (given: string) => refused(`log show --log log.csv ${given}`, { "log.csv": log });
    expect(await refusal("--rows 9")).toContain("--rows is 9; the log ends with row 3");
    expect(await refusal("--as-of noon")).toContain('--as-of is "noon"');
    expect(await refusal("--zone Europe/Berlin")).toContain("--zone is for --as-of");
  });

  it("long notes and names stay within the page", async () => {
    const note = `${"a very long note ".repeat(12)}${"x".repeat(120)}`;
    const { log } = await after(
      words("log add --log log.csv --stage pupa --on 2026-06-25T18:30 --note", note),
    );
    expectPlainPage((await moltline("log show --log log.csv", { "log.csv": log })).out);
  });
});

describe("log export", () => {
  it("the log as it stands, without its history", async () => {
    const { log } = await after(words("log correct --log log.csv --row 3 --count 2"));
    const { out, err } = await moltline("log export --log log.csv --species monarch", { "log.csv": log });
    expect(out).toBe(
      "stage,seen on,count,cohort,fate,not yet,note\r\ninstar-1,2026-06-11,4,,,,\r\npupa,2026-06-25,2,,,,one hangs\r\n",
    );
    expect(err).toContain("corrected by row 4");
  });

  it("what hatched, as the species has it", async () => {
    expect(await refused("log export --log log.csv", { "log.csv": LOG })).toContain(
      "row 2 says hatched, which is the first instar of some species and the larva of others; give --species",
    );
    const moth = await moltline("log export --log log.csv --species cydia-pomonella", { "log.csv": LOG });
    expect(moth.out).toContain("larva,2026-06-11,4");
    const survival = "survival --log clean.csv --species cydia-pomonella --found larva";
    expect((await moltline(survival, { "clean.csv": moth.out })).code).toBe(0);
    const named = "stage,seen on,cohort\ninstar-1,2026-06-11,A\npupa,2026-06-12,B\n";
    expect((await moltline("log export --log log.csv", { "log.csv": named })).code).toBe(0);
    const one = await moltline("log export --log log.csv --cohort B", { "log.csv": named });
    expect(one.out).toContain("pupa,2026-06-12,1,B");
    expect(one.out).not.toContain("instar-1");
  });

  it.each([
    ["--species monarch --cohort typo", '--cohort is "typo", which the log does not have'],
    ["--species monarch --wild", "--wild belongs to --darwin-core, which was not given"],
    ["--latitude 40 --longitude -74", "--latitude belongs to --darwin-core"],
    [
      "--species monarch --darwin-core --country US",
      "--country belongs to a place, --latitude and --longitude",
    ],
  ])("%s is refused", async (given, says) => {
    expect(await refused(`log export --log log.csv ${given}`, { "log.csv": LOG })).toContain(says);
  });

  it("in the terms of Darwin Core, with the caution beside the table and never in it", async () => {
    const place = "--latitude 40.12345 --longitude -73.98765 --uncertainty 20 --country-code US";
    const run = `log export --log log.csv --darwin-core --species monarch ${place}`;
    const { out, err } = await moltline(run, { "log.csv": LOG });
    expect(out.split("\r\n")[0]).toMatch(/^occurrenceID,basisOfRecord,/);
    expect(out).toContain(",40.12,-73.99,EPSG:4326,");
    expect(err.replace(/\s+/g, " ")).toContain("Exact places of protected or sought-after animals");
    const file = await moltline(`${run} --out shared.csv`, { "log.csv": LOG });
    expect(file.written["shared.csv"]).toBe(out);
    expect(file.out).toMatch(/^Wrote shared\.csv\.\n\nGOOD TO KNOW\n/);
    expect(await refused("log export --log log.csv --darwin-core", { "log.csv": LOG })).toContain(
      "--species is missing",
    );
  });
});

describe("log", () => {
  it.each([
    [
      "log add --log log.csv --stage pupa --on 2026-06-25 --note one hangs",
      'such as --note "one still hangs"',
    ],
    ["log show log.csv", "the log is given as --log FILE"],
    ["log", "moltline: log needs a word after it; use one of template, add, correct, retract, show, export."],
    ["log ad", "did you mean add"],
    ["log constructor", 'moltline log cannot "constructor"'],
  ])("%s", async (run, text) => expect(await refused(run)).toContain(text));
});

describe("files of forecasts and comparisons", () => {
  const HERE = `--temperatures new-york.csv ${FOUND} --zone America/New_York`;

  it("writes a calendar and a table beside what it prints", async () => {
    const plain = await moltline(`forecast ${HERE}`);
    const { out, written } = await moltline(`forecast ${HERE} --ics porch.ics --csv porch.csv --cohort A`);
    expect(out).toBe(`${plain.out}\nWrote porch.ics.\nWrote porch.csv.\n`);
    expect(written["porch.ics"]).toContain("\r\nDTSTAMP:20260625T180405Z\r\nSEQUENCE:29706844\r\n");
    expect(written["porch.ics"]).toContain("SUMMARY:monarch\\, A: adult");
    expect(written["porch.csv"]).toMatch(/\r\ndanaus-plexippus,adult,2015-07-03T/);
    const expected = await moltline(`forecast ${HERE} --ics porch.ics --ics-days expected --json`);
    expect(JSON.parse(expected.out)).toMatchObject({ species: "danaus-plexippus" });
    expect(expected.written["porch.ics"]).not.toBe(written["porch.ics"]);
  });

  it("replaces nothing without --force", async () => {
    for (const option of ["--ics", "--csv"])
      expect(await refused(`forecast ${HERE} ${option} mine`, { mine: "kept" })).toContain(
        "mine is there already",
      );
    const { written } = await moltline(`forecast ${HERE} --csv mine --force`, { mine: "kept" });
    expect(written["mine"]).toContain("expected");
    expect(await refused(`forecast ${HERE} --ics-days expected`)).toContain("name one with --ics");
    expect(await refused(`forecast ${HERE} --cohort A`)).toContain("--cohort is about what a log teaches");
  });

  it("writes none of several files where one is there, is named twice or is none", async () => {
    const said = async (more: string): Promise<string> => {
      const { code, out, err, written } = await moltline(`forecast ${HERE} ${more}`, { mine: "kept" });
      expect([code, out, written]).toEqual([2, "", {}]);
      return err;
    };
    expect(await said("--ics new.ics --csv mine")).toContain("mine is there already");
    expect(await said("--ics both --csv both")).toContain("--ics and --csv both name both");
    expect(await said("--csv -")).toContain("--csv needs the name of a file, such as dates.csv");
    expect(await said("--force")).toContain("--force belongs to --ics and --csv, neither of which was given");
    expect(await refused("log template --species monarch --force")).toContain("--force belongs to --out");
    expect(await refused("log export --log log.csv --out -", { "log.csv": LOG })).toContain(
      "--out needs the name of a file",
    );
    expect(await refused(`draw --out - ${HERE}`)).toContain("--out needs the name of a file");
  });

  it("compares with an earlier forecast as with one made anew", async () => {
    const log = { "log.csv": "stage,seen on,count\nhatched,2015-06-10,4\npupated,2015-06-27,3\n" };
    const { out } = await moltline(`forecast ${HERE} --json`);
    const files = { ...log, "earlier.json": out };
    const earlier = await moltline(
      "compare --log log.csv --forecast earlier.json --csv rows.csv --json",
      files,
    );
    const anew = await moltline(`compare --log log.csv ${HERE} --json`, log);
    expect(JSON.parse(earlier.out).rows).toEqual(JSON.parse(anew.out).rows);
    expect(earlier.written["rows.csv"]).toMatch(/\r\ndanaus-plexippus,instar-1,2015-06-10,4,/);
    expect(await refused("compare --log log.csv --forecast earlier.json --species monarch", files)).toContain(
      "leave out --species",
    );
    const more = "--species nonsense --temperatures no.csv --exchange-swapped";
    expect(
      await refused(`compare --log log.csv --forecast earlier.json --date-order day-first ${more}`, files),
    ).toContain("--forecast has it all; leave out --exchange-swapped");
    expect(
      await refused("compare --log log.csv --forecast earlier.json --exchange-swapped", files),
    ).toContain("leave out --exchange-swapped");
    const cut: Forecast = JSON.parse(out);
    const short = { ...log, "earlier.json": JSON.stringify({ ...cut, shares: [0.1] }) };
    expect(await refused("compare --log log.csv --forecast earlier.json", short)).toContain(
      "earlier.json: shares",
    );
  });
});
