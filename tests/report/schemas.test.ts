import { readFileSync, readdirSync } from "node:fs";
import Ajv2020 from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { logEntry } from "../../src/cohort/log.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { learn } from "../../src/forecast/learning/learn.ts";
import { METHODS } from "../../src/diurnal/method.ts";
import { readForecast } from "../../src/read/json/forecast.ts";
import { readLifeCycle } from "../../src/read/json/life-cycle.ts";
import { readTemperaturesJson } from "../../src/read/temperatures/temperatures-json.ts";
import { SPECIES } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { city } from "../support/city.ts";
import { refusalOf } from "../support/refusal.ts";
import { type SchemaName, schemaFiles } from "./schemas.ts";

const FOLDER = new URL("../../docs/schemas/", import.meta.url);

// Ajv, a general validator of JSON Schema, reads the files as they are published.
function findings(name: SchemaName, value: unknown): string[] {
  const ajv = new Ajv2020.default({ strict: true, allowUnionTypes: true });
  const validate = ajv.compile(JSON.parse(readFileSync(new URL(`${name}.json`, FOLDER), "utf8")));
  validate(JSON.parse(JSON.stringify(value)));
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

const input = {
  lifeCycle: danausPlexippus,
  found: { stage: "egg", on: "2015-06-08", count: 12 },
  temperatures: city("new-york"),
  zone: "America/New_York",
} as const;
const season = forecast(input);

describe("published JSON Schemas", () => {
  it("are what npm run report:schemas writes", async () => {
    const files = await schemaFiles();
    expect(readdirSync(FOLDER).sort()).toEqual(files.map(({ name }) => name).sort());
    for (const { name, text } of files) expect(readFileSync(new URL(name, FOLDER), "utf8"), name).toBe(text);
  });

  it("are of draft 2020-12 and say what they are of", () => {
    for (const name of readdirSync(FOLDER)) {
      const schema = JSON.parse(readFileSync(new URL(name, FOLDER), "utf8"));
      expect(schema["$schema"]).toBe("https://json-schema.org/draft/2020-12/schema");
      expect(schema["title"]).toEqual(expect.any(String));
    }
  });

  it("take every species that comes with the library", () => {
    for (const lifeCycle of SPECIES) {
      expect(findings("life-cycle", lifeCycle)).toEqual([]);
      expect(readLifeCycle(JSON.parse(JSON.stringify(lifeCycle)))).toEqual(lifeCycle);
    }
    expect(findings("life-cycle", { ...danausPlexippus, stages: [{}] })).not.toEqual([]);
  });

  it("take temperatures in each shape, and refuse what the reader refuses", () => {
    const days = [{ date: "2026-06-08", min: 12, max: null }];
    const readings = [
      { at: "2026-06-08T12:00", temperature: 20 },
      { at: "2026-06-08T13:00", temperature: 21 },
    ];
    for (const value of [{ unit: "C", readings }, readings, { constant: 24, from: "2026-06-08" }]) {
      expect(findings("temperatures", value)).toEqual([]);
      readTemperaturesJson(JSON.stringify(value));
    }
    expect(findings("temperatures", { unit: "F", days })).toEqual([]);
    for (const value of [{ unit: "K", days }, [{ date: "2026-06-08", min: 12 }], { constant: "24" }]) {
      expect(findings("temperatures", value)).not.toEqual([]);
      expect(refusalOf(() => readTemperaturesJson(JSON.stringify(value))).code).toBe("malformed-file");
    }
  });

  it("take logs", () => {
    const log = [logEntry({ stage: "pupa", on: "2026-07-04", fate: "died", notYet: "2026-07-03" })];
    expect(findings("log", log)).toEqual([]);
    expect(findings("log", [{ stage: "pupa" }])).not.toEqual([]);
  });
});

describe("an earlier forecast", () => {
  const written = (change: object = {}): unknown => JSON.parse(JSON.stringify({ ...season, ...change }));

  it("fits its schema and is read back as it was, over species, stages, methods and zones", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SPECIES),
        fc.constantFrom("2013-05-01", "2015-06-08T17:30", "2015-12-28"),
        fc.constantFrom(...METHODS),
        fc.constantFrom(null, "America/New_York", "Asia/Kolkata"),
        (lifeCycle, on, method, zone) => {
          const stage = lifeCycle.stages[0]?.stage ?? "egg";
          const result = forecast({ ...input, lifeCycle, found: { stage, on }, method, zone });
          expect(findings("forecast", result)).toEqual([]);
          expect(readForecast(JSON.parse(JSON.stringify(result)))).toEqual(result);
        },
      ),
      { numRuns: 20 },
    );
  });

  it("carries what a log taught", () => {
    const learned = learn(input, [logEntry({ stage: "instar-1", on: "2015-06-12", count: 5 })]);
    const result = forecast({ ...input, learned });
    expect(findings("forecast", result)).toEqual([]);
    expect(readForecast(JSON.parse(JSON.stringify(result)))).toEqual(result);
  });

  it.each([
    [{ species: undefined }, "species is missing"],
    [{ zone: "America/NewYork" }, "zone"],
    [{ shares: [0.9, 0.5, 0.1] }, "shares is a list of 3; it must be three rising shares"],
    [{ stages: [{ ...season.stages[0], stage: "frog" }] }, "stages.0.stage"],
    [{ extra: 1 }, 'unknown field "extra"'],
    [{ found: { ...season.found, on: "2015-02-30" } }, "found.on"],
    [{ tables: [{ ...season.tables[0], total: [1] }] }, "tables.0.total is a list of 1"],
    [
      {
        signs: [
          {
            sign: "darkening",
            absence: null,
            begins: { early: "2015-06-31T00:00:00-04:00", expected: null, late: null },
          },
        ],
      },
      "signs.0.begins.early",
    ],
    [
      {
        signs: [
          {
            sign: "darkening",
            absence: null,
            begins: { early: "2015-06-30T00:00:00-04:00", expected: "2015-06-29T00:00:00-04:00", late: null },
          },
        ],
      },
      "no earlier than the one before it",
    ],
  ])("changed to %j is refused", (change, text) => {
    expect(refusalOf(() => readForecast(written(change))).message).toContain(text);
  });

  it.each([null, 1, "x", [], {}])("%j is none", (value) => {
    expect(refusalOf(() => readForecast(value)).code).toBe("invalid-forecast");
  });
});
