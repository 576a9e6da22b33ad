import { describe, expect, test } from "vitest";
import { readTemperatures, readTemperaturesJson } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";
import { codes } from "./fixture.ts";

const read = (value: unknown, options = {}) => readTemperatures(JSON.stringify(value), options);

describe("readTemperaturesJson", () => {
  test("days, also as a bare list", () => {
    const days = [
      { date: "2026-05-01", min: 8, max: 24 },
      { date: "2026-05-03", min: null, max: 25 },
    ];
    const { series, notes, format } = read({ unit: "C", days });
    expect(format).toBe("json");
    expect(series.kind === "daily" && [...series.max]).toEqual([24, NaN, 25]);
    expect(codes(notes)).toEqual(["empty-cells", "missing-days"]);
    expect(read(days, { unit: "C" }).series).toEqual(series);
  });

  test("readings, also as a bare list", () => {
    const readings = [
      { at: "2026-05-01T06:00:00-04:00", temperature: 57.2 },
      { at: "2026-05-01T11:00Z", temperature: 60.8 },
    ];
    const { series } = read({ unit: "F", readings });
    expect(series.kind === "readings" && [...series.at]).toEqual([
      Date.parse("2026-05-01T10:00Z"),
      Date.parse("2026-05-01T11:00Z"),
    ]);
    expect(series.kind === "readings" && series.temperature[0]).toBeCloseTo(14, 10);
    expect(read(readings, { unit: "F" }).series).toEqual(series);
    expect(
      read({
        unit: "C",
        readings: [
          { at: "2026-05-01T06:00", temperature: 1 },
          { at: "2026-05-01T07:00", temperature: 2 },
        ],
      }).series,
    ).toMatchObject({ clock: "local" });
  });

  test("a temperature that is held", () => {
    expect(read({ unit: "F", constant: 77, from: "2026-05-01" }).series).toEqual({
      kind: "constant",
      temperature: 25,
      from: "2026-05-01",
      to: null,
    });
    const { notes } = read({ constant: 24 });
    expect(codes(notes)).toEqual(["unit-assumed"]);
    expect(refusalOf(() => read({ constant: 75 })).message).toContain("unit F");
    expect(refusalOf(() => read({ unit: "C", constant: 24, from: "" })).code).toBe("invalid-day");
  });

  test.each([
    [{ days: [{ date: "2026-05-01", min: 8, mx: 24 }] }, ["days", 0, "mx"], "did you mean max"],
    [{ days: [{ date: "2026-05-01", min: "8", max: 24 }] }, ["days", 0, "min"], "a finite number"],
    [{ days: [{ date: "2026-05-01", min: 8 }] }, ["days", 0, "max"], "missing"],
    [{ days: {} }, ["days"], "a list"],
    [{ unit: "K", days: [] }, ["unit"], 'one of "C", "F"'],
    [{ readings: [{ at: "1 May 2026 06:00", temperature: 1 }] }, ["readings", 0, "at"], "ISO 8601"],
    [[{ at: 5, temperature: 1 }], [0, "at"], "a text"],
    [[5], [0], "an object"],
    [{}, ["text"], "days, readings or constant"],
  ])("%j is refused with its path", (value, path, why) => {
    const error = refusalOf(() => read(value));
    expect(error).toMatchObject({ code: "malformed-file", path });
    expect(error.message).toContain(why);
  });

  test("values are checked as in tables, under their path", () => {
    expect(
      refusalOf(() => read({ unit: "C", days: [{ date: "2026-05-32", min: 8, max: 24 }] })).path,
    ).toEqual(["days", 0, "date"]);
    expect(refusalOf(() => read({ days: [{ date: "2026-05-01", min: 50, max: 77 }] })).path).toEqual([
      "days",
      0,
      "max",
    ]);
    expect(
      refusalOf(() => read({ unit: "C", days: [{ date: "2026-05-01", min: 25, max: 7 }] })).message,
    ).toContain("days.0.min");
    expect(
      refusalOf(() => read({ unit: "F", days: [{ date: "2026-05-01", min: 8, max: 24 }] }, { unit: "C" }))
        .code,
    ).toBe("conflicting-units");
    expect(refusalOf(() => read([])).code).toBe("no-temperatures");
  });

  test.each(["{", '{"days": [}', "nul", "[1,]", '{"constant": 1e999}'])("%j is refused", (text) => {
    expect(refusalOf(() => readTemperaturesJson(text)).code).toBe("malformed-file");
  });

  test("keys of prototypes do no harm", () => {
    const text = '{"unit":"C","days":[{"date":"2026-05-01","min":8,"max":24,"__proto__":{"polluted":true}}]}';
    expect(refusalOf(() => readTemperaturesJson(text)).message).toContain('unknown field "__proto__"');
    expect(refusalOf(() => readTemperaturesJson('{"__proto__":{"days":[]}}')).code).toBe("malformed-file");
    expect(refusalOf(() => readTemperaturesJson('{"constructor":1,"constant":24}')).code).toBe(
      "malformed-file",
    );
    expect("polluted" in {}).toBe(false);
  });

  test("a place is refused, because JSON has none", () => {
    expect(refusalOf(() => read({ constant: 24 }, { location: "Seattle" })).code).toBe("unknown-location");
  });
});
