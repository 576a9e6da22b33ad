import { describe, expect, test } from "vitest";
import { clockCell, splitStamp } from "../../src/read/table/clock-cell.ts";
import { headerMeaning } from "../../src/read/table/header-words.ts";
import { numberCell } from "../../src/read/table/number-cell.ts";

describe("numberCell", () => {
  test.each([
    ["21.5", 21.5],
    ["21,5", 21.5],
    [" -3 ", -3],
    ["−3,5", -3.5],
    ["+.5", 0.5],
    ["2.15e1", 21.5],
    ["0", 0],
  ])("%j is %d", (text, value) => {
    expect(numberCell(text)).toBe(value);
  });

  test.each(["", " ", "NA", "NaN", "null", "M", "m"])("%j says that there is none", (text) => {
    expect(numberCell(text)).toBeNull();
  });

  test.each(["Infinity", "-inf", "21.5 C", "1.234,5", "0x10", "1 2", "12:00", "1e999"])(
    "%j is no number",
    (text) => {
      expect(numberCell(text)).toBeUndefined();
    },
  );
});

describe("clockCell and splitStamp", () => {
  const HOUR = 3_600_000;

  test.each([
    ["13:05", 13 * HOUR + 5 * 60_000],
    ["1:05 PM", 13 * HOUR + 5 * 60_000],
    ["12:00 AM", 0],
    ["12:00 p.m.", 12 * HOUR],
    ["06:00:01.250", 6 * HOUR + 1250],
    ["24:00", 24 * HOUR],
  ])("%j", (text, ms) => {
    expect(clockCell(text)).toEqual({ ms, offset: null });
  });

  test.each(["25:00", "24:01", "12:60", "13:00 PM", "0:30 AM", "noon", "12"])(
    "%j is shown by no clock",
    (text) => {
      expect(clockCell(text)).toBeNull();
    },
  );

  test.each([
    ["2026-05-01T06:00:00Z", 0],
    ["2026-05-01 06:00 UTC", 0],
    ["2026-05-01T06:00-04:00", -4 * HOUR],
    ["2026-05-01T06:00+0530", 5.5 * HOUR],
    ["2026-05-01T06:00+02", 2 * HOUR],
  ])("%j has an offset", (text, offset) => {
    expect(splitStamp(text)).toEqual({ day: "2026-05-01", clock: { ms: 6 * HOUR, offset } });
  });

  test("a day alone has no time, a T in a month name separates nothing", () => {
    expect(splitStamp("4 Oct 2026")).toEqual({ day: "4 Oct 2026", clock: null });
    expect(splitStamp("4 Oct 2026 10:00")?.day).toBe("4 Oct 2026");
    expect(splitStamp("05/01/2026, 1:00 PM")?.day).toBe("05/01/2026");
  });
});

describe("headerMeaning", () => {
  test.each([
    ["Date Time, GMT-04:00", "stamp", null],
    ["Temp, °F", "temperature", "F"],
    ["Temp, °C (sensor 1, S/N: 20)", "temperature", "C"],
    ["temp (°C)", "temperature", "C"],
    ["temperature_F", "temperature", "F"],
    ["T", "temperature", null],
    ["Air temperature [℃]", "temperature", "C"],
    ["tempMaxF", "max", "F"],
    ["Temperature (min)", "min", null],
    ["TMIN", "min", null],
    ["min temp", "min", null],
    ["Daily Low deg F", "min", "F"],
    ["temperature_2m_max (ºC)", "max", "C"],
    ["High", "max", null],
    ["Datum", "date", null],
    ["Timestamp", "stamp", null],
    ["Time (UTC)", "time", null],
    ["Temp (K)", "temperature", "K"],
    ["humidity", null, null],
    ["#", null, null],
    ["__proto__", null, null],
    ["constructor", null, null],
    ["min max", null, null],
  ])("%j", (text, role, unit) => {
    expect(headerMeaning(text)).toMatchObject({ text, role, unit });
  });

  test.each([
    ["Date Time, GMT-04:00", -4 * 3_600_000],
    ["time_utc", 0],
    ["Time UTC+2", 2 * 3_600_000],
    ["Time, GMT+0530", 5.5 * 3_600_000],
    ["time", null],
  ])("offset of %j", (text, offset) => {
    expect(headerMeaning(text).offset).toBe(offset);
  });
});
