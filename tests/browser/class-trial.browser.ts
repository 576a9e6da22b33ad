import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { PUBLISHED_TRIALS, typedTrials } from "../../notebooks/page/trial-table.ts";
import { intervalOf, movedOf, roomsIn, sourceOf, thresholdOf } from "../../notebooks/page/trial-wording.ts";
import { compareRateModels } from "../../src/evaluate/rate-fit/compare-rate-models.ts";
import { daysAt } from "../../src/evaluate/threshold/days-at.ts";
import { estimateThreshold } from "../../src/evaluate/threshold/estimate-threshold.ts";
import { rateModelName, thresholdWithError } from "../../src/plot/index.ts";
import { readTrials } from "../../src/read/index.ts";
import { briere1 } from "../../src/response/briere-1.ts";
import { lactin2 } from "../../src/response/lactin-2.ts";
import { type OpenNotebook, picture, launch, openNotebook } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";
import { cellsOf, drawn, findings, round } from "./notebook-page.ts";

const [beetle] = PUBLISHED_TRIALS;
if (beetle === undefined) throw new Error("there are published trials");
const trials = typedTrials(
  beetle.rows.map((cells) => ({ cells, used: true })),
  beetle.unit,
).map(({ trial }) => trial);
const estimate = estimateThreshold(trials);
const invented = readTrials(
  readFileSync(new URL("../../fixtures/trials/invented-trials.csv", import.meta.url)),
).trials;

