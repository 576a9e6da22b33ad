import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Forecast } from "../../src/forecast/question/result.ts";
import { SPECIES } from "../../src/species/catalogue.ts";
import { expectPlainPage } from "../write/plain-text.ts";
import { FOUND, moltline } from "./in-memory.ts";

const LOG = "stage,seen on,count\nhatched,2015-06-10,4\npupated,2015-06-27,3\n";

describe("help", () => {
  it.each([
    "",
    "help",
    "--help",
    "-h",
    "help forecast",
    "forecast --help",
    "compare -h",
    "degree-days --help",
    "species --help",
  ])("moltline %s fits the page and ends well", async (words) => {
    const { code, out, err } = await moltline(words);
    expect([code, err]).toEqual([0, ""]);
    expectPlainPage(out);
    expect(out).toContain("moltline");
  });

  it("names every option that a command has", async () => {
    const { out } = await moltline("forecast --help");
    for (const name of [
      "temperatures",
      "species",
      "species-file",
      "found",
      "on",
      "count",
      "age",
      "method",
      "shares",
      "constant",
      "unit",
      "zone",
      "place",
      "fill-gaps",
      "normals",
      "missing",
      "format",
      "json",
    ])
      expect(out).toContain(`--${name}`);
  });
});

describe("forecast", () => {
  it("prints the calendar", async () => {
    const { code, out, err } = await moltline(
      `forecast --temperatures new-york.csv ${FOUND} --count 12 --zone America/New_York`,
    );
    expect([code, err]).toEqual([0, ""]);
    expectPlainPage(out);
    expect(out).toContain("12 eggs found on Mon 8 Jun 2015");
    expect(out).toMatch(/adult +Fri {2}3 Jul {2}Sun {2}5 Jul {2}Tue {2}7 Jul/);
    expect(out).toContain("TAKE CARE");
  });

  it("prints JSON alone with --json", async () => {
    const { out } = await moltline(`forecast --temperatures new-york.csv ${FOUND} --json`);
    const result: Forecast = JSON.parse(out);
    expect(result).toMatchObject({ species: "danaus-plexippus", found: { stage: "egg", count: 1 } });
    expect(result.stages.at(-1)).toMatchObject({
      stage: "adult",
      begins: {
        early: expect.stringMatching(/^2015-07-03T/),
        expected: expect.stringMatching(/^2015-07-05T/),
        late: expect.stringMatching(/^2015-07-07T/),
      },
    });
    expect(result.notes.map(({ code }) => code)).toContain("constant-from-memory");
  });

  it("reads standard input when nothing is named, and for -", async () => {
    const csv = "date,min,max\n2015-06-08,15,27\n2015-06-09,15,27\n2015-06-10,15,27\n2015-06-11,15,27\n";
    const named = await moltline(`forecast --temperatures a.csv ${FOUND}`, { "a.csv": csv });
    expect(await moltline(`forecast ${FOUND}`, { "-": csv })).toEqual(named);
    expect(await moltline(`forecast --temperatures - ${FOUND}`, { "-": csv })).toEqual(named);
  });

  it("takes a room kept at a temperature, in either unit", async () => {
    const at = async (words: string) =>
      (
        await moltline(
          `forecast --species monarch --found egg --on 2026-06-08T12:00 --age new ${words} --json`,
        )
      ).out;
    const [celsius, fahrenheit]: readonly [Forecast, Forecast] = [
      JSON.parse(await at("--constant 25")),
      JSON.parse(await at("--constant 77 --unit f")),
    ];
    expect(fahrenheit.stages).toEqual(celsius.stages);
    // 45 degree-days at 13.5 a day: 3 days and 8 hours.
    expect(celsius.stages[0]?.begins.expected).toBe("2026-06-11T20:00:00");
  });

  it("goes on with the means of past years, fills gaps with them, and says so", async () => {
    const june = "date,min,max\n2015-06-08,15,27\n2015-06-09,15,27\n2015-06-11,15,27\n";
    const past = readFileSync(
      new URL("../../fixtures/temperatures/new-york-2012-2015.csv", import.meta.url),
      "utf8",
    ).replace("temp_max", "highest");
    const { code, out } = await moltline(`forecast --temperatures a.csv --normals past.csv ${FOUND}`, {
      "a.csv": june,
      "past.csv": past,
    });
    expect(code).toBe(0);
    expect(out.split("DAY BY DAY")[0]).not.toContain("not known");
    const flat = out.replace(/\s+/g, " ");
    expect(flat).toContain("rest on temperatures filled into gaps");
    expect(flat).toContain("rest on the normal temperatures of past years");
    expect(flat).toContain("- a.csv: 1 day lack");
    expect(flat).toContain('- past.csv: Columns: max from "highest".');
  });

  it("says which file a note is about when there are several", async () => {
    const { out } = await moltline(
      `forecast --temperatures gap.csv --temperatures warm.csv --temperatures new-york.csv ${FOUND}`,
      { "warm.csv": "Datum,min,max\n2016-06-08,12,24\n" },
    );
    expect(out).toContain("- gap.csv: ");
    expect(out).toContain('- warm.csv: Columns: date from "Datum".');
    expect(out).not.toContain("- new-york.csv: ");
  });

  it("never develops: says so, with the highest temperature seen, and ends well", async () => {
    const words = "forecast --temperatures cold.csv --species monarch --found egg --on 2026-06-08 --unit C";
    const { code, out } = await moltline(words);
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, " ")).toContain(
      "the highest temperature is 9.5 °C and the lower threshold 11.5 °C",
    );
    const { notes, stages }: Forecast = JSON.parse((await moltline(`${words} --json`)).out);
    expect(notes.find(({ code }) => code === "never-develops")?.message).toContain("9.5");
    expect(new Set(stages.map(({ begins }) => begins.expected))).toEqual(new Set([null]));
    expect(new Set(stages.map(({ absence }) => absence?.reason))).toEqual(new Set(["too-cold"]));
  });

  it("takes a species of one's own that began as a printed one", async () => {
    const { out } = await moltline("species monarch --json");
    const own = await moltline(
      "forecast --species-file own.json --found egg --on 2015-06-08 --unit C --temperatures new-york.csv",
      { "own.json": out },
    );
    expect(own).toEqual(await moltline(`forecast ${FOUND} --temperatures new-york.csv`));
  });

  it("reads a file with a column named __proto__ as any other", async () => {
    const csv = "date,min,max,__proto__,constructor\n2015-06-08,15,27,1,2\n2015-06-09,15,27,3,4\n";
    const { code, out } = await moltline(`forecast --temperatures a.csv ${FOUND}`, { "a.csv": csv });
    expect(code).toBe(0);
    expect(out).toContain("first instar");
    expect(Object.hasOwn(Object.prototype, "1")).toBe(false);
  });

  it("counts numbers that stand for no reading as missing when told", async () => {
    const csv = "date,min,max\n2015-06-08,15,27\n2015-06-09,-99,27\n2015-06-10,15,27\n";
    const { out } = await moltline(
      ["forecast", "--temperatures", "a.csv", "--missing", "-99", ...FOUND.split(" ")],
      { "a.csv": csv },
    );
    expect(out.replace(/\s+/g, " ")).toContain("There is a gap in the temperatures from 2015-06-09 00:00 on");
  });

  it("says that --fill-gaps does nothing for readings", async () => {
    const csv = "time,temp °C\n2015-06-08 11:00,20\n2015-06-08 13:00,22\n";
    const { out } = await moltline(`forecast --temperatures a.csv --fill-gaps 3 ${FOUND}`, { "a.csv": csv });
    expect(out.replace(/\s+/g, " ")).toContain("--fill-gaps is for days and leaves readings as they are");
  });
});

