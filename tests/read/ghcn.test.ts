import { describe, expect, test } from "vitest";
import { decodeText, readGhcnCsv, readGhcnDly, readTemperatures } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes, fixture, messageOf } from "./fixture.ts";

// Columns and units: NOAA NCEI, GHCN-Daily readme (positions from memory; the daily USHCN description,
// https://cdiac.ess-dive.lbl.gov/ftp/ushcn_daily/data_format.txt, has the same fields of eight characters).
// The station and its values are invented.
const dly = decodeText(fixture("read/station-month.dly"));
const csv = decodeText(fixture("read/station-month.csv"));

function monthLine(
  element: string,
  values: readonly string[],
  month = "202602",
  station = "XX000000001",
): string {
  return station + month + element + Array.from({ length: 31 }, (_, i) => values[i] ?? "-9999   ").join("");
}

describe("readGhcnDly", () => {
  test("fixed columns, tenths of °C, missing and flagged values", () => {
    const { series, notes, format } = readTemperatures(dly);
    expect(format).toBe("ghcn-dly");
    expect(series.kind === "daily" && [series.start, series.min.length]).toEqual(["2026-04-01", 61]);
    expect(series.kind === "daily" && [series.min[0], series.max[0], series.min[30]]).toEqual([
      4.3, 15.4, 6.3,
    ]);
    expect(series.kind === "daily" && [series.min[2], series.max[2]]).toEqual([4.9, NaN]);
    expect(series.kind === "daily" && [series.min[9], series.max[9]]).toEqual([NaN, 19.6]);
    expect(codes(notes)).toEqual(["flagged-values", "missing-days"]);
    expect(messageOf(notes, "flagged-values")).toContain("2026-04-10");
  });

  test("a value on a day that does not exist is refused", () => {
    const line = monthLine(
      "TMAX",
      Array.from({ length: 29 }, () => "  100   "),
    );
    const error = refusalOf(() => readGhcnDly(line));
    expect(error).toMatchObject({ code: "malformed-file", path: ["row", 1, "TMAX"] });
    expect(error.message).toContain("has 28 days");
  });

  test("a value out of its columns is refused", () => {
    expect(refusalOf(() => readGhcnDly(monthLine("TMAX", [" 1 00   "]))).message).toContain("columns 22-26");
    expect(refusalOf(() => readGhcnDly(monthLine("TMAX", []).slice(0, 100))).code).toBe("malformed-file");
    expect(refusalOf(() => readGhcnDly("a note\n" + dly)).message).toContain('row 1 is "a note"');
  });

  test("a value that ran into the flags is refused, not read as a tenth of itself", () => {
    // `  970` one column late is `   97` and a flag 0; flags are letters.
    const error = refusalOf(() => readGhcnDly(monthLine("TMIN", ["   20  S", "   970 S"])));
    expect(error).toMatchObject({ code: "malformed-file", path: ["row", 1, "TMIN"], value: "0 " });
    expect(error.message).toContain("the flags of day 2 in columns 35-36 must be letters or blanks");
    expect(
      readGhcnDly([monthLine("TMAX", ["  100B S"]), monthLine("TMIN", ["   20H S"])].join("\n")).series
        .min[0],
    ).toBe(2);
  });

  test("the blank tail of a short month may be cut off, other elements are passed over", () => {
    const full = [
      monthLine("TMAX", ["  100  S"]),
      monthLine("TMIN", ["   20  S"]),
      monthLine("SNOW", ["    x  S"]),
    ];
    const cut = full.map((line) => line.slice(0, 21 + 8 * 28).trimEnd());
    const { series } = readGhcnDly(cut.join("\r\n"));
    expect([series.start, ...series.min, ...series.max]).toEqual(["2026-02-01", 2, 10]);
  });

  test("several stations are refused until one is chosen", () => {
    const other = monthLine("TMAX", ["  100  S"], "202604", "XX000000002");
    const error = refusalOf(() => readGhcnDly(dly + other));
    expect(error.code).toBe("unknown-location");
    expect(error.message).toContain('"XX000000001", "XX000000002"');
    expect(readGhcnDly(dly + other, { location: "XX000000001" }).series).toEqual(readGhcnDly(dly).series);
    expect(refusalOf(() => readGhcnDly(dly, { location: "XX000000011" })).message).toContain("XX000000001");
  });

  test("minimum above maximum, contradictions, wrong unit, nothing to read", () => {
    const swapped = [monthLine("TMAX", ["   20  S"]), monthLine("TMIN", ["  100  S"])].join("\n");
    expect(refusalOf(() => readGhcnDly(swapped)).code).toBe("min-above-max");
    expect(readGhcnDly(swapped, { exchangeSwapped: true }).series.max[0]).toBe(10);
    const twice = [monthLine("TMAX", ["  100  S"]), monthLine("TMAX", ["  110  S"])].join("\n");
    expect(refusalOf(() => readGhcnDly(twice)).code).toBe("conflicting-readings");
    expect(refusalOf(() => readGhcnDly(dly, { unit: "F" })).code).toBe("conflicting-units");
    expect(refusalOf(() => readGhcnDly(monthLine("PRCP", []))).code).toBe("no-temperatures");
  });
});

describe("readGhcnCsv", () => {
  test("holds the same as the fixed columns", () => {
    const { series, format } = readTemperatures(csv);
    expect(format).toBe("ghcn-csv");
    expect(series).toEqual(readGhcnDly(dly).series);
  });

  test("a header line is passed over", () => {
    const header = "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n";
    expect(readTemperatures(header + csv).series).toEqual(readGhcnDly(dly).series);
  });

  test.each([
    ["XX000000001,20260231,TMAX,154,,,S,", "exists"],
    ["XX000000001,20260201,TMAX,15.4,,,S,", "tenths"],
    ["XX000000001,20260201,TMAX,154", "four more cells"],
    ["XX000000001,20260201,TMAX,15,4,,S,", "flags"],
    ["XX000000001,20260201,TMAX,154,,4,S,", "flags"],
  ])("%j is refused", (line, why) => {
    const error = refusalOf(() => readGhcnCsv(line));
    expect(error).toMatchObject({ code: "malformed-file", path: ["row", 1] });
    expect(error.message).toContain(why);
  });
});
