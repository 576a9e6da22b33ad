import { describe, expect, test } from "vitest";
import { readDailyCsv, readTemperatures } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes, fixture, messageOf, vegaDataset } from "./fixture.ts";

const rows = (...lines: string[]): string => ["date,min °C,max °C", ...lines].join("\n");

describe("readDailyCsv", () => {
  test("semicolons, decimal commas, dates day first, a sentinel, a missing day", () => {
    const { series, notes } = readDailyCsv(fixture("read/garden-days.csv"));
    expect(series.start).toBe("2026-04-28");
    expect([...series.min]).toEqual([6.5, -0.5, NaN, NaN, 8]);
    expect([...series.max]).toEqual([17, 15.2, 18.1, NaN, 21.4]);
    expect(codes(notes)).toEqual([
      "columns-recognised",
      "columns-ignored",
      "date-order-deduced",
      "sentinel-values",
      "missing-days",
    ]);
    expect(messageOf(notes, "sentinel-values")).toContain("row 4");
    expect(messageOf(notes, "missing-days")).toContain("2026-04-30 to 2026-05-01");
  });

  test("a file of two places is refused until one is chosen", () => {
    const bytes = vegaDataset("weather.csv");
    expect(refusalOf(() => readTemperatures(bytes)).message).toContain('"Seattle", "New York"');
    const mistyped = refusalOf(() => readTemperatures(bytes, { location: "Seatle" }));
    expect(mistyped.code).toBe("unknown-location");
    expect(mistyped.message).toContain('"Seattle"');
    const { series, notes } = readTemperatures(bytes, { location: "Seattle", unit: "C" });
    // The file has 1461 days for each place, 2012-01-01 to 2015-12-31 without gaps: vega-datasets 3.2.1, counted.
    expect(series).toMatchObject({ kind: "daily", start: "2012-01-01" });
    expect(series.kind === "daily" && series.min.length).toBe(1461);
    expect(codes(notes)).toEqual(["columns-ignored", "location-chosen"]);
    expect(series).toEqual(readTemperatures(vegaDataset("seattle-weather.csv"), { unit: "C" }).series);
  });

  test("CRLF and lone CR end lines as LF does", () => {
    const text = rows("2026-05-01,8,24", "2026-05-02,9,25");
    const plain = readDailyCsv(text).series;
    expect(readDailyCsv(text.replaceAll("\n", "\r\n")).series).toEqual(plain);
    expect(readDailyCsv(text.replaceAll("\n", "\r")).series).toEqual(plain);
  });

  test("title lines before the header are skipped and noted; row numbers stay those of the file", () => {
    const text = `Shelf, east room\n\n${rows("2026-05-01,8,24", "2026-05-02,x,25")}`;
    expect(refusalOf(() => readDailyCsv(text)).path).toEqual(["row", 5, "min °C"]);
    expect(messageOf(readDailyCsv(text.replace(",x,", ",9,")).notes, "lines-skipped")).toContain(
      "row 1 before the header in row 3",
    );
  });

  test("without a header in the first 20 rows it is refused", () => {
    const late = `${"title\n".repeat(20)}${rows("2026-05-01,8,24")}`;
    const error = refusalOf(() => readDailyCsv(late));
    expect(error.code).toBe("unknown-column");
    expect(readDailyCsv(late.replace("title\n", "")).series.min[0]).toBe(8);
    expect(refusalOf(() => readTemperatures("2026-05-01,8,24")).message).toContain("Add a header row");
  });

  test("columns named by the caller, in any case; a mistyped one is offered its neighbours", () => {
    const text = "when,bottom,top,low\n2026-05-01,8,24,7";
    const columns = { date: "When", min: "bottom", max: "top" };
    expect(readDailyCsv(text, { columns, unit: "C" }).series.min[0]).toBe(8);
    const error = refusalOf(() => readDailyCsv(text, { columns: { ...columns, max: "topp" } }));
    expect(error.code).toBe("unknown-column");
    expect(error.message).toContain('"top"');
  });

  test("two candidate columns are refused, with the option that decides", () => {
    const error = refusalOf(() => readDailyCsv("date,tmin,low,tmax\n2026-05-01,8,7,24"));
    expect(error.code).toBe("ambiguous-column");
    expect(error.message).toContain('"tmin" and "low"');
    expect(error.message).toContain("columns.min");
  });

  test("headers called __proto__ or constructor do no harm", () => {
    const { series } = readDailyCsv("__proto__,constructor,date,min,max\n1,2,2026-05-01,8,24");
    expect(series.max[0]).toBe(24);
    expect(refusalOf(() => readDailyCsv("__proto__,constructor\n1,2")).code).toBe("unknown-column");
  });

  test("midnight may stand with the day, any other time may not", () => {
    expect(readDailyCsv(rows("2026-05-01T00:00:00,8,24")).series.start).toBe("2026-05-01");
    expect(refusalOf(() => readDailyCsv(rows("2026-05-01 06:00,8,24"))).message).toContain("readings-csv");
  });

  test("missing values in words, and a day with one value, are missing days", () => {
    const { series, notes } = readDailyCsv(
      rows("2026-05-01,8,24", "2026-05-02,NA,25", "2026-05-03,,null", "2026-05-04,M,NaN"),
    );
    expect([...series.min]).toEqual([8, NaN, NaN, NaN]);
    expect(messageOf(notes, "empty-cells")).toContain("rows 3 to 5");
    expect(messageOf(notes, "missing-days")).toContain("3 days");
  });

  test.each([
    ["abc", "invalid-number"],
    ["Infinity", "invalid-number"],
    ["21.5 °C", "invalid-number"],
  ])("%j in a number cell is refused with its place", (cell, code) => {
    const error = refusalOf(() => readDailyCsv(rows("2026-05-01,8,24", `2026-05-02,${cell},25`)));
    expect(error).toMatchObject({ code, path: ["row", 3, "min °C"], value: cell });
    expect(error.message).toContain(`row 3, column "min °C" is "${cell}"`);
  });

  test.each([-9999, -999, -999.9, 999.9, 9999])("%d stands for a missing value", (sentinel) => {
    const { series, notes } = readDailyCsv(rows("2026-05-01,8,24", `2026-05-02,${sentinel},25`));
    expect(series.min[1]).toBeNaN();
    expect(messageOf(notes, "sentinel-values")).toContain(
      `${sentinel} stands for a missing temperature (row 3)`,
    );
  });

  test("further sentinels are taken from the caller", () => {
    expect(
      readDailyCsv(rows("2026-05-01,8,24", "2026-05-02,-99,25"), { sentinels: [-99] }).series.min[1],
    ).toBeNaN();
  });

  test("a minimum above its maximum is refused, or exchanged and noted", () => {
    const text = rows("2026-05-01,8,24", "2026-05-02,25,9");
    const error = refusalOf(() => readDailyCsv(text));
    expect(error).toMatchObject({ code: "min-above-max", path: ["row", 3, "min °C"] });
    expect(error.message).toMatch(/25 °C.*9 °C.*exchangeSwapped/);
    const { series, notes } = readDailyCsv(text, { exchangeSwapped: true });
    expect([series.min[1], series.max[1]]).toEqual([9, 25]);
    expect(messageOf(notes, "extremes-exchanged")).toContain("row 3");
  });

  test("a day twice: repeated is dropped, completed is joined, contradicted is refused", () => {
    const { series, notes } = readDailyCsv(
      rows("2026-05-01,8,24", "2026-05-01,8,24", "2026-05-02,9,", "2026-05-02,,25"),
    );
    expect([...series.max]).toEqual([24, 25]);
    expect(messageOf(notes, "duplicate-rows")).toContain("Joined row 5");
    expect(notes.filter(({ code }) => code === "duplicate-rows").at(-1)?.message).toContain("Dropped row 3");
    const error = refusalOf(() =>
      readDailyCsv(rows("2026-05-01,8,24", "2026-05-02,8,24", "2026-05-01,8,23")),
    );
    expect(error.code).toBe("conflicting-readings");
    expect(error.message).toContain("rows 2 and 4");
  });

  test("a mistyped year is refused, not filled with missing days", () => {
    const late = refusalOf(() => readDailyCsv(rows("2026-05-01,1,5", "9026-05-02,1,5", "2026-05-03,2,6")));
    expect(late.message).toContain('row 3, column "date" is 9026-05-02, more than 400 years');
    const early = refusalOf(() => readDailyCsv(rows("0226-05-01,1,5", "2026-05-02,1,5", "2026-05-03,2,6")));
    expect(early.path).toEqual(["row", 2, "date"]);
  });

  test("rows out of order are sorted and noted", () => {
    const { series, notes } = readDailyCsv(rows("2026-05-03,3,5", "2026-05-01,1,5", "2026-05-02,2,5"));
    expect([...series.min]).toEqual([1, 2, 3]);
    expect(messageOf(notes, "rows-sorted")).toContain("2 rows");
  });

  test("a long list of missing days stays readable", () => {
    const days = Array.from(
      { length: 20 },
      (_, i) => `2026-${String((i % 12) + 1).padStart(2, "0")}-${i < 12 ? "01" : "15"},8,24`,
    );
    const message = messageOf(readDailyCsv(rows(...days)).notes, "missing-days");
    expect(message).toMatch(/and \d+ more\.$/);
    expect(message.length).toBeLessThan(300);
  });

  test("rows of the wrong length", () => {
    expect(refusalOf(() => readDailyCsv(rows("2026-05-01,8,24", "2026-05-02,9"))).message).toContain(
      'row 3 has 2 cells and so none for the column "max °C"',
    );
    expect(refusalOf(() => readDailyCsv(rows("2026-05-01,8,5,24,0"))).message).toContain("decimal commas");
    expect(readDailyCsv(rows("2026-05-01,8,24,,", "", ",,")).series.min).toHaveLength(1);
  });

  test("an open quotation mark is refused with its row", () => {
    expect(refusalOf(() => readDailyCsv(rows("2026-05-01,8,24", '"2026-05-02,9,25'))).path).toEqual([
      "row",
      3,
    ]);
  });

  test("header only, and values all missing", () => {
    expect(refusalOf(() => readDailyCsv("date,min,max\n")).code).toBe("no-temperatures");
    expect(refusalOf(() => readDailyCsv(rows("2026-05-01,,"))).code).toBe("no-temperatures");
  });

  test("an archive export with attributes may be in tenths and is refused", () => {
    const text = "STATION,DATE,TMAX,TMAX_ATTRIBUTES,TMIN,TMIN_ATTRIBUTES\nXX000000001,2026-01-01,39,,12,";
    expect(refusalOf(() => readTemperatures(text)).message).toContain("tenths");
  });

  test("a mean temperature beside the extremes leaves it a table of days", () => {
    const { format, notes } = readTemperatures("date,temp,tmin,tmax\n2026-05-01,15,8,24", { unit: "C" });
    expect(format).toBe("daily-csv");
    expect(messageOf(notes, "columns-ignored")).toContain('"temp"');
  });

  test("tabs and bars separate too, and quoted cells keep their commas", () => {
    expect(readDailyCsv("date\tmin\tmax\n2026-05-01\t8,5\t24").series.min[0]).toBe(8.5);
    expect(readDailyCsv("date|min|max\n2026-05-01|8.5|24").series.min[0]).toBe(8.5);
    expect(readDailyCsv('date,min,max,"note, if any"\n"2026-05-01","8,5","24","a, b"').series.min[0]).toBe(
      8.5,
    );
  });
});

