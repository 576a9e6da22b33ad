import { describe, expect, it } from "vitest";
import { FOUND, refused } from "./in-memory.ts";

const HERE = `--temperatures new-york.csv ${FOUND}`;
const LINE = "--temperatures new-york.csv --unit C";

/** Refused words, and what the message must say. */
const WORDS: readonly (readonly [words: string, ...says: readonly string[]])[] = [
  // commands and options
  ["forcast", 'there is no command "forcast"; did you mean forecast?'],
  ["constructor", 'there is no command "constructor"', "species, season, start-for, forecast, "],
  ["help nothing", 'there is no command "nothing"'],
  [`forecast ${HERE} --tempratures x`, "there is no option --tempratures; did you mean --temperatures"],
  [`forecast ${HERE} --__proto__ x`, "there is no option --__proto__"],
  [`forecast ${HERE} -x`, "there is no option -x"],
  [`forecast ${HERE} --json=yes`, "--json takes no value"],
  [`forecast ${FOUND} --temperatures`, "--temperatures needs a value"],
  [`forecast --temperatures --unit C`, "--temperatures needs a value"],
  [`forecast porch.csv ${FOUND}`, '"porch.csv" belongs to no option; a file is given as --temperatures FILE'],
  [`forecast ${HERE} --species monarch`, "--species was given 2 times; give it once"],
  [`forecast ${HERE} --species-file own.json`, "--species and --species-file were both given"],
  [`forecast ${HERE} --place foo`, '--place is "foo"; the file has no column of places'],
  // what was found
  ["forecast --json", "--species is missing", "danaus-plexippus"],
  [`forecast ${LINE} --species monarch --on 2015-06-08`, "--found is missing", "egg"],
  [`forecast ${LINE} --species monarch --found egg`, "--on is missing", "2026-06-08"],
  [
    `forecast ${LINE} --species monach --found egg --on 2015-06-08`,
    'species is "monach"; did you mean monarch',
  ],
  [`forecast ${LINE} --species __proto__ --found egg --on 2015-06-08`, '--species is "__proto__"'],
  [
    `forecast ${LINE} --species monarch --found instr-5 --on 2015-06-08`,
    '--found is "instr-5"; did you mean instar 5',
  ],
  [
    `forecast ${LINE} --species cydia-pomonella --found instar-2 --on 2015-06-08`,
    '--found is "instar-2"',
    "Cydia pomonella",
    "egg, larva, pupa",
  ],
  [`forecast ${LINE} --species monarch --found larva --on 2015-06-08`, '--found is "larva"', "instar-1"],
  [
    `forecast ${LINE} --species monarch --found adult --on 2015-06-08`,
    "the adult is the end of the forecast",
  ],
  [
    `forecast ${LINE} --species monarch --found egg --on 2023-02-29`,
    '--on is "2023-02-29", which does not exist: that month has 28 days',
  ],
  [`forecast ${LINE} --species monarch --found egg --on 6/8/2015`, '--on is "6/8/2015"', "YYYY-MM-DD"],
  [`forecast ${LINE} --species monarch --found egg --on 2015-06-08T25:00`, "--on is", "00:00 to 23:59"],
  [
    `forecast ${LINE} --zone America/New_York --species monarch --found egg --on 2015-03-08T02:30`,
    "a time that clocks in America/New_York skipped",
  ],
  [`forecast ${LINE} --species monarch --found egg --on 2026-06-08`, "2012-01-01", "2015-12-31"],
  [`forecast ${LINE} --species monarch --found egg --on 2011-06-08`, "2012-01-01", "2015-12-31"],
  [`forecast ${HERE} --zone America/NewYork`, '--zone is "America/NewYork", which is not a known time zone'],
  [`forecast ${HERE} --count 0`, "--count is 0; it must be a whole number from 1"],
  [`forecast ${HERE} --count NaN`, '--count is "NaN"'],
  [`forecast ${HERE} --count Infinity`, '--count is "Infinity"'],
  [`forecast ${HERE} --age 1.5`, '--age is "1.5"', "a share from 0 to 1"],
  [`forecast ${HERE} --shares 0.5`, '--shares is "0.5"', "three shares"],
  [`forecast ${HERE} --shares 0.9,0.5,0.1`, "--shares is 0.9, 0.5, 0.1", "rising"],
  [`forecast ${HERE} --method sine`, '--method is "sine"; did you mean', "single-sine", "average"],
  [`forecast ${HERE.replace("--unit C", "--unit K")}`, '--unit is "K"; it must be one of C, F'],
  // temperatures
  [`forecast ${FOUND}`, "standard input: there is nothing in it", "--temperatures"],
  [`forecast --temperatures gone.csv ${FOUND}`, "gone.csv cannot be read: there is no such file"],
  [`forecast ${FOUND} --constant NaN`, '--constant is "NaN"'],
  [`forecast ${FOUND} --constant 77`, "--constant is 77 °C", "--unit"],
  [`forecast ${FOUND} --constant 20 --normals new-york.csv`, "--normals is never used"],
  [`forecast ${HERE} --fill-gaps 1.5`, "--fill-gaps is 1.5; it must be a whole number of days from 1"],
  [`forecast ${HERE} --longest-gap -1`, "--longest-gap is -1"],
  [`forecast --temperatures gap.csv ${FOUND} --normals gap.csv`, "gap.csv: day 1 of the year has no reading"],
  // degree-days
  [`degree-days ${LINE}`, "--lower is missing", "lower developmental threshold"],
  [`degree-days ${LINE} --lower 30 --upper 10`, "--lower is 30; it must be below --upper, 10"],
  [
    `degree-days --temperatures fahrenheit.csv --lower 50 --upper 50`,
    "--lower is 50; it must be below --upper, 50",
  ],
  [`degree-days ${LINE} --lower Infinity`, '--lower is "Infinity"'],
  [`degree-days ${LINE} --lower 10,5`, '--lower is "10,5"', "a point for decimals"],
  [`degree-days ${LINE} --lower 10 --from 2011-01-01`, "--from is 2011-01-01", "2012-01-01 to 2015-12-31"],
  [`degree-days ${LINE} --lower 10 --from 2023-02-29`, '--from is "2023-02-29"'],
  [
    `degree-days ${LINE} --lower 10 --from 2015-06-02 --to 2015-06-01`,
    "--to is 2015-06-01, before from 2015-06-02",
  ],
  [`degree-days ${LINE} --lower 10 --cutoff vertical`, "needs an upper threshold"],
  [
    `degree-days ${LINE} --lower 10 --upper 30 --method clamped-mean --cutoff vertical`,
    "--cutoff is vertical, but clamped-mean holds",
  ],
  [`degree-days ${LINE} --lower 10 --cutoff soft`, '--cutoff is "soft"', "horizontal"],
  ["degree-days --temperatures gap.csv --unit C --lower 10", "2026-06-09", "--fill-gaps"],
  ["degree-days --constant 20 --lower 10", "give --from and --to"],
  // compare and species
  [`compare ${HERE}`, "--log is missing"],
  ["species nonsense-butterfly", 'species is "nonsense-butterfly"'],
  ["species --jsn", "there is no option --jsn; did you mean --json?"],
];

