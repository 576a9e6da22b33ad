import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  DAY_METHODS,
  countsOf,
  sumText,
  turningsOf,
  warmerOf,
} from "../../notebooks/page/degree-day-wording.ts";
import { meets, printedExamples } from "../../notebooks/page/printed-examples.ts";
import { accumulateDegreeDays } from "../../src/clock/accumulate.ts";
import { degreeDays } from "../../src/clock/degree-days.ts";
import { describeAddingUp, methodName } from "../../src/plot/index.ts";
import { CUTOFFS } from "../../src/response/linear.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { newYork } from "../plot/season.ts";
import { type OpenNotebook, picture, launch, openNotebook } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";
import { cellsOf, drawn, findings, keyboardOf, round } from "./notebook-page.ts";

const thresholds = { lower: 12, upper: 28, cutoff: "horizontal", method: "single-sine" } as const;
const asOpened = { min: 8, max: 34, options: thresholds };
const examples = printedExamples(
  readFileSync(new URL("../../fixtures/published/daily-degree-days.json", import.meta.url), "utf8"),
);

describe.skipIf(!browserAtHand())("notebooks/degree-day.html", () => {
  let browser: Browser;
  let notebook: OpenNotebook;

  beforeAll(async () => {
    browser = await launch();
    notebook = await openNotebook(browser, "degree-day");
  });
  afterAll(() => browser.close());

  const answer = (page: Page): Promise<string> => page.locator(".notice").innerText();
  const text = (page: Page): Promise<string> => page.locator("main").innerText();
  const run = (from: string, to: string) => accumulateDegreeDays(newYork, { ...thresholds, from, to });

  test("gives the library's number, in the page, in the area and to those who hear it", async () => {
    const { page } = notebook;
    expect(await answer(page)).toBe(countsOf(asOpened, "C"));
    expect(await page.getByRole("status").innerText()).toBe(countsOf(asOpened, "C"));
    const counts = degreeDays({ min: 8, max: 34 }, thresholds);
    expect(await page.locator(".counts").first().textContent()).toBe(`${sumText(counts, "C")} °C·day`);
    expect(await text(page)).toContain(warmerOf(asOpened, "C"));
  });

  test("draws what the cutoff takes apart, and the days as high as the library's sums", async () => {
    const { page } = notebook;
    const upper = await drawn(page, "taken", "y1", "y");
    expect(upper.length).toBeGreaterThan(10);
    for (const y of [...upper, ...(await drawn(page, "taken", "y2", "y"))])
      expect(Math.abs(y - 28) < 0.01 || Math.abs(y - 34) < 6.01).toBe(true);
    const days = run("2014-05-10", "2014-05-16");
    expect(round(await drawn(page, "day-block", "y", "y"))).toEqual(round(days.map(({ total }) => total)));
    expect(await text(page)).toContain(describeAddingUp(days));
  });

  test("shows the library's numbers in its tables", async () => {
    const { page } = notebook;
    expect(await cellsOf(page, "The day by course and cutoff")).toEqual(
      DAY_METHODS.map((method) => [
        methodName(method),
        ...CUTOFFS.map((cutoff) =>
          sumText(degreeDays({ min: 8, max: 34 }, { lower: 12, upper: 28, cutoff, method }), "C"),
        ),
      ]),
    );
    const days = run("2014-05-10", "2014-05-16");
    expect((await cellsOf(page, "Day by day")).map((cells) => cells.slice(3))).toEqual(
      days.map((day) => [sumText(day.degreeDays, "C"), sumText(day.total, "C")]),
    );
  });

  // The sources stand in the table, and beside each number in fixtures/published/daily-degree-days.json.
  test("works the days in print to their printed digits", async () => {
    const { page } = notebook;
    const rows = await cellsOf(page, "Days in print");
    expect(rows).toHaveLength(examples.length);
    expect(rows.map((cells) => cells[3])).toEqual(examples.map(({ printed }) => printed));
    expect(examples.every(meets)).toBe(true);
    for (const cells of rows) expect(Number(cells[4])).toBeCloseTo(Number(cells[3]), 9);
    expect(await text(page)).toContain("(86 + 70) / 2 − 50 = 28. Printed is 28 (Ohio State AGF-101, 2017)");
    await page.getByLabel("Example").focus();
    await page.keyboard.press("Home");
    await expect.poll(() => text(page)).toContain("(65 + 40) / 2 − 50 = 2.5. Printed is 2.5");
  });

  test("answers every choice made by keyboard, and the question at its end", async () => {
    const { page } = notebook;
    const changes = keyboardOf(page);
    await changes("Highest of the day", ".notice", "ArrowRight", "ArrowRight");
    await expect.poll(() => answer(page)).toBe(countsOf({ ...asOpened, max: 35 }, "C"));
    await changes("Lowest of the day", ".notice", "ArrowLeft");
    await changes("Lower threshold", ".notice", "ArrowRight");
    await changes("Upper threshold", ".notice", "ArrowLeft");
    await changes("Above the upper threshold", ".notice", "ArrowDown");
    const set = { min: 7.5, max: 35 };
    const options = { ...thresholds, lower: 12.5, upper: 27.5, cutoff: "intermediate" } as const;
    await expect.poll(() => answer(page)).toBe(countsOf({ ...set, options }, "C"));
    await page.getByText("An answer, for the day that you have set").click();
    expect(await text(page)).toContain(turningsOf({ ...set, options }, 27.5, "C"));
    await changes("Course of the day", ".notice", "ArrowDown");
    await changes("Temperatures of", "td", "ArrowDown");
    await changes("Days", "td", "ArrowRight");
    await changes("First day", "td", "0", "7", "0", "1", "2", "0", "1", "3");
    await changes("Show in", ".notice", "ArrowDown");
    expect(await page.locator("figure").first().innerText()).toContain("°F");
    // What the sliders stood on is kept, to the degree that °F are set by.
    expect(await page.getByLabel("Highest of the day").getAttribute("aria-valuetext")).toBe("95\u00a0°F");
    await picture(page, "degree-day-changed");
  });

  test("says what is wrong with a day in the unit on the sliders, and recovers", async () => {
    const { page } = notebook;
    await page.getByLabel("Lowest of the day").focus();
    await page.keyboard.press("End");
    await page.getByLabel("Highest of the day").focus();
    await page.keyboard.press("Home");
    const alert = page.getByRole("alert");
    await expect.poll(() => alert.innerText()).toContain("Min is 95, above max 32");
    expect(await findings(page)).toEqual([]);
    await page.keyboard.press("End");
    await expect.poll(() => alert.count()).toBe(0);
    await page.getByLabel("Show in").focus();
    await page.keyboard.press("ArrowUp");
    await expect.poll(() => answer(page)).toContain("°C·day");
  });

  test("takes a file and a pasted table, and says what is wrong with them", async () => {
    const { page, requests, complaints } = notebook;
    const alert = page.getByRole("alert");
    const file = (text: string): Promise<void> =>
      page.getByLabel("Your temperatures (CSV)").setInputFiles({
        name: "own.csv",
        mimeType: "text/csv",
        buffer: Buffer.from(text),
      });
    await file("date,min,max\n2025-06-01,16,banana\n");
    await expect.poll(() => alert.innerText()).toContain("banana");
    const lines = Array.from({ length: 12 }, (_, i) => `2025-06-${String(i + 1).padStart(2, "0")},59,86`);
    await file(["date,min,max", ...lines].join("\n"));
    await expect.poll(() => alert.innerText()).toMatch(/unit|°F/);
    await page.getByLabel("Their unit").selectOption("°F");
    await expect.poll(() => alert.count()).toBe(0);
    await expect
      .poll(async () => (await cellsOf(page, "Day by day"))[0]?.slice(0, 3))
      .toEqual(["1 June", "15", "30"]);
    const box = page.getByLabel("Or paste your temperatures here");
    await box.fill("date,min,max\n2025-08-01,5");
    await expect.poll(() => alert.count()).toBe(1);
    await box.fill(
      ["date,min,max", ...lines.map((line) => line.replace("06-", "08-").replace("59", "50"))].join("\n"),
    );
    await expect
      .poll(async () => (await cellsOf(page, "Day by day"))[0]?.slice(0, 3))
      .toEqual(["1 August", "10", "30"]);
    const from = { from: "2025-08-01", to: "2025-08-08" };
    const own = dailyTemperatures("2025-08-01", new Float64Array(12).fill(10), new Float64Array(12).fill(30));
    const options = { lower: 12.5, upper: 27.5, cutoff: "intermediate", method: "single-triangle" } as const;
    const total = accumulateDegreeDays(own, { ...options, ...from }).at(-1)?.total ?? NaN;
    expect((await cellsOf(page, "Day by day")).at(-1)?.[4]).toBe(sumText(total, "C"));
    await box.fill("");
    await page.getByLabel("Your temperatures (CSV)").setInputFiles([]);
    await expect.poll(async () => (await cellsOf(page, "Day by day"))[0]?.[0]).toBe("10 May");
    expect([...requests, ...complaints]).toEqual([]);
  });
});
