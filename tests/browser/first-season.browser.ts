import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { answerOf, dateOf } from "../../notebooks/page/wording.ts";
import { forecast } from "../../src/forecast/forecast.ts";
import { forecastDays, stageTotalRows, stageWindowRows, temperatureRows } from "../../src/plot/index.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { log, newYork, season } from "../plot/season.ts";
import { type Look, type OpenNotebook, picture, launch, openNotebook } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";
import { cellsOf, drawn, round } from "./notebook-page.ts";

describe.skipIf(!browserAtHand())("notebooks/first-season.html", () => {
  let browser: Browser;
  let notebook: OpenNotebook;

  beforeAll(async () => {
    browser = await launch();
    notebook = await openNotebook(browser, "first-season");
  });
  afterAll(() => browser.close());

  const fresh = (look?: Look): Promise<OpenNotebook> => openNotebook(browser, "first-season", look);
  const answer = (page: Page): Promise<string> => page.locator(".notice").innerText();
  const datesShown = (page: Page): Promise<string[][]> => cellsOf(page, "When each stage begins");

  test("opens from disk without a request and without a complaint", async () => {
    await picture(notebook.page, "first-season");
    expect(notebook.requests).toEqual([]);
    expect(notebook.complaints).toEqual([]);
  });

  test("gives the library's answer, in the page and to those who hear it", async () => {
    expect(await answer(notebook.page)).toBe(answerOf(season));
    expect(await notebook.page.getByRole("status").innerText()).toBe(answerOf(season));
  });

  test("shows the library's dates in its table", async () => {
    expect(await datesShown(notebook.page)).toEqual(
      stageWindowRows(season).map(({ name, early, expected, late }) => [
        name,
        ...[early, expected, late].map(dateOf),
      ]),
    );
  });

  test("draws the library's temperatures, sums and windows", async () => {
    const { page } = notebook;
    const warmth = temperatureRows(newYork, forecastDays(season));
    expect(round(await drawn(page, "day-range", "y1", "y"))).toEqual(
      round(warmth.map((row) => row.min ?? NaN)),
    );
    expect(round(await drawn(page, "day-range", "y2", "y"))).toEqual(
      round(warmth.map((row) => row.max ?? NaN)),
    );
    expect(round(await drawn(page, "stage-begin", "cy", "y"))).toEqual(
      round(stageTotalRows(season).map((row) => row.total)),
    );
    const rows = stageWindowRows(season, log);
    const ticks = await drawn(page, "expected", "x1", "x");
    expect(ticks).toHaveLength(rows.length);
    ticks.forEach((tick, i) => {
      const expected = Date.parse(`${rows[i]?.expected?.slice(0, 19)}Z`);
      // A tenth of a pixel of a month on 700 pixels is about six minutes.
      expect(Math.abs(tick - expected)).toBeLessThan(6 * 60_000);
    });
    expect(await page.locator(".seen > *").count()).toBe(rows.flatMap((row) => row.seen).length);
  });

  test("answers every choice made by keyboard", async () => {
    const { page, complaints } = await fresh();
    const choose = async (label: string, ...keys: string[]): Promise<void> => {
      await page.getByLabel(label, { exact: true }).focus();
      for (const key of keys) await page.keyboard.press(key);
    };
    const changes = async (label: string, watch: string, ...keys: string[]): Promise<void> => {
      const before = await page.locator(watch).allInnerTexts();
      await choose(label, ...keys);
      await expect.poll(() => page.locator(watch).allInnerTexts(), { message: label }).not.toEqual(before);
    };
    await changes("Found on", ".notice", "0", "6", "2", "0", "2", "0", "1", "4");
    await changes("Course of a day", "main p", "ArrowDown");
    await changes("Temperatures of", ".notice", "ArrowDown");
    await changes("Show in", "figure", "ArrowDown");
    expect(await page.locator("figure").first().innerText()).toContain("°F");
    await changes("Age within that stage", ".notice", "ArrowDown");
    await changes("Found as", ".notice", "ArrowDown");
    await changes("Species", ".notice", "ArrowUp");
    expect(await page.locator("main").innerText()).toContain(
      "Nothing to compare: it takes dates and a log of the same season.",
    );
    expect(complaints).toEqual([]);
  });

  test("takes a file of one's own, and the season of it", async () => {
    const { page, requests, complaints } = await fresh();
    const days = Array.from({ length: 60 }, (_, i) =>
      new Date(Date.UTC(2014, 5, 1 + i)).toISOString().slice(0, 10),
    );
    const csv = ["date,min,max", ...days.map((day) => `${day},60.8,82.4`)].join("\n");
    await give(page, "Your temperatures (CSV)", "porch.csv", csv);
    await page.getByLabel("Their unit").selectOption("°F");
    const own = forecast({
      lifeCycle: findSpecies("monarch"),
      found: { stage: "egg", on: "2014-06-12", count: 12 },
      temperatures: dailyTemperatures(
        "2014-06-01",
        new Float64Array(60).fill(16),
        new Float64Array(60).fill(28),
      ),
      zone: "America/New_York",
    });
    await expect.poll(() => answer(page)).toBe(answerOf(own));
    expect(await page.locator("main").innerText()).toContain(
      "Nothing to compare: it takes dates and a log of the same season.",
    );
    await give(page, "Your log (CSV)", "porch-log.csv", "stage,seen on\npupa,2014-07-02\n");
    await expect.poll(() => cellsOf(page, "The log beside the forecast")).toHaveLength(1);
    // What is pasted goes before the file, and its absence leaves the file.
    const box = page.getByLabel("Or paste your temperatures here");
    await box.fill("date,min,max\n2014-06-01,16,banana");
    await expect.poll(() => page.getByRole("alert").innerText()).toContain("banana");
    await box.fill(csv.replaceAll("60.8", "64.4"));
    await expect.poll(() => page.getByRole("alert").count()).toBe(0);
    expect(await answer(page)).not.toBe(answerOf(own));
    await box.fill("");
    await expect.poll(() => answer(page)).toBe(answerOf(own));
    expect([...requests, ...complaints]).toEqual([]);
  });

  test("says in the page what is wrong with a file or a day, and recovers", async () => {
    const { page, complaints } = await fresh();
    await give(page, "Your temperatures (CSV)", "bad.csv", "date,min,max\n2014-06-01,16,banana\n");
    const alert = page.getByRole("alert");
    await expect.poll(() => alert.innerText()).toContain("banana");
    expect(await page.locator("figure").count()).toBe(0);
    expect(await page.locator(".absent").count()).toBeGreaterThan(3);
    await picture(page, "first-season-problem");
    await page.getByLabel("Your temperatures (CSV)").setInputFiles([]);
    await expect.poll(() => alert.count()).toBe(0);
    await give(page, "Your log (CSV)", "bad-log.csv", "stage,seen on\nbutterfly egg cup,2014-06-12\n");
    await expect.poll(() => alert.innerText()).toContain("butterfly egg cup");
    expect(await page.locator("figure").count()).toBe(3);
    await page.getByLabel("Your log (CSV)").setInputFiles([]);
    await page.getByLabel("Found on").fill("2019-06-12");
    await expect.poll(() => alert.innerText()).toContain("2019-06-12");
    await page.getByLabel("Found on").fill("2014-06-12");
    await expect.poll(() => answer(page)).toBe(answerOf(season));
    expect(complaints).toEqual([]);
  });

  test("explains a file of another kind", async () => {
    const { page, complaints } = await fresh();
    await page.getByLabel("Your temperatures (CSV)").setInputFiles({
      name: "weather.xlsx",
      mimeType: "application/octet-stream",
      buffer: Buffer.from([0x50, 0x4b, 0x03, 0x04, 0, 0, 0, 0]),
    });
    await expect.poll(() => page.getByRole("alert").innerText()).toMatch(/spreadsheet/);
    expect(complaints).toEqual([]);
  });
});

function give(page: Page, label: string, name: string, text: string): Promise<void> {
  return page.getByLabel(label).setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
}
