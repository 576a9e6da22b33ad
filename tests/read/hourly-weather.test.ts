import { describe, expect, it } from "vitest";
import { type HourlyOptions, readHourlyWeather } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes, fixture, messageOf } from "./fixture.ts";

const ZONE = { zone: "America/New_York" };
const csv = (header: string, ...rows: string[]): string => [header, ...rows].join("\n");
const HEADER = "time,temp °C,wind m/s,rain mm,rain chance %,cloud %";
const ROW = "2026-07-05 14:00,24,2.5,0,5,20";
const SHORT = "2026-07-05 14:00,24,2.5,0";
const utc = (text: string): number => Date.parse(text);

describe("readHourlyWeather", () => {
  it("reads the invented week: a gap and a missing value are kept and noted", () => {
    const { weather, notes, units } = readHourlyWeather(fixture("weather/invented-week.csv"), ZONE);
    expect(weather.at).toHaveLength(7 * 24 - 2);
    expect(weather.at[0]).toBe(utc("2015-07-02T00:00-04:00"));
    expect(weather.temperature.filter((value) => value === null)).toHaveLength(1);
    expect(weather.rain?.filter((value) => (value ?? 0) > 0)).toHaveLength(4);
    expect(units).toEqual({ temperature: "C", wind: "m/s" });
    expect(codes(notes)).toEqual(["columns-recognised", "empty-cells", "gaps-in-readings"]);
    expect(messageOf(notes, "gaps-in-readings")).toContain("2015-07-07T16:00:00-04:00");
  });

  it.each([
    ["time,temp °F,wind mph,rain %", "2026-07-05 14:00,77,10,5", { temperature: 25, wind: 4.4704 }],
    ["time,Temp (C),Wind (km/h),Precip (mm)", "2026-07-05 14:00,25,36,0", { wind: 10 }],
    ["timestamp,temperature_2m °C,wind_speed_10m kn,precipitation mm", "2026-07-05 14:00,25,3600,0", null],
    ["time,temp °C,wind knots,pop %", "2026-07-05 14:00,25,10,30", { wind: 18520 / 3600 }],
    [
      "time;temp °C;wind m/s;rain mm",
      "2026-07-05 14:00;24,5;2,5;0,2",
      { temperature: 24.5, wind: 2.5, rain: 0.2 },
    ],
    ["time,temp °C,wind m/s,rain (in)", "2026-07-05 14:00,24,2,1", { rain: 25.4 }],
    ["time,temp °C,wind m/s,chance of rain %", "2026-07-05 14:00,24,2,15%", { rainChance: 15 }],
    ["time,temp °C,wind m/s,rain mm,cloud (oktas)", "2026-07-05 14:00,24,2,0,4", { cloud: 50 }],
    ["date,time,temp °C,wind m/s,rain mm", "2026-07-05,2:00 PM,24,2,0", { temperature: 24 }],
  ] as const)("%s", (header, row, says) => {
    if (says === null) {
      // 3600 knots is a fault.
      expect(refusalOf(() => readHourlyWeather(csv(header, row), ZONE)).code).toBe("implausible-weather");
      return;
    }
    const { weather } = readHourlyWeather(csv(header, row), ZONE);
    expect(weather.at).toEqual([utc("2026-07-05T14:00-04:00")]);
    for (const [field, value] of Object.entries(says)) {
      const column = Object.entries(weather).find(([name]) => name === field)?.[1];
      expect(column?.[0]).toBeCloseTo(value, 9);
    }
  });

  it("does not take gusts, directions or wind chill for the wind, nor dew points for the temperature", () => {
    const { weather, notes } = readHourlyWeather(
      csv(
        "time,dew point °C,temp °C,wind chill °C,wind gust m/s,wind direction,wind m/s,rain mm",
        "2026-07-05 14:00,1,24,3,9,270,2,0",
      ),
      ZONE,
    );
    expect([weather.temperature[0], weather.wind[0]]).toEqual([24, 2]);
    expect(messageOf(notes, "columns-ignored")).toContain('"wind gust m/s"');
  });

  it("takes columns by name", () => {
    const text = csv("time,temp °C,wind m/s,gust m/s,rain mm", "2026-07-05 14:00,24,2,9,0");
    const { weather } = readHourlyWeather(text, { ...ZONE, columns: { wind: "gust m/s" } });
    expect(weather.wind).toEqual([9]);
  });

  it("sorts, drops what only repeats, and reads offsets and clock changes", () => {
    const { weather, notes } = readHourlyWeather(
      csv(
        "time,temp °C,wind m/s,rain mm",
        "2026-11-01 00:00,9,2,0",
        "2026-11-01 01:00,9,2,0",
        "2026-11-01 01:00,8,2,0",
        "2026-11-01 03:00,7,2,0",
        "2026-11-01 02:00,7.5,2,0",
        "2026-11-01 03:00,7,2,0",
      ),
      ZONE,
    );
    expect(weather.temperature).toEqual([9, 9, 8, 7.5, 7]);
    expect(new Set(weather.at.slice(1).map((at, i) => at - (weather.at[i] ?? 0)))).toEqual(
      new Set([3_600_000]),
    );
    expect(codes(notes)).toEqual(expect.arrayContaining(["clock-change", "rows-sorted", "duplicate-rows"]));
    const offset = readHourlyWeather(csv("time,temp °C,wind m/s,rain mm", "2026-07-05T14:00-04:00,24,2,0"));
    expect(offset.weather.at).toEqual([utc("2026-07-05T18:00Z")]);
  });

  it("counts numbers that stand for a missing value", () => {
    const { weather, notes } = readHourlyWeather(csv(HEADER, "2026-07-05 14:00,-999,-9999,-99,,20"), {
      ...ZONE,
      sentinels: [-99],
    });
    expect([weather.temperature, weather.wind, weather.rain, weather.rainChance, weather.cloud]).toEqual([
      [null],
      [null],
      [null],
      [null],
      [20],
    ]);
    expect(codes(notes).filter((code) => code === "sentinel-values")).toHaveLength(3);
  });

  it("reads JSON, a document or a bare list, to the same", () => {
    const hours = [
      { at: "2026-07-05T14:00", temperature: 77, wind: 36, rain: 0, rainChance: 5, cloud: 20 },
      { at: "2026-07-05T15:00", temperature: null, wind: 18, rain: 0, cloud: null },
    ];
    const whole = readHourlyWeather(JSON.stringify({ unit: "F", windUnit: "km/h", hours }), ZONE);
    const bare = readHourlyWeather(JSON.stringify(hours), { ...ZONE, unit: "F", windUnit: "km/h" });
    expect(bare.weather).toEqual(whole.weather);
    expect(whole.weather).toEqual({
      at: [utc("2026-07-05T18:00Z"), utc("2026-07-05T19:00Z")],
      temperature: [25, null],
      wind: [expect.closeTo(10, 9), expect.closeTo(5, 9)],
      rain: [0, 0],
      rainChance: [5, null],
      cloud: [20, null],
    });
  });

  const refused: readonly (readonly [string, string, HourlyOptions, string, ...string[]])[] = [
    [
      "no unit of temperature",
      csv("time,temp,wind m/s,rain mm", SHORT),
      ZONE,
      "unknown-unit",
      '"temp" names no unit',
      "unit C or unit F",
    ],
    [
      "no unit of wind",
      csv("time,temp °C,wind,rain mm", SHORT),
      ZONE,
      "unknown-unit",
      '"wind" names no unit',
      "km/h",
    ],
    [
      "no unit of rain",
      csv("time,temp °C,wind m/s,rain", SHORT),
      ZONE,
      "unknown-unit",
      '"rain" names no unit',
      "mm",
    ],
    ["two units of wind", csv(HEADER, ROW), { ...ZONE, windUnit: "mph" }, "conflicting-units", "m/s", "mph"],
    ["two units of temperature", csv(HEADER, ROW), { ...ZONE, unit: "F" }, "conflicting-units", "°C"],
    ["no zone", csv(HEADER, ROW), {}, "zone-needed", "America/New_York"],
    ["no rain", csv("time,temp °C,wind m/s", ROW), ZONE, "unknown-column", "rain or its chance"],
    [
      "a word for a wind",
      csv(HEADER, "2026-07-05 14:00,24,calm,0,5,20"),
      ZONE,
      "invalid-number",
      'row 2, column "wind m/s" is "calm"',
      "a number in m/s",
    ],
    [
      "a word for a temperature",
      csv(HEADER, "2026-07-05 14:00,hot,2,0,5,20"),
      ZONE,
      "invalid-number",
      'row 2, column "temp °C" is "hot"',
    ],
    [
      "a chance over 100",
      csv(HEADER, "2026-07-05 14:00,24,2,0,105,20"),
      ZONE,
      "implausible-weather",
      'row 2, column "rain chance %" is "105"',
      "0 to 100 %",
    ],
    [
      "a wind that no place has",
      csv(HEADER, "2026-07-05 14:00,24,200,0,5,20"),
      ZONE,
      "implausible-weather",
      "row 2",
    ],
    ["a negative rain", csv(HEADER, "2026-07-05 14:00,24,2,-1,5,20"), ZONE, "implausible-weather", "row 2"],
    ["°F called °C", csv(HEADER, "2026-07-05 14:00,77,2,0,5,20"), ZONE, "implausible-temperature", "row 2"],
    [
      "chances from 0 to 1",
      csv("time,temp °C,wind m/s,rain chance", "2026-07-05 14:00,24,2,0.3"),
      ZONE,
      "unknown-unit",
      "shares of 1",
    ],
    [
      "cloud that may be eighths",
      csv("time,temp °C,wind m/s,rain mm,cloud", "2026-07-05 14:00,24,2,0,7"),
      ZONE,
      "unknown-unit",
      "eighths of the sky",
    ],
    [
      "half hours",
      csv(HEADER, ROW, ROW.replace("14:00", "14:30")),
      ZONE,
      "invalid-weather",
      "rows 2 to 3 are 30 minutes apart",
    ],
    [
      "one hour twice",
      csv(HEADER, ROW, ROW.replace("24", "25")),
      ZONE,
      "conflicting-readings",
      "rows 2 to 3",
    ],
    ["a skipped time", csv(HEADER, "2026-03-08 02:00,9,2,0,5,20"), ZONE, "skipped-local-time", "row 2"],
    [
      "every third hour",
      csv(HEADER, ROW, ROW.replace("14:00", "17:00")),
      ZONE,
      "invalid-weather",
      "3 hours apart",
    ],
    ["a header alone", HEADER, ZONE, "invalid-weather", "no row with values"],
    [
      "an option that there is not",
      csv(HEADER, ROW),
      { zoen: "UTC" } as HourlyOptions,
      "invalid-option",
      "zoen",
    ],
    ["a zone that there is not", csv(HEADER, ROW), { zone: "Mars/Base" }, "invalid-zone", "Mars/Base"],
    ["JSON without hours", "{}", ZONE, "malformed-file", "hours is missing"],
    ["JSON with no hour", '{"unit":"C","windUnit":"kn","hours":[]}', ZONE, "too-few-readings", "empty"],
    [
      "JSON without a unit",
      '[{"at":"2026-07-05T14:00","temperature":24,"wind":2,"rain":0}]',
      ZONE,
      "unknown-unit",
      "unit of the temperatures",
    ],
    [
      "JSON without a unit of wind",
      '{"unit":"C","hours":[{"at":"2026-07-05T14:00","temperature":24,"wind":2,"rain":0}]}',
      ZONE,
      "unknown-unit",
      "windUnit",
    ],
    [
      "JSON with a mistyped field",
      '{"unit":"C","windUnit":"kn","hours":[{"at":"2026-07-05T14:00","temperature":24,"wnd":2,"rain":0}]}',
      ZONE,
      "malformed-file",
      '"wnd"',
      "wind",
    ],
    [
      "JSON without rain",
      '{"unit":"C","windUnit":"kn","hours":[{"at":"2026-07-05T14:00","temperature":24,"wind":2}]}',
      ZONE,
      "invalid-weather",
      "rain",
    ],
  ];

  it.each(refused.map(([name, text, options, code, ...says]) => ({ name, text, options, code, says })))(
    "refuses $name",
    ({ text, options, code, says }) => {
      const refusal = refusalOf(() => readHourlyWeather(text, options));
      expect(refusal.code).toBe(code);
      for (const one of says) expect(refusal.message).toContain(one);
      expect(refusal.message).toMatch(/[.?]$/);
    },
  );
});
