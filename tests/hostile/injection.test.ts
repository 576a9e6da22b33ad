import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Papa from "papaparse";
import { afterAll, describe, expect, it } from "vitest";
import { readInput } from "../../src/cli/files/read-input.ts";
import { updateFile } from "../../src/cli/files/update-file.ts";
import { writeFileWhole } from "../../src/cli/files/write-file.ts";
import { InputError } from "../../src/errors.ts";
import { dayPlan, findSpecies, logEntry } from "../../src/index.ts";
import { describeStageWindows, stageWindowRows } from "../../src/plot/index.ts";
import { readLifeCycle, readLog, readLogEntries, readTemperatures } from "../../src/read/index.ts";
import { calendarIcs, darwinCoreCsv, darwinCoreRows, logCsv, planPage } from "../../src/write/index.ts";
import { inventedForecast } from "../support/invented-season.ts";
import { refusalOf } from "../support/refusal.ts";

const monarch = findSpecies("monarch");

/** Texts that mean something to a spreadsheet, a calendar, a page or a table. */
const TEXTS = [
  "=HYPERLINK(A1)",
  "+1+1",
  "-1+1|cmd",
  "@SUM(A1)",
  "\t=1",
  "\r=1",
  "'=1",
  "＝1",
  "a\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nSUMMARY:caught",
  "a;b,c\\n:d",
  "x".repeat(500),
  "👩‍👩‍👧‍👦".repeat(40),
  "<script>caught</script><img src=x onerror=caught>",
  '"></td><b>&amp;',
  "\0\u0007\u001b[31m",
  "\u202Eesrever",
];

describe.each(TEXTS)("%j as a note, a group and a name", (text) => {
  const entries = [logEntry({ stage: "pupa", on: "2026-06-25", note: text, cohort: `c${text}` })];

  it("begins no formula in a table, and is read back", () => {
    for (const csv of [
      logCsv(entries),
      darwinCoreCsv(darwinCoreRows(entries, { scientificName: text, recordedBy: text }).rows),
    ])
      for (const cells of Papa.parse<string[]>(csv).data)
        for (const cell of cells) expect(cell).not.toMatch(/^(?:[=+@\t\r\n＝]|-(?!\d+(?:\.\d+)?$))/);
    const [again] = readLog(logCsv(entries)).entries;
    const plain = text
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, "")
      .replace(/\r\n?/g, "\n")
      .trim();
    expect(again?.note).toBe(plain === "" ? null : plain);
  });

  it("adds no line to a calendar, and no line is longer than 75 octets", () => {
    const forecast = { ...inventedForecast(), commonName: text };
    const plainly = calendarIcs(inventedForecast(), { madeAt: "2026-06-08T17:30:00Z" });
    const ics = calendarIcs(forecast, { madeAt: "2026-06-08T17:30:00Z", cohort: text });
    for (const name of ["BEGIN:VEVENT", "END:VEVENT", "UID:", "DTSTART"])
      expect(ics.split(`\r\n${name}`).length).toBe(plainly.split(`\r\n${name}`).length);
    for (const line of ics.split("\r\n").slice(0, -1)) {
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(line).toMatch(/^(?: |[A-Z-]+[:;])/);
      expect(line).not.toMatch(/[\u0000-\u0008\u000a-\u001f\u007f]/);
    }
  });

  it("makes no element of a page and none of its words a tag", () => {
    const forecast = { ...inventedForecast(), commonName: text };
    const name = `porch ${text.replace(/[\u0000-\u001f\u007f-\u009f]/g, " ")}`;
    const page = planPage(dayPlan([{ name, lifeCycle: { ...monarch, commonName: text }, forecast }]));
    expect(page).not.toMatch(/<script|<img/);
    expect(describeStageWindows(stageWindowRows(forecast, entries))).not.toContain("undefined");
  });
});

describe("names of a prototype", () => {
  it("in JSON change no object", () => {
    const polluted = JSON.parse(
      '{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}',
    ) as unknown;
    for (const read of [
      () => readLifeCycle(polluted),
      () => readLogEntries([polluted]),
      () =>
        readTemperatures(
          '{"unit":"C","days":[{"__proto__":{"polluted":1},"date":"2026-05-01","min":1,"max":2}]}',
        ),
      () => readTemperatures('{"__proto__":{"days":[]},"unit":"C"}'),
    ]) {
      try {
        read();
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
      }
    }
    expect(Reflect.has({}, "polluted")).toBe(false);
  });

  it.each(["__proto__", "constructor", "toString", "hasOwnProperty", "valueOf"])(
    "%s as a header, a place, a species or a stage",
    (name) => {
      const { series } = readTemperatures(`${name},date,min °C,max °C\nx,2026-05-01,8,24`);
      expect(series.kind).toBe("daily");
      expect(() => findSpecies(name)).toThrow(InputError);
      expect(() => readLog(`stage,seen on\n${name},2026-07-04`)).toThrow(InputError);
      expect(
        refusalOf(() => readTemperatures("date,min,max\n2026-05-01,8,24", { location: name })).code,
      ).toBe("unknown-location");
    },
  );
});

describe("paths", () => {
  const folder = mkdtempSync(join(tmpdir(), "moltline-paths-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const refused = async (act: Promise<unknown>): Promise<string> => {
    const error: unknown = await act.then(
      () => null,
      (thrown: unknown) => thrown,
    );
    if (!(error instanceof InputError)) throw new Error(`not refused: ${String(error)}`);
    return error.message;
  };

  it("with NUL, to a folder, through a file, or to nothing are refused in words, and leave nothing behind", async () => {
    writeFileSync(join(folder, "file"), "here");
    mkdirSync(join(folder, "sub"));
    for (const path of [`${folder}/a\0b`, join(folder, "sub"), `${folder}/file/x`, `${folder}/none/x`, ""]) {
      for (const replace of [false, true])
        expect(await refused(writeFileWhole(path, "x", replace))).toMatch(
          /cannot be written|is there already/,
        );
      expect(await refused(readInput(path))).toContain("cannot be read");
      expect(await refused(updateFile(path, (bytes) => bytes))).toMatch(/cannot be/);
    }
    expect(readdirSync(folder).sort()).toEqual(["file", "sub"]);
    expect(readdirSync(join(folder, "sub"))).toEqual([]);
  });

  it("to a link replace the link, not what it leads to, and only when told", async () => {
    const [aim, link] = [join(folder, "aim"), join(folder, "link")];
    writeFileSync(aim, "elsewhere");
    symlinkSync(aim, link);
    expect(await refused(writeFileWhole(link, "x"))).toContain("--force");
    await writeFileWhole(link, "x", true);
    expect(readFileSync(aim, "utf8")).toBe("elsewhere");
    expect(readFileSync(link, "utf8")).toBe("x");
  });
});
