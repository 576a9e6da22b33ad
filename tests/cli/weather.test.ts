import { describe, expect, it } from "vitest";
import type { Forecast, Window } from "../../src/forecast/question/result.ts";
import { expectPlainPage } from "../write/plain-text.ts";
import { FOUND, moltline, refused } from "./in-memory.ts";

const ZONE = "--zone America/New_York";
const PAST = `--past-years new-york.csv`;
/** The bundled record, known up to a day, with its other years for what may come. */
const UNTIL = `--temperatures new-york.csv ${FOUND} ${ZONE} ${PAST} --until 2015-06-19`;

const OBSERVED = days("2015-06-", 1, 19, [16, 27]);
const AHEAD = days("2015-06-", 20, 24, [14, 22]);
const FILES = { "porch.csv": OBSERVED, "ahead.csv": AHEAD };

/** Days of a month that are all alike, as a file. */
function days(month: string, first: number, last: number, [min, max]: readonly [number, number]): string {
  const rows = Array.from({ length: last - first + 1 }, (_, i) => {
    const day = String(first + i).padStart(2, "0");
    return `${month}${day},${min},${max}`;
  });
  return `date,min,max\n${rows.join("\n")}\n`;
}

async function result(words: string, files: Readonly<Record<string, string>> = {}): Promise<Forecast> {
  const { code, out, err } = await moltline(`${words} --json`, files);
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out);
}

function adult({ stages }: Forecast): Window {
  return stages.at(-1)?.begins ?? { early: null, expected: null, late: null };
}

function widthDays({ early, late }: Window): number {
  return (Date.parse(late ?? "") - Date.parse(early ?? "")) / 86_400_000;
}

const codes = ({ notes }: Forecast): string[] => notes.map(({ code }) => code);

describe("forecast --past-years", () => {
  it("carries what the weather may do in windows that are wider than with the weather known", async () => {
    const [ahead, known] = await Promise.all([
      result(`forecast ${UNTIL}`),
      result(`forecast --temperatures new-york.csv ${FOUND} ${ZONE}`),
    ]);
    expect(widthDays(adult(ahead))).toBeGreaterThan(widthDays(adult(known)) + 1);
    // What lies before the last day known does not change.
    expect(ahead.stages[0]?.begins).toEqual(known.stages[0]?.begins);
    expect(codes(ahead)).toEqual(expect.arrayContaining(["weather-ensemble", "temperatures-past-years"]));
  });

  it("leaves out the year that is to be forecast, and says which years it took", async () => {
    const { code, out } = await moltline(`forecast ${UNTIL}`);
    expect(code).toBe(0);
    expectPlainPage(out);
    expect(out.replace(/\s+/g, " ")).toContain(
      "From 2015-06-20 on the weather is not known: the same season of 3 past years (2012, 2013, 2014)",
    );
  });

  it("goes on from the last day of a file of this year, of several files, or of a cut one alike", async () => {
    const early = days("2015-06-", 1, 10, [16, 27]);
    const late = days("2015-06-", 11, 19, [16, 27]);
    const longer = days("2015-06-", 1, 30, [16, 27]);
    const words = (files: string) => `forecast ${files} ${FOUND} ${ZONE} ${PAST}`;
    const whole = await result(words("--temperatures porch.csv"), FILES);
    const two = await result(words("--temperatures a.csv --temperatures b.csv"), {
      "a.csv": early,
      "b.csv": late,
    });
    const cut = await result(words("--temperatures a.csv --until 2015-06-19"), { "a.csv": longer });
    const cutTwo = await result(words("--temperatures a.csv --temperatures b.csv --until 2015-06-19"), {
      "a.csv": early,
      "b.csv": longer,
    });
    for (const other of [two, cut, cutTwo]) expect(other.stages).toEqual(whole.stages);
  });

  it("fills gaps of the past years as told, and refuses them otherwise", async () => {
    const past = days("2014-06-", 1, 30, [14, 26]).replace(/2014-06-25.*\n/, "");
    const words = `forecast --temperatures porch.csv ${FOUND} ${ZONE} --past-years past.csv`;
    const files = { ...FILES, "past.csv": past };
    expect(await refused(words, files)).toContain("--fill-gaps");
    const { notes } = await result(`${words} --fill-gaps 1`, files);
    expect(notes.map(({ message }) => message)).toContain(
      "past.csv: 1 missing day was filled along straight lines.",
    );
  });

  it.each(["--normals new-york.csv", "--constant 20"])("is refused beside %s", async (other) => {
    expect(await refused(`forecast ${UNTIL} ${other}`)).toContain(
      `--past-years and ${other.split(" ")[0]} both say what comes after the last day known`,
    );
  });

  it("needs days, not readings, and names the file", async () => {
    const files = { ...FILES, "a.csv": "time,temp °C\n2014-06-08 11:00,20\n2014-06-08 13:00,22\n" };
    expect(await refused(`forecast --temperatures porch.csv ${FOUND} --past-years a.csv`, files)).toContain(
      "a.csv: this needs a minimum and a maximum for each day",
    );
  });
});

