import { describe, expect, test } from "vitest";
import { readTrials } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes, fixture, messageOf } from "./fixture.ts";

describe("readTrials", () => {
  test("the published trials, with nothing to remark", () => {
    const { trials, notes } = readTrials(fixture("trials/gastrophysa-viridula.csv"));
    expect(trials).toEqual([
      { temperature: 18, days: 28.2 },
      { temperature: 21.5, days: 21.6 },
      { temperature: 25, days: 16.1 },
      { temperature: 28, days: 15 },
    ]);
    expect(notes).toEqual([]);
  });

  test("animals become weights; other columns are named", () => {
    const { trials, notes } = readTrials(fixture("trials/invented-trials.csv"));
    expect(trials).toHaveLength(9);
    expect(trials[0]).toEqual({ temperature: 12, days: 83, weight: 8 });
    expect(codes(notes)).toEqual(["columns-ignored"]);
  });

  test("semicolons, decimal commas, °F in the header, headers that need a reading", () => {
    const { trials, notes } = readTrials(
      "My trials;;\nTemp, °F;Duration (days);n\n64,4;28,2;12\n77;16,1;9\n",
    );
    expect(trials[0]?.temperature).toBeCloseTo(18, 12);
    expect(trials[1]).toEqual({ temperature: 25, days: 16.1, weight: 9 });
    expect(codes(notes)).toEqual(["lines-skipped", "columns-recognised", "unit-converted"]);
    expect(messageOf(notes, "columns-recognised")).toContain('days from "Duration (days)"');
  });

  test("the unit may be told, must agree, and is remarked on where nobody names it", () => {
    expect(readTrials("temperature,days\n77,16", { unit: "F" }).trials[0]?.temperature).toBe(25);
    expect(codes(readTrials("temperature,days\n25,16").notes)).toEqual(["unit-assumed"]);
    expect(refusalOf(() => readTrials("temperature °C,days\n25,16", { unit: "F" })).code).toBe(
      "conflicting-units",
    );
    expect(refusalOf(() => readTrials("temperature,days\n77,16"))).toMatchObject({
      code: "implausible-temperature",
      path: ["row", 2, "temperature"],
    });
    expect(refusalOf(() => readTrials("temperature K,days\n298,16")).code).toBe("unknown-unit");
  });

  test("columns by name, and one place of several", () => {
    const text = "where,warmth,took,temperature\na,18,28,1\n";
    expect(readTrials(text, { columns: { temperature: "warmth", days: "took" } }).trials).toEqual([
      { temperature: 18, days: 28 },
    ]);
    const sites = "site,temperature,days\nhill,18,28\ncoast,18,25\n";
    expect(refusalOf(() => readTrials(sites)).code).toBe("unknown-location");
    expect(readTrials(sites, { location: "coast" }).trials).toEqual([{ temperature: 18, days: 25 }]);
  });

  test.each([
    ["temperature,days\n18,0", "days", "0", "above 0"],
    ["temperature,days\n18,-3", "days", "-3", "above 0"],
    ["temperature,days\n18,", "days", "", "leave out the row"],
    ["temperature,days\n18,never", "days", "never", "leave out the row"],
    ["temperature,days\n18,Infinity", "days", "Infinity", "above 0"],
    ["temperature,days\nwarm,20", "temperature", "warm", "such as 21.5"],
    ["temperature,days\n,20", "temperature", "", "such as 21.5"],
    ["temperature,days\n-9999,20", "temperature", "-9999", "such as 21.5"],
    ["temperature,days,animals\n18,20,0", "animals", "0", "number of animals"],
    ["temperature,days,animals\n18,20,", "animals", "", "number of animals"],
  ])("%j is refused with its place", (text, column, value, mustBe) => {
    const error = refusalOf(() => readTrials(text));
    expect(error).toMatchObject({ code: "invalid-number", path: ["row", 2, column], value });
    expect(error.message).toContain(mustBe);
  });

  test.each([
    ["", "malformed-file"],
    ["temperature,days\n", "invalid-trials"],
    ["temperature,hours\n18,600", "unknown-column"],
    ["temperature,days,duration\n18,28,28", "ambiguous-column"],
  ])("%j is refused: %s", (text, code) => {
    expect(refusalOf(() => readTrials(text)).code).toBe(code);
  });

  test("an unknown option is refused", () => {
    // @ts-expect-error a reader without types
    expect(refusalOf(() => readTrials("temperature,days\n18,28", { units: "C" })).code).toBe(
      "invalid-option",
    );
  });
});
