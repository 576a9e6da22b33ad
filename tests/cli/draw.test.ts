import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { FOUND, moltline, refused } from "./in-memory.ts";

const DRAW = `draw --out a.svg --temperatures new-york.csv ${FOUND}`;
const LOG = readFileSync(new URL("../../fixtures/logs/invented-season.csv", import.meta.url), "utf8");

describe("draw", () => {
  it.each([
    ["", /Predicted begin of each stage/],
    [" --picture degree-days --show F", /in °F·day/],
    [" --picture temperatures", /Daily temperatures in °C/],
  ])("writes the picture%s", async (more, says) => {
    const { code, out, err, written } = await moltline(`${DRAW}${more}`);
    expect([code, out, err]).toEqual([0, "Wrote a.svg.\n", ""]);
    expect(written["a.svg"]).toMatch(/^<svg [^]*<\/svg>\n$/);
    expect(written["a.svg"]).toMatch(says);
  });

  it("shows what was seen, and is as wide as wanted", async () => {
    const words = `draw --out a.svg --temperatures new-york.csv --unit C --species monarch --found egg --on 2014-06-12 --log log.csv --width 900`;
    const { written } = await moltline(words, { "log.csv": LOG });
    expect(written["a.svg"]).toMatch(/^<svg [^>]*width="900"/);
    expect(written["a.svg"]).toContain("seen on 14 June (5)");
  });

  it.each([
    ["draw --temperatures new-york.csv", "--out is missing"],
    [`${DRAW} --width 100`, "--width is 100", "320 to 2000"],
    [`${DRAW} --picture log`, "windows, degree-days, temperatures"],
    [`${DRAW} --picture temperatures --past-years new-york.csv`, "draw windows"],
    [`${DRAW} --picture degree-days --log log.csv`, "--log is drawn in the windows"],
  ])("%s is refused", async (words, ...says) => {
    const message = await refused(words, { "log.csv": LOG });
    for (const text of says) expect(message).toContain(text);
  });

  it.each(["windows", "degree-days", "temperatures"])("draws %s that lie within one day", async (picture) => {
    const words = `draw --out a.svg --picture ${picture} --temperatures new-york.csv --unit C --species monarch --found pupa --age 0.98 --on 2014-06-08T05:00`;
    const { code, err, written } = await moltline(words);
    expect([code, err]).toEqual([0, ""]);
    expect(written["a.svg"]).toContain("8 Jun");
  });

  it("tells what reading the files found", async () => {
    const words = "draw --out a.svg --temperatures cold.csv --species monarch --found egg --on 2026-06-07";
    const { out, err } = await moltline(words);
    expect(err).toBe("");
    expect(out).toMatch(/^Wrote a\.svg\.\n\nGOOD TO KNOW\n/);
    expect(out.replace(/\s+/g, " ")).toContain("the temperatures were taken as °C");
    const log = await moltline(`${DRAW} --log log.csv`, { "log.csv": "stage,seen on\negg,2015-06-09\n" });
    expect(log.out).toContain("log.csv: The log has no column of counts");
  });

  it("replaces no file unless told so", async () => {
    expect(await refused(DRAW, { "a.svg": "mine" })).toContain("--force");
    expect((await moltline(`${DRAW} --force`, { "a.svg": "mine" })).written["a.svg"]).toContain("<svg");
  });
});