describe("forecast --until", () => {
  it("forgets the days after it", async () => {
    const cut = await result(`forecast --temperatures new-york.csv ${FOUND} --until 2015-06-15`);
    expect(adult(cut)).toEqual({ early: null, expected: null, late: null });
    expect(codes(cut)).toContain("series-ends-first");
    const { stages } = await result(`forecast --temperatures new-york.csv ${FOUND}`);
    expect(cut.stages[0]).toEqual(stages[0]);
  });

  it.each([
    ["2016-06-15", "--until is 2016-06-15", "2012-01-01 to 2015-12-31"],
    ["15.6.2015", '--until is "15.6.2015"', "YYYY-MM-DD"],
    ["2015-02-29", '--until is "2015-02-29"', "28 days"],
  ])("refuses %s, with and without past years", async (day, ...says) => {
    for (const past of ["", PAST]) {
      const message = await refused(`forecast --temperatures new-york.csv ${FOUND} ${past} --until ${day}`);
      for (const text of says) expect(message).toContain(text);
    }
  });

  it("refuses readings, which it cannot cut", async () => {
    const files = { "a.csv": "time,temp °C\n2015-06-08 11:00,20\n2015-06-08 13:00,22\n" };
    for (const past of ["", PAST]) {
      expect(
        await refused(`forecast --temperatures a.csv ${FOUND} ${past} --until 2015-06-08`, files),
      ).toContain("leave it out");
    }
  });
});

describe("forecast --weather", () => {
  const words = `forecast --temperatures porch.csv --weather ahead.csv ${FOUND} ${ZONE}`;

  it.each([PAST, "--normals new-york.csv", "--constant 24", "--normals new-york.csv --until 2015-06-19"])(
    "counts before %s, and delays the animals when it is cold",
    async (after) => {
      const cold = await result(`${words} ${after}`, FILES);
      const warm = await result(`${words} ${after}`, {
        ...FILES,
        "ahead.csv": AHEAD.replaceAll(",14,22", ",20,30"),
      });
      expect(codes(cold)).toContain("temperatures-forecast");
      expect(Date.parse(adult(cold).expected ?? "")).toBeGreaterThan(
        Date.parse(adult(warm).expected ?? "") + 86_400_000,
      );
    },
  );

  it("is called a forecast and carried with its error where past years go on", async () => {
    const { out } = await moltline(`${words} ${PAST}`, FILES);
    expectPlainPage(out);
    const flat = out.replace(/\s+/g, " ");
    expect(flat).toContain("a forecast to 2015-06-24 with an error of 1.5 °C on its first day");
    expect(flat).toContain("5 of 3");
    expect(flat).toContain("rest on a weather forecast");
  });
});

const LOG = "stage,seen on,count\nhatched,2015-06-10,12\nL2,2015-06-13,12\n";