describe("units", () => {
  const text = (header: string, cells = "50,68"): string => `${header}\n2026-05-01,${cells}`;

  test("from the header", () => {
    const { series, notes } = readDailyCsv(text("date,Min (°F),Max (°F)"));
    expect([series.min[0], series.max[0]]).toEqual([10, 20]);
    expect(messageOf(notes, "unit-converted")).toContain("2 temperatures");
  });

  test("from the option", () => {
    expect(readDailyCsv(text("date,min,max"), { unit: "F" }).series.min[0]).toBe(10);
  });

  test("from neither: °C with a note, as long as all are possible", () => {
    expect(codes(readDailyCsv(text("date,min,max", "8,24")).notes)).toEqual(["unit-assumed"]);
    const error = refusalOf(() => readDailyCsv(text("date,min,max")));
    expect(error).toMatchObject({ code: "implausible-temperature", path: ["row", 2, "max"], value: 68 });
    expect(error.message).toContain("say unit F if it is Fahrenheit");
  });

  test("header against option, header against header", () => {
    expect(refusalOf(() => readDailyCsv(text("date,min F,max F"), { unit: "C" })).code).toBe(
      "conflicting-units",
    );
    expect(refusalOf(() => readDailyCsv(text("date,min F,max C"))).code).toBe("conflicting-units");
    expect(refusalOf(() => readDailyCsv(text("date,min (K),max (K)", "280,290"))).code).toBe("unknown-unit");
  });

  test("a value that no place on earth has is refused in a stated unit too", () => {
    expect(refusalOf(() => readDailyCsv(text("date,min C,max C", "8,64"))).message).toContain("sentinels");
  });
});

describe("options", () => {
  test("an unknown option is refused with a near one", () => {
    // @ts-expect-error a mistyped option
    const error = refusalOf(() => readDailyCsv("date,min,max\n2026-05-01,8,24", { exchangeSwaped: true }));
    expect(error.code).toBe("invalid-option");
    expect(error.message).toContain("exchangeSwapped");
  });

  test("a value of the wrong kind is refused with those that are right", () => {
    // @ts-expect-error no such unit
    const error = refusalOf(() => readDailyCsv("date,min,max\n2026-05-01,8,24", { unit: "K" }));
    expect(error).toMatchObject({ code: "invalid-option", path: ["unit"], value: "K" });
    expect(refusalOf(() => readDailyCsv("x", { zone: "Mars/Base" })).code).toBe("invalid-zone");
    expect(refusalOf(() => readDailyCsv("x", { longestGapHours: 0 })).message).toContain("above 0");
  });
});
