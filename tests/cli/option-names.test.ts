import { describe, expect, it, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { inOptionNames, optionNames } from "../../src/cli/options/option-names.ts";
import { FOUND, moltline, refused } from "./in-memory.ts";

const HERE = `--temperatures new-york.csv ${FOUND}`;

describe("what a refusal calls the inputs of the library", () => {
  test("its own name for them in the library, that of the caller elsewhere", () => {
    const error = new InputError("invalid-option", (name) => `say ${name("dateOrder")} day-first.`);
    expect(error.message).toBe("say dateOrder day-first.");
    expect(inOptionNames(error, optionNames({ "date-order": "text" }))).toBe("say --date-order day-first.");
  });

  test("words about an input that a command has no option for are left out", () => {
    const error = new InputError(
      "invalid-option",
      (name) => `leave it out${name("sentinels", (it) => `, or give it as ${it}`)}.`,
    );
    expect(error.message).toBe("leave it out, or give it as sentinels.");
    expect(inOptionNames(error, optionNames({ missing: "list" }))).toBe(
      "leave it out, or give it as --missing.",
    );
    expect(inOptionNames(error, optionNames({}))).toBe("leave it out.");
  });

  test("a place in a list goes by the option that fills the list", () => {
    const at = { path: ["emergences", 3, "at"] };
    const error = new InputError("invalid-instant", 'emergences.3.at is "noon"; it must be a time.', at);
    expect(inOptionNames(error, optionNames({ emerged: "list" }))).toBe(
      '--emerged is "noon"; it must be a time.',
    );
  });

  test("a place in a file keeps the name that it has there", () => {
    const error = new InputError("malformed-file", 'a.json: unit is "K".', { path: ["a.json", "unit"] });
    expect(inOptionNames(error, optionNames({ unit: "text" }))).toBe('a.json: unit is "K".');
  });
});

describe("names of one file are not those of another", () => {
  it("does not offer a column option for a log, which has none", async () => {
    const message = await refused(`compare --log log.csv ${HERE}`, {
      "log.csv": "stage,seen on,time,time of day\nhatched,2015-06-10,,\n",
    });
    expect(message).toContain(
      'the columns "time" and "time of day" could each be the column time; rename or remove one.',
    );
  });

  it("does not take a field of a JSON file for an option", async () => {
    const message = await refused(`forecast --temperatures a.json ${FOUND}`, {
      "a.json": '{"unit":"K","constant":300}',
    });
    expect(message).toContain('a.json: unit is "K"');
  });

  it("names the option whose header is not there", async () => {
    const message = await refused(`degree-days --temperatures a.csv --lower 10 --min-column Lo`, {
      "a.csv": "date,low,high\n2026-06-08,12,24\n",
    });
    expect(message).toContain('the column "Lo" that --min-column names');
  });

  it("offers no --normals beside --past-years, which are refused together", async () => {
    const message = await refused(`forecast ${FOUND} --temperatures a.csv --past-years gap.csv`, {
      "a.csv": "date,min,max\n2015-06-08,7,18\n",
    });
    expect(message).toContain(
      "past years have no temperature for 2026-06-09; fill the gap with --fill-gaps first.",
    );
  });

  it("says that a name of a column is missing", async () => {
    const message = await refused([
      ..."degree-days --temperatures gap.csv --lower 10 --min-column".split(" "),
      "",
    ]);
    expect(message).toContain('--min-column is ""; it must be the header of a column.');
  });
});

test("a row that is added to a log of open dates is told with the option that decides them", async () => {
  const words = "log add --log log.csv --stage pupated --on 2026-06-25";
  const { out } = await moltline(words, { "log.csv": "stage,seen on,count\nhatched,03/04/2026,1\n" });
  expect(out).toContain("say --date-order month-first or day-first");
});
