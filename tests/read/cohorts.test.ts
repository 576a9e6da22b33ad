import { describe, expect, it } from "vitest";
import { readCohorts } from "../../src/read/index.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes } from "./fixture.ts";

const HEADER = "name,species,found,on,count,age,cages";
const first = (row: string) => readCohorts(`${HEADER}\n${row}`).cohorts[0];

describe("readCohorts", () => {
  it("reads a table, with words for stages and names for species", () => {
    const { cohorts } = readCohorts(
      `${HEADER}\nporch,monarch,egg,2026-06-08,12,new,2\nshelf,Pieris rapae,L3,2026-06-15 07:30,3,0.5,\nbox,cydia-pomonella,hatched,2026-06-16,,,`,
    );
    expect(
      cohorts.map(({ name, lifeCycle, found, cages }) => [name, lifeCycle.species, found, cages]),
    ).toEqual([
      ["porch", "danaus-plexippus", { stage: "egg", on: "2026-06-08", count: 12, age: "new" }, 2],
      ["shelf", "pieris-rapae", { stage: "instar-3", on: "2026-06-15T07:30:00", count: 3, age: 0.5 }, 1],
      ["box", "cydia-pomonella", { stage: "larva", on: "2026-06-16", count: 1, age: "unknown" }, 1],
    ]);
  });

  it("reads the same from JSON", () => {
    const json = JSON.stringify([
      { name: "porch", species: "monarch", found: "egg", on: "2026-06-08", count: 12, age: "new", cages: 2 },
      { name: "shelf", species: "monarch", found: "pupa", on: "2026-06-15" },
    ]);
    const csv = `${HEADER}\nporch,monarch,egg,2026-06-08,12,new,2\nshelf,monarch,pupa,2026-06-15,,,`;
    expect(readCohorts(json).cohorts).toEqual(readCohorts(csv).cohorts);
    expect(readCohorts(new TextEncoder().encode(`\uFEFF${json}`)).cohorts).toHaveLength(2);
  });

  it("reads semicolons and day-first dates, and says what it deduced", () => {
    const { cohorts, notes } = readCohorts("cohort;species;stage;found on\na;monarch;egg;25.06.2026");
    expect(cohorts[0]?.found.on).toBe("2026-06-25");
    expect(codes(notes)).toEqual(expect.arrayContaining(["date-order-deduced", "count-assumed"]));
    expect(refusalOf(() => readCohorts("name,species,found,on\na,monarch,egg,03/04/2026")).code).toBe(
      "ambiguous-date",
    );
    expect(
      readCohorts("name,species,found,on\na,monarch,egg,03/04/2026", { dateOrder: "day-first" }).cohorts[0]
        ?.found.on,
    ).toBe("2026-04-03");
  });

  it("takes a species of one's own by its id", () => {
    const own = { ...danausPlexippus, species: "porch-monarch", commonName: "ours" };
    expect(
      readCohorts(`${HEADER}\na,Porch-Monarch,egg,2026-06-08,,,`, { own: [own] }).cohorts[0]?.lifeCycle,
    ).toBe(own);
  });

  it.each([
    [
      "a,monach,egg,2026-06-08,1,,",
      "unknown-species",
      'row 2, column "species" is "monach"; did you mean monarch',
    ],
    ["a,__proto__,egg,2026-06-08,1,,", "unknown-species", 'row 2, column "species"'],
    ["a,monarch,eg,2026-06-08,1,,", "unknown-stage", 'row 2, column "found" is "eg"'],
    ["a,monarch,egg,2026-02-30,1,,", "invalid-day", 'row 2, column "on"'],
    ["a,monarch,egg,2026-06-08 25:00,1,,", "invalid-instant", 'row 2, column "on"'],
    ["a,monarch,egg,2026-06-08,0,,", "invalid-found", 'row 2, column "count" is "0"'],
    ["a,monarch,egg,2026-06-08,1.5,,", "invalid-found", 'row 2, column "count" is "1.5"'],
    ["a,monarch,egg,2026-06-08,1,old,", "invalid-found", 'row 2, column "age" is "old"'],
    ["a,monarch,egg,2026-06-08,1,1.5,", "invalid-found", 'row 2, column "age" is "1.5"'],
    ["a,monarch,egg,2026-06-08,1,,none", "invalid-found", 'row 2, column "cages" is "none"'],
    [",monarch,egg,2026-06-08,1,,", "invalid-found", 'row 2, column "name"'],
    ["a,monarch,egg,2026-06-08,1,,\na,monarch,egg,2026-06-09,1,,", "invalid-found", "row 2 has that name"],
  ])("refuses %s", (row, code, says) => {
    const error = refusalOf(() => first(row));
    expect(error.code).toBe(code);
    expect(error.message).toContain(says);
    expect(error.message).toMatch(/[.?]$/);
  });

  it("takes cohorts of several places", () => {
    const { cohorts, notes } = readCohorts(
      "name,species,found,on,count,place\na,monarch,egg,2026-06-08,1,porch\nb,monarch,egg,2026-06-08,1,shed",
    );
    expect(cohorts.map(({ name }) => name)).toEqual(["a", "b"]);
    expect(notes).toContainEqual({ code: "columns-ignored", message: 'Not used: "place".' });
  });

  it.each([
    [{ dateOrder: "dayfirst" }, "dateOrder"],
    [{ dateorder: "day-first" }, "dateorder"],
    [{ own: [{}] }, "own"],
  ])("refuses the options %j", (options, says) => {
    const [csv, json] = [`${HEADER}\na,monarch,egg,3/4/2026,1,,`, "[]"];
    for (const text of [csv, json]) {
      const error = refusalOf(() => readCohorts(text, Object(options)));
      expect(error.code).toBe("invalid-option");
      expect(error.message).toContain(says);
    }
  });

  it("refuses a table without the columns, and one without rows", () => {
    expect(refusalOf(() => readCohorts("who,what\na,b")).message).toContain(
      "name, species, stage found and day",
    );
    expect(refusalOf(() => readCohorts(`${HEADER}\n`))).toMatchObject({
      code: "invalid-found",
      message: expect.stringContaining("no row with values"),
    });
    expect(refusalOf(() => readCohorts("")).message).toContain("empty");
  });

  it.each([
    ["[]", "the list of cohorts"],
    ['{"cohorts": []}', "it must be a list"],
    ["[{", "not valid JSON"],
    ['[{"name":"a","species":"monarch","found":"egg"}]', "entry 0.on is missing"],
    [
      '[{"name":"a","specis":"monarch","found":"egg","on":"2026-06-08"}]',
      'unknown field "specis"; did you mean species',
    ],
    [
      '[{"name":"a","species":"monach","found":"egg","on":"2026-06-08"}]',
      'entry 0.species is "monach"; did you mean',
    ],
    ['[{"name":"a","species":"monarch","found":"eg","on":"2026-06-08"}]', 'entry 0.found is "eg"'],
    ['[{"name":"a","species":"monarch","found":"egg","on":"2026-06-08","count":0}]', "entry 0.count is 0"],
    ['[{"name":"a","species":"monarch","found":"egg","on":"2026-06-08","age":"old"}]', "entry 0.age"],
  ])("refuses the JSON %s", (json, says) => {
    expect(refusalOf(() => readCohorts(json)).message).toContain(says);
  });
});