describe("forecast --log", () => {
  it("learns, and goes on from the last stage seen", async () => {
    const { code, out } = await moltline(`forecast ${UNTIL} --count 12 --log log.csv`, { "log.csv": LOG });
    expect(code).toBe(0);
    expectPlainPage(out);
    expect(out.replace(/\s+/g, " ")).toMatch(
      /From 2 entries of the log: these animals need \d+ % of what the constants say .* goes on from the second instar/,
    );
  });

  it("narrows the window of the adults with each further stage of the log", async () => {
    const lines = LOG.trimEnd().split("\n");
    const logs = [2, 3].map((rows) => `${lines.slice(0, rows).join("\n")}\n`);
    const longer = `${LOG}L3,2015-06-15,12\nL4,2015-06-17,12\n`;
    const widths: number[] = [];
    for (const log of [...logs, longer])
      widths.push(widthDays(adult(await result(`forecast ${UNTIL} --log log.csv`, { "log.csv": log }))));
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
    expect(new Set(widths).size).toBe(widths.length);
  });

  it("shows an entry that cannot be, with its row, and what it did with it", async () => {
    const log = `${LOG}pupated,2015-06-14,1\n`;
    const { code, out } = await moltline(`forecast ${UNTIL} --log log.csv`, { "log.csv": log });
    expect(code).toBe(0);
    const flat = out.replace(/\s+/g, " ");
    expect(flat).toContain("pupa, 2015-06-14 (row 4)");
    expect(flat).toContain("The entry is kept aside");
  });

  it("lets the pace differ more, and the thermometer be off, when told", async () => {
    const slow = { "log.csv": "stage,seen on,count\nL2,2015-06-16,12\n" };
    const paceOf = async (more: string) =>
      /need (\d+) %/.exec(
        (await moltline(`forecast ${UNTIL} --log log.csv ${more}`, slow)).out.replace(/\s+/g, " "),
      )?.[1];
    const [usual, wide] = [await paceOf(""), await paceOf("--pace-variation 0.3")];
    expect(Number(wide)).toBeGreaterThan(Number(usual));
    const { out } = await moltline(`forecast ${UNTIL} --log log.csv --offset-deviation 2`, slow);
    expect(out.replace(/\s+/g, " ")).toMatch(/Their temperature is -\d\.\d °C above the one given/);
  });

  it.each([
    ["--pace-variation 0.2", "--pace-variation is about what a log teaches"],
    ["--cohort A", "--cohort is about what a log teaches"],
    ["--log log.csv --pace-variation 5", "--pace-variation is 5"],
    ["--log log.csv --offset-deviation -1", "--offset-deviation is -1"],
  ])("refuses %s", async (words, text) => {
    expect(await refused(`forecast ${UNTIL} ${words}`, { "log.csv": LOG })).toContain(text);
  });

  it("does not take standard input for two things, named or not", async () => {
    expect(await refused(`forecast --log - ${FOUND}`, { "-": OBSERVED })).toContain("can be read only once");
    expect(await refused(`forecast ${FOUND} --temperatures - --past-years -`, { "-": OBSERVED })).toContain(
      "can be read only once",
    );
  });
});

describe("forecast with a method that follows the sun", () => {
  const words = `forecast --temperatures new-york.csv ${FOUND}`;

  it("takes place and zone, and gives other hours of the same days", async () => {
    const place = "--latitude 40.7 --longitude -74.0";
    const sun = await result(`${words} ${ZONE} --method sunrise-sine ${place}`);
    const sine = await result(`${words} ${ZONE}`);
    expect(adult(sun).expected).not.toBe(adult(sine).expected);
    expect(
      Math.abs(Date.parse(adult(sun).expected ?? "") - Date.parse(adult(sine).expected ?? "")),
    ).toBeLessThan(86_400_000);
  });

  it.each([
    [`${ZONE} --method sunrise-sine`, "--latitude and --longitude"],
    [`${ZONE} --method sunrise-exponential --latitude 40.7`, "--longitude is missing"],
    [`${ZONE} --longitude -74`, "--latitude is missing"],
    ["--method sunrise-sine --latitude 40.7 --longitude -74", "--zone"],
    [`${ZONE} --method sunrise-sine --latitude 140 --longitude -74`, "--latitude is 140"],
    [`${ZONE} --method sunrise-sine --latitude 40.7 --longitude 74`, "east positive"],
  ])("refuses %s", async (more, text) => {
    expect(await refused(`${words} ${more}`)).toContain(text);
  });
});

describe("compare with weather still to come", () => {
  it("lays the log beside the windows that carry it", async () => {
    const { code, out } = await moltline(`compare ${UNTIL} --log log.csv`, {
      "log.csv": "stage,seen on,count\npupated,2015-06-27,3\n",
    });
    expect(code).toBe(0);
    expectPlainPage(out);
    expect(out.replace(/\s+/g, " ")).toContain("the same season of 3 past years");
  });
});
