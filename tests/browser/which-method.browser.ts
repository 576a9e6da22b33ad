import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { apartOf, hoursOf, rowOf, spreadOf, withCutoff } from "../../notebooks/page/method-wording.ts";
import { sumText } from "../../notebooks/page/degree-day-wording.ts";
import { signed } from "../../notebooks/page/wording.ts";
import { compareMethods } from "../../src/evaluate/methods/compare-methods.ts";
import { describeMethodDifferences, methodDifferenceRows } from "../../src/plot/index.ts";
import { readTemperatures } from "../../src/read/index.ts";
import { type OpenNotebook, picture, launch, openNotebook } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";
import { cellsOf, drawn, findings, round } from "./notebook-page.ts";

const zone = "Etc/GMT+8";
const place = { latitude: 47.6, longitude: -122.3 };
// Hourly normals 1981 to 2010, NOAA through vega-datasets 3.2.1.
const normals = readTemperatures(
  readFileSync(new URL("../../fixtures/temperatures/seattle-hourly-normals.csv", import.meta.url), "utf8"),
  { unit: "C", zone },
).series;
const compared = (lower = 10, amount = 200) =>
  compareMethods(normals, { lower, upper: 22 }, { zone, place, from: "2010-05-01", amount });

describe.skipIf(!browserAtHand())("notebooks/which-method.html", () => {
  let browser: Browser;
  let notebook: OpenNotebook;

  beforeAll(async () => {
    browser = await launch();
    notebook = await openNotebook(browser, "which-method");
  });
  afterAll(() => browser.close());

  const answer = (page: Page): Promise<string> => page.locator(".notice").innerText();
  const text = (page: Page): Promise<string> => page.locator("main").innerText();

  test("says how far apart the dates are, in the page and to those who hear it", async () => {
    const { page } = notebook;
    const said = spreadOf(withCutoff(compared(), "horizontal"), "C");
    expect(await answer(page)).toBe(said);
    expect(await page.getByRole("status").innerText()).toBe(said);
    expect(await text(page)).toContain(apartOf(withCutoff(compared(), "horizontal")));
  });

  test("draws the hours and the library's differences", async () => {
    const { page } = notebook;
    const hours = hoursOf(normals, zone).on("2010-07-14");
    expect(hours).toHaveLength(25);
    expect(round(await drawn(page, "reading", "cy", "y"))).toEqual(
      round(hours.map(({ temperature }) => temperature)),
    );
    const rows = methodDifferenceRows([{ group: "", comparison: withCutoff(compared(), "horizontal") }]);
    // With these settings every method is early, so that each bar begins at its number.
    const days = rows.map(({ days }) => days ?? NaN);
    expect(Math.max(...days)).toBeLessThan(0);
    const bars = await drawn(page, "method-difference", "x", "x");
    expect(round(bars.slice(0, rows.length))).toEqual(round(days));
    expect(await text(page)).not.toContain(describeMethodDifferences(rows, { measure: "days" }));
    await page.getByText("The same in words").nth(1).click();
    expect(await text(page)).toContain(describeMethodDifferences(rows, { measure: "days" }));
  });

  test("shows the library's sums in its table", async () => {
    const comparison = compared();
    const rows = await cellsOf(notebook.page, "Each method from 1 May to 30 December");
    const methods = [...new Set(comparison.rows.map(({ method }) => method))];
    expect(rows.map((cells) => [...cells.slice(1, 5), cells[6]])).toEqual(
      methods.map((method) => [
        ...(["none", "horizontal", "intermediate", "vertical"] as const).map((cutoff) =>
          sumText(rowOf(comparison, method, cutoff)?.degreeDays ?? NaN, "C"),
        ),
        signed(rowOf(comparison, method, "horizontal")?.differenceDays ?? null),
      ]),
    );
  });

  test("answers every choice made by keyboard, and the question at its end", async () => {
    const { page } = notebook;
    const changes = async (label: string, watch: string, ...keys: string[]): Promise<void> => {
      const before = await page.locator(watch).allTextContents();
      await page.getByLabel(label, { exact: true }).focus();
      for (const key of keys) await page.keyboard.press(key);
      await expect.poll(() => page.locator(watch).allTextContents(), { message: label }).not.toEqual(before);
    };
    await changes("Lower threshold", ".notice", "ArrowRight", "ArrowRight", "ArrowRight", "ArrowRight");
    await expect.poll(() => answer(page)).toBe(spreadOf(withCutoff(compared(12), "horizontal"), "C"));
    await page.getByText("An answer, for what you have set").click();
    await expect.poll(() => text(page)).toMatch(/The first of these with more than a week is \d+\s°C\./);
    await changes("Day", "details p", "ArrowRight");
    await changes("Method", "details p", "ArrowUp");
    await changes("Wanted sum", ".notice", "ArrowLeft");
    await changes("Upper threshold", "td", "ArrowRight");
    await changes("Above the upper threshold", "figure", "ArrowDown");
    await changes("Count from", ".notice", "0", "4", "1", "5", "2", "0", "1", "0");
    await changes("Show in", ".notice", "ArrowDown");
    expect(await page.locator("figure").first().innerText()).toContain("°F");
    await picture(page, "which-method-changed");
    await page.getByLabel("Show in").focus();
    await page.keyboard.press("ArrowUp");
    await page.getByLabel("Lower threshold", { exact: true }).focus();
    await page.keyboard.press("End");
    await page.getByLabel("Upper threshold", { exact: true }).focus();
    await page.keyboard.press("Home");
    const alert = page.getByRole("alert");
    await expect.poll(() => alert.innerText()).toContain("must be below the upper threshold (15)");
    await page.keyboard.press("End");
    await expect.poll(() => alert.count()).toBe(0);
  });

  test("takes hours of one's own, with and without a place, and says what is wrong with them", async () => {
    const { page, requests, complaints } = notebook;
    const alert = page.getByRole("alert");
    const hours = Array.from({ length: 24 * 6 + 1 }, (_, i) => {
      const at = new Date(Date.UTC(2025, 5, 1, i)).toISOString().slice(0, 16);
      return `${at},${(20 + 8 * Math.sin((i / 12 - 0.7) * Math.PI)).toFixed(2)}`;
    });
    await page.getByLabel("Your temperatures (CSV)").setInputFiles({
      name: "own.csv",
      mimeType: "text/csv",
      buffer: Buffer.from("time,temperature\n2025-06-01T00:00,warm\n"),
    });
    await expect.poll(() => alert.innerText()).toContain("warm");
    const box = page.getByLabel("Or paste your temperatures here");
    await page.getByLabel("Their unit").selectOption("°C");
    await box.fill(["time,temperature", ...hours].join("\n"));
    await expect.poll(() => alert.count()).toBe(0);
    await expect.poll(() => answer(page)).toContain("counted from 1 June");
    expect(await text(page)).toContain("Over 6 days the middle");
    expect(await cellsOf(page, "Each method from 1 June")).toHaveLength(8);
    await page.getByLabel("Latitude, degrees north").fill("40.7");
    await page.getByLabel("Longitude, degrees east").fill("-74");
    await expect.poll(async () => (await cellsOf(page, "Each method from 1 June")).length).toBe(10);
    await page.getByLabel("Longitude, degrees east").fill("74");
    await expect.poll(() => alert.innerText()).toMatch(/longitude|zone/);
    expect(await findings(page)).toEqual([]);
    await page.getByLabel("Longitude, degrees east").fill("");
    await box.fill("date,min,max\n2025-06-01,8,24\n2025-06-02,9,26\n2025-06-03,7,22");
    await expect.poll(() => text(page)).toContain("These temperatures have no hours.");
    await expect.poll(() => answer(page)).toContain("The single sine");
    expect([...requests, ...complaints]).toEqual([]);
  });
});