describe("degree-days", () => {
  it("prints days and totals, and counts in the unit of the file", async () => {
    const { out } = await moltline("degree-days --temperatures fahrenheit.csv --lower 50 --upper 95");
    expectPlainPage(out);
    expect(out).toContain("Thresholds: lower 50 °F, upper 95 °F (cutoff horizontal); single-sine");
    // The minimum of each day is at or above the threshold, so each day is its mean less 50.
    expect(out).toMatch(/2026-06-08 +18\.0 +18\.0\n2026-06-09 +20\.0 +38\.0\n2026-06-10 +22\.5 +60\.5/);
  });

  it("prints JSON alone with --json", async () => {
    const { out } = await moltline(
      "degree-days --temperatures gap.csv --unit C --lower -5 --from 2026-06-10 --json",
    );
    expect(JSON.parse(out)).toMatchObject({
      unit: "C",
      lower: -5,
      upper: null,
      cutoff: "none",
      days: [{ day: "2026-06-10" }, { day: "2026-06-11", degreeDays: 25, total: 49 }],
    });
  });

  it("says that days were filled, which the table does not show", async () => {
    const { out } = await moltline("degree-days --temperatures gap.csv --unit C --lower 10 --fill-gaps 1");
    expectPlainPage(out);
    expect(out).toContain("gap.csv: 1 missing day was filled along straight lines.");
    const normals = await moltline(
      "degree-days --temperatures gap.csv --normals new-york.csv --unit C --lower 10 --to 2026-06-20",
    );
    expect(normals.out.replace(/\s+/g, " ")).toContain("rest on the means of past years");
  });

  it("explains a column of zeros", async () => {
    const { out } = await moltline("degree-days --temperatures cold.csv --unit C --lower 10");
    expect(out.replace(/\s+/g, " ")).toContain(
      "No degree-days: the highest temperature is 9.5 °C and the lower threshold 10 °C.",
    );
  });

  it("takes a constant between two days", async () => {
    const { out } = await moltline("degree-days --constant 20 --lower 10 --from 2026-06-08 --to 2026-06-09");
    expect(out).toMatch(/2026-06-09 +10\.0 +20\.0/);
    expect(out.replace(/\s+/g, " ")).toContain("20 °C is assumed to be held");
  });
});

describe("compare", () => {
  it("puts what was expected beside what was seen", async () => {
    const { code, out } = await moltline(`compare --log log.csv --temperatures new-york.csv ${FOUND}`, {
      "log.csv": LOG.replace("stage", "event"),
    });
    expect(code).toBe(0);
    expectPlainPage(out);
    expect(out).toMatch(/first instar +4 +Wed 10 Jun {2}Wed 10 Jun/);
    expect(out).toContain("\n\nGOOD TO KNOW\n  - log.csv: ");
  });

  it("takes one of several groups by name", async () => {
    const log = "stage,seen on,cage\nhatched,2015-06-10,A\nhatched,2015-06-12,B\n";
    const { out } = await moltline(
      `compare --log log.csv --cohort B --temperatures new-york.csv ${FOUND} --json`,
      { "log.csv": log },
    );
    const { rows } = JSON.parse(out);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ stage: "instar-1", loggedOn: "2015-06-12", count: 1 });
  });
});

describe("species", () => {
  it("lists them, and takes a name of several words", async () => {
    expect((await moltline("species")).out.split("\n")).toHaveLength(SPECIES.length + 2);
    expect((await moltline("species Danaus plexippus")).out).toContain("id danaus-plexippus");
    expect(JSON.parse((await moltline("species --json")).out)).toHaveLength(SPECIES.length);
  });
});