describe("moltline refuses, with the reason and the remedy", () => {
  it.each(WORDS)("%s", async (words, ...says) => {
    const message = await refused(words);
    for (const text of says) expect(message).toContain(text);
    expect(message).toMatch(/^moltline: [^\n]*[.?]\n$/);
    expect(message).not.toMatch(/undefined|\[object|Error:|\bat .*\.ts/);
  });
});

describe("a command named alone", () => {
  it.each(["forecast", "plan", "log", "fit", "season"])("%s shows how it is begun", async (name) => {
    const message = await refused(name);
    expect(message).toMatch(/^moltline: [^\n]*[.?]\n\nFor example:\n {2}moltline /);
    expect(message).toContain(`moltline ${name} --help explains each option.`);
  });
});

/** Files that cannot be used, and what the message must say. */
const FILES: readonly (readonly [name: string, file: string | Uint8Array, ...says: readonly string[]])[] = [
  ["an empty file", "", "a.csv: the text is empty"],
  ["a header alone", "date,min,max\n", "a.csv: ", "no row with values"],
  [
    "days without a reading",
    "date,min,max\n2015-06-08,,\n2015-06-09,5,\n",
    "a.csv: no day has both a minimum and a maximum",
  ],
  ["one reading", "time,temp\n2015-06-08 12:00,20\n", "a.csv: there is one reading", "at least two"],
  ["a minimum above the maximum", "date,min,max\n2015-06-08,20,10\n", "row 2", "20 °C", "--exchange-swapped"],
  ["Infinity", "date,min,max\n2015-06-08,3,Infinity\n2015-06-09,3,9\n", "row 2", '"max"', '"Infinity"'],
  ["a word for a number", "date,min,max\n2015-06-08,cold,9\n2015-06-09,3,9\n", "row 2", '"cold"'],
  ["a day that does not exist", "date,min,max\n2023-02-29,3,9\n", "row 2", '"2023-02-29"', "28 days"],
  [
    "headers of properties that every object has",
    "__proto__,constructor,toString\n1,2,3\n",
    '"__proto__"',
    "Add a header row",
  ],
  [
    "bytes that are no text",
    new Uint8Array([0x89, 0, 1, 2, 255, 254, 7, 0, 13]),
    "a.csv: the input ",
    "plain text",
  ],
  ["a spreadsheet", new Uint8Array([0x50, 0x4b, 3, 4, 20, 0]), "a.csv: the input is a spreadsheet", "CSV"],
  ["a value that no place has", "date,min,max\n2015-06-08,3,99\n", "row 2", "99", "--missing"],
];

describe("moltline forecast refuses a file with", () => {
  it.each(FILES)("%s", async (_, file, ...says) => {
    const message = await refused(`forecast --temperatures a.csv ${FOUND}`, { "a.csv": file });
    for (const text of says) expect(message).toContain(text);
    expect(message).toMatch(/^moltline: a\.csv: [^\n]*\n$/);
  });

  it("too much in it, naming the limit", async () => {
    const message = await refused(`forecast --temperatures a.csv ${FOUND}`, {
      "a.csv": new Uint8Array(64 * 2 ** 20 + 1),
    });
    expect(message).toMatch(/67108864|64 MiB/);
  });

  it("NaN in a cell: no temperature, and not a cold day", async () => {
    const message = await refused(`forecast --temperatures a.csv ${FOUND}`, {
      "a.csv": "date,min,max\n2015-06-08,NaN,NaN\n2015-06-09,NaN,9\n",
    });
    expect(message).toMatch(/NaN|no day has both/);
  });
});

describe("moltline refuses other files", () => {
  it.each([
    ["no JSON", "date,min", "own.json: the text is not valid JSON"],
    ["JSON of another shape", '{"species":"x"}', "own.json: "],
    ["a key that it does not know", '{"__proto__":{"species":"x"}}', "own.json: "],
  ])("a species file with %s", async (_, file, text) => {
    const words = "forecast --species-file own.json --found egg --on 2015-06-08 --temperatures new-york.csv";
    expect(await refused(words, { "own.json": file })).toContain(text);
  });

  it("a log with a stage that it does not know, or without entries", async () => {
    const log = async (text: string) => refused(`compare --log log.csv ${HERE}`, { "log.csv": text });
    expect(await log("stage,seen on\nflew away,2015-06-10\n")).toMatch(
      /log\.csv: row 2, column "stage" is "flew away"/,
    );
    expect(await log("stage,seen on\n")).toContain("the log has no entries");
    expect(await log("when,what\n2015-06-10,x\n")).toContain("Add a header row such as stage,seen on,count.");
    expect(await log("stage,seen on\nhatched,2023-02-29\n")).toContain('"2023-02-29"');
  });

  it("a log of several groups without a name", async () => {
    const files = { "log.csv": "stage,seen on,cage\nhatched,2015-06-10,A\nhatched,2015-06-12,\n" };
    const words = `compare --log log.csv ${HERE}`;
    expect(await refused(words, files)).toContain(
      'name one of them with --cohort: "A", "" (those without a name)',
    );
    expect(await refused(`${words} --cohort C`, files)).toContain(
      '--cohort is "C", which the log does not have',
    );
  });

  it("standard input for two things", async () => {
    expect(
      await refused(`compare --log - ${FOUND}`, {
        "-": "date,min,max\n2015-06-08,15,27\n2015-06-09,15,27\n",
      }),
    ).toContain("can be read only once");
  });
});
