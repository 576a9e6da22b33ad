import { describe, expect, test } from "vitest";
import { readDailyCsv } from "../../src/read/index.ts";
import type { ReadOptions } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { messageOf } from "./fixture.ts";

const read = (dates: string[], options: ReadOptions = {}) =>
  readDailyCsv(["date;min;max", ...dates.map((date) => `${date};8;24`)].join("\n"), {
    unit: "C",
    ...options,
  });

describe("dates of a column", () => {
  test.each([
    "2026-07-04",
    "2026/7/4",
    "2026.07.04",
    "20260704",
    "4 July 2026",
    "4-Jul-2026",
    "Jul 4, 2026",
    "04 jul. 2026",
  ])("%j is read as it stands", (date) => {
    expect(read([date]).series.start).toBe("2026-07-04");
  });

  test("month and date whose order nothing tells are refused, never guessed", () => {
    const error = refusalOf(() => read(["03/04/2026", "04/04/2026"]));
    expect(error).toMatchObject({ code: "ambiguous-date", path: ["row", 2, "date"], value: "03/04/2026" });
    expect(error.message).toContain("say dateOrder");
  });

  test("dateOrder decides", () => {
    expect(read(["03/04/2026"], { dateOrder: "day-first" }).series.start).toBe("2026-04-03");
    expect(read(["03/04/2026"], { dateOrder: "month-first" }).series.start).toBe("2026-03-04");
  });

  test("a row that can only be read one way decides for the column, and is named", () => {
    const { series, notes } = read(["12.04.2026", "13.04.2026"]);
    expect(series.start).toBe("2026-04-12");
    expect(messageOf(notes, "date-order-deduced")).toMatch(/day first: row 3 \(13\.04\.2026\)/);
    expect(read(["4/12/2026", "4/13/2026"]).series.start).toBe("2026-04-12");
  });

  test("the fourth of April is the same in both orders", () => {
    expect(read(["04/04/2026"]).series.start).toBe("2026-04-04");
  });

  test("rows that contradict each other are refused, both named", () => {
    const error = refusalOf(() => read(["13/04/2026", "04/14/2026"]));
    expect(error.code).toBe("ambiguous-date");
    expect(error.message).toMatch(/row 3.*row 2/);
  });

  test("a date that dateOrder makes impossible is refused", () => {
    expect(refusalOf(() => read(["04/13/2026"], { dateOrder: "day-first" })).message).toContain(
      "no month 13",
    );
    expect(refusalOf(() => read(["04/03/2026"], { dateOrder: "year-first" })).message).toContain(
      "year stands last",
    );
  });

  test.each(["07/04/26", "4-Jul-26"])("a year of two digits is refused: %j", (date) => {
    expect(refusalOf(() => read([date])).message).toContain("four digits");
  });

  test.each(["2026-02-29", "2026-13-01", "2026-00-10", "31.04.2026", "0000-01-01"])(
    "%j does not exist",
    (date) => {
      expect(refusalOf(() => read([date]))).toMatchObject({ code: "invalid-day", value: date });
    },
  );

  test.each(["soon", "46145", "2026-7", "4 Juil 2026", "2026-07/04"])("%j is no date", (date) => {
    expect(refusalOf(() => read([date])).code).toBe("invalid-day");
  });

  test("a leap day is a day", () => {
    expect(read(["29.02.2028"]).series.start).toBe("2028-02-29");
  });
});