describe.skipIf(!browserAtHand())("notebooks/class-trial.html", () => {
  let browser: Browser;
  let notebook: OpenNotebook;
  beforeAll(async () => {
    browser = await launch();
    notebook = await openNotebook(browser, "class-trial");
  });
  afterAll(() => browser.close());

  const answer = (page: Page): Promise<string> => page.locator(".notice").innerText();
  const text = (page: Page): Promise<string> => page.locator("main").innerText();
  const cell = (name: string) => notebook.page.getByLabel(name, { exact: true });

  test("gives the library's threshold and what was printed with the trials", async () => {
    const { page } = notebook;
    expect(await answer(page)).toBe(thresholdOf(estimate, "C"));
    expect(await page.getByRole("status").innerText()).toBe(thresholdOf(estimate, "C"));
    expect(await text(page)).toContain(sourceOf(beetle));
    // Honek et al. 2003 print 7.1 °C and 304.6 degree-days.
    expect(thresholdOf(estimate, "C")).toMatch(/7\.1 ± .* 304\.6 ±/);
  });

  test("draws the library's rates, and shows its numbers in the tables", async () => {
    const { page } = notebook;
    expect(round((await drawn(page, "trial", "cy", "y")).slice(0, 4))).toEqual(
      round(trials.map(({ days }) => 100 / days)),
    );
    const error = estimate.lowerError ?? NaN;
    expect(round(await drawn(page, "threshold-error", "x1", "x"))).toEqual(round([estimate.lower - error]));
    const [, axis] = await cellsOf(page, "The threshold by both methods");
    const other = estimateThreshold(trials, { method: "reduced-major-axis" });
    expect(axis?.[1]).toBe(thresholdWithError(other));
    const without = await cellsOf(page, "The threshold without one temperature");
    expect(without.slice(1).map((cells) => cells[1])).toEqual(
      trials.map((_, i) => thresholdWithError(estimateThreshold(trials.filter((_, j) => j !== i)))),
    );
    expect((await cellsOf(page, "Days of development in a room")).map((cells) => cells[2])).toEqual(
      daysAt(trials, roomsIn("C"), { level: 0.9 }).map(intervalOf),
    );
    const ranked = compareRateModels(invented, [briere1, lactin2]);
    expect((await cellsOf(page, "The curves, the best first")).map((cells) => cells[0])).toEqual(
      ranked.map(({ model }) => rateModelName(model)),
    );
  });

  test("leaves a trial out by its box, and says how far the threshold moved", async () => {
    const { page } = notebook;
    await cell("Use row 4").focus();
    await page.keyboard.press("Space");
    const now = estimateThreshold(trials.slice(0, 3));
    await expect.poll(() => answer(page)).toBe(thresholdOf(now, "C"));
    expect(await text(page)).toContain(movedOf(estimate, now, "C"));
    expect(await page.locator(".trial-left-out > *").count()).toBeGreaterThan(0);
    await picture(page, "class-trial-left-out");
    await page.keyboard.press("Space");
    await expect.poll(() => answer(page)).toBe(thresholdOf(estimate, "C"));
  });

  test("follows what is typed, names what cannot be used, and recovers", async () => {
    const { page } = notebook;
    const alert = page.getByRole("alert");
    await cell("days, row 1").focus();
    await page.keyboard.press("ControlOrMeta+a");
    await page.keyboard.type("30.2");
    const [first, ...rest] = trials;
    const slower = [{ temperature: first?.temperature ?? NaN, days: 30.2 }, ...rest];
    await expect.poll(() => answer(page)).toBe(thresholdOf(estimateThreshold(slower), "C"));
    for (const [name, value, message] of [
      ["days, row 1", "many", 'Row 1 of the table, days is "many"; it must be a number of days above 0.'],
      ["temperature, row 2", "70", 'Row 2 of the table, temperature is "70"'],
      ["animals, row 3", "9", "Row 1 of the table, animals is empty"],
    ] as const) {
      const before = await cell(name).inputValue();
      await cell(name).fill(value);
      await expect.poll(() => alert.innerText(), { message: name }).toContain(message);
      await cell(name).fill(before);
      await cell(name).blur();
      await expect.poll(() => alert.count(), { message: name }).toBe(0);
    }
    expect(await findings(page)).toEqual([]);
    await cell("days, row 1").fill("28,2");
    await expect.poll(() => answer(page)).toBe(thresholdOf(estimate, "C"));
  });

  test("adds and takes away rows by keyboard, and takes pasted cells", async () => {
    const { page } = notebook;
    await page.getByRole("button", { name: "Add a row" }).focus();
    await page.keyboard.press("Enter");
    await page.keyboard.type("31");
    await page.keyboard.press("Tab");
    await page.keyboard.type("13");
    const more = [...trials, { temperature: 31, days: 13 }];
    await expect.poll(() => answer(page)).toBe(thresholdOf(estimateThreshold(more), "C"));
    await page.getByRole("button", { name: "Remove row 5" }).focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => answer(page)).toBe(thresholdOf(estimate, "C"));
    await page.getByLabel("Begin with").selectOption({ label: "an empty table, for trials of your own" });
    await expect.poll(() => page.getByRole("alert").innerText()).toContain("different temperatures");
    expect(await page.locator(".notice").count()).toBe(0);
    await cell("temperature, row 1").evaluate(
      (input, lines) => {
        const clipboardData = new DataTransfer();
        clipboardData.setData("text/plain", lines);
        input.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
      },
      trials.map(({ temperature, days }) => `${temperature}\t${days}`).join("\r\n"),
    );
    await expect.poll(() => answer(page)).toBe(thresholdOf(estimate, "C"));
  });

  test("answers its choices by keyboard, in °F too", async () => {
    const { page } = notebook;
    const changes = async (label: string, watch: string, key: string): Promise<void> => {
      const before = await page.locator(watch).allInnerTexts();
      await cell(label).focus();
      await page.keyboard.press(key);
      await expect.poll(() => page.locator(watch).allInnerTexts(), { message: label }).not.toEqual(before);
    };
    await changes("Interval", "tbody", "ArrowUp");
    await changes("Draw thick", "figcaption", "ArrowDown");
    await changes("Logan 6", "tbody", "Space");
    await changes("Draw curves through", "tbody", "ArrowDown");
    await changes("Show in", "figure", "ArrowDown");
    expect(await answer(page)).toBe(thresholdOf(estimate, "F"));
    await picture(page, "class-trial-fahrenheit");
    await changes("Temperatures in the table are in", "main", "ArrowDown");
    await expect.poll(() => answer(page)).not.toBe(thresholdOf(estimate, "F"));
  });

  test("takes a file of one's own, and says what is wrong with it", async () => {
    const { page, complaints, requests } = notebook;
    const give = (lines: readonly string[]): Promise<void> =>
      page.getByLabel("Your trials (CSV)").setInputFiles({
        name: "own.csv",
        mimeType: "text/csv",
        buffer: Buffer.from(lines.join("\n")),
      });
    await page.getByLabel("Show in").selectOption("°C");
    await give(["temperature °C,days,animals", "16,40,3", "20,25,5", "24,18,5", "28,14,4"]);
    const own = readTrials("temperature °C,days,animals\n16,40,3\n20,25,5\n24,18,5\n28,14,4").trials;
    await expect.poll(() => answer(page)).toBe(thresholdOf(estimateThreshold(own), "C"));
    expect(await cell("animals, row 2").inputValue()).toBe("5");
    await give(["temperature °C,days", "16,long"]);
    await expect
      .poll(() => page.getByRole("alert").innerText())
      .toMatch(/Row 2, column "days" is "long"; it must be a number of days/i);
    await page.getByLabel("Its temperatures are in").selectOption("°F");
    await give(["temperature,days", "61,40", "68,25", "75,18"]);
    await expect.poll(() => page.getByRole("alert").count()).toBe(0);
    expect(await cell("temperature, row 2").inputValue()).toBe("20");
    expect([...complaints, ...requests]).toEqual([]);
  });
});
