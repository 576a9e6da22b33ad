import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { besideOf, broodsOf, prudentText, seasonOfPlace } from "../../notebooks/page/brood-wording.ts";
import { describeDayLengths, describeLastEggs, dayLengthRows, lastEggRows } from "../../src/plot/index.ts";
import { addDays } from "../../src/time/civil-day.ts";
import { seasonAt, warmer } from "../plot/two-places.ts";
import { type OpenNotebook, picture, launch, openNotebook } from "./browser.ts";
import { browserAtHand } from "./chromium.ts";
import { cellsOf, drawn, findings, keyboardOf, round } from "./notebook-page.ts";

describe.skipIf(!browserAtHand())("notebooks/broods.html", () => {
  let browser: Browser;
  let notebook: OpenNotebook;
  const here = seasonAt("New York");
  const there = seasonAt("Seattle");

  beforeAll(async () => {
    browser = await launch();
    notebook = await openNotebook(browser, "broods");
  });
  afterAll(() => browser.close());

  const answer = (page: Page): Promise<string> => page.locator(".notice").innerText();
  const text = (page: Page): Promise<string> => page.locator("main").innerText();

  test("gives the library's season of both places", async () => {
    const { page } = notebook;
    expect(await answer(page)).toBe(seasonOfPlace(here, 0, "C"));
    expect(await page.getByRole("status").innerText()).toBe(seasonOfPlace(here, 0, "C"));
    const said = await text(page);
    expect(said).toContain(seasonOfPlace(there, 0, "C"));
    expect(said).toContain(describeLastEggs(lastEggRows([here, there])));
    expect(said).toContain(describeDayLengths(dayLengthRows([here, there])));
    for (const { code, message } of here.outlook.notes)
      if (code === "shortening-days") expect(said).toContain(message);
    expect((await cellsOf(page, "Here and elsewhere")).map((cells) => [cells[1], cells[3]])).toEqual(
      [here, there].map(({ outlook }) => [broodsOf(outlook), prudentText(outlook)]),
    );
  });

  test("draws the library's broods, shares and day lengths", async () => {
    const { page } = notebook;
    const shares = lastEggRows([here, there]).map(({ share }) => share * 100);
    expect(round(await drawn(page, "share", "cy", "y"))).toEqual(round(shares));
    const emergences = dayLengthRows([here, there]).filter(({ brood }) => brood !== null);
    expect(round(await drawn(page, "emergence", "cy", "y"))).toEqual(
      round(emergences.map(({ hours }) => hours)),
    );
    const whole = [here, there].flatMap(({ outlook: { years } }) =>
      years.flatMap(({ broods }) => broods.filter(({ adults }) => adults !== null)),
    );
    expect(await page.locator(".brood > *").count()).toBe(whole.length);
  });

  test("answers its question with the warming slider, moved by keyboard", async () => {
    const { page } = notebook;
    const slider = page
      .getByLabel("What if every day were warmer by, °C")
      .and(page.locator("input[type=range]"));
    await slider.focus();
    for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowRight");
    const warm = seasonAt("Seattle", warmer(2));
    await expect.poll(() => answer(page)).toBe(seasonOfPlace(seasonAt("New York", warmer(2)), 2, "C"));
    expect(await text(page)).toContain(besideOf(here, warm, 2, "C"));
    expect(await text(page)).toContain("not a climate forecast");
    expect(await cellsOf(page, "Here and elsewhere")).toHaveLength(4);
    await picture(page, "broods-warmer");
    await slider.focus();
    await page.keyboard.press("Home");
    await expect.poll(() => answer(page)).toBe(seasonOfPlace(here, 0, "C"));
  });

  test("answers every choice made by keyboard", async () => {
    const { page } = notebook;
    const changes = keyboardOf(page);
    await changes("Elsewhere", "tbody", "ArrowUp");
    await expect.poll(() => cellsOf(page, "Here and elsewhere").then(({ length }) => length)).toBe(1);
    await changes("Elsewhere", "tbody", "ArrowDown");
    await changes("Here", ".notice", "ArrowDown");
    await changes("Here", ".notice", "ArrowUp");
    await changes("Eggs make it when so many become adults", ".notice", "ArrowUp");
    await changes("Date of the first eggs (of any year)", "tbody", "0", "6", "0", "1", "2", "0", "1", "5");
    await changes("Days from emergence to the first eggs", "tbody", "ArrowDown");
    await changes("The first eggs are there", "tbody", "ArrowDown");
    expect(await text(page)).toContain("dated by temperature alone");
    await changes("A day below ends the season, °C", "main li", "End");
    await changes("Show in", "label", "ArrowDown");
    await page.getByLabel("Species").selectOption({ index: 1 });
    await expect.poll(() => answer(page)).not.toContain("monarch");
    expect(await findings(page)).toEqual([]);
  });

  test("takes a record of one's own, fills its gaps, and says what is wrong with it", async () => {
    const { page, complaints, requests } = notebook;
    const alert = page.getByRole("alert");
    const give = (lines: readonly string[]): Promise<void> =>
      page.getByLabel("Your temperatures (CSV)").setInputFiles({
        name: "own.csv",
        mimeType: "text/csv",
        buffer: Buffer.from(["date,min,max", ...lines].join("\n")),
      });
    const year = (count: number): string[] =>
      Array.from({ length: count }, (_, i) => {
        const warmth = 12 - 16 * Math.cos((2 * Math.PI * (i - 20)) / 365.25);
        return `${addDays("2018-01-01", i)},${(warmth - 5).toFixed(1)},${(warmth + 5).toFixed(1)}`;
      });
    await page.getByLabel("Their unit").selectOption("°C");
    await give(year(1461));
    await expect.poll(() => answer(page)).toContain("In your place");
    await give(year(100));
    await expect.poll(() => alert.innerText()).toContain("hold no whole season");
    await give(year(1461).filter((_, i) => i < 500 || i > 501));
    await expect.poll(() => text(page)).toContain("2 missing days are filled");
    const gaps = page.getByLabel("Fill gaps of so many days").and(page.locator("input[type=range]"));
    await gaps.focus();
    await page.keyboard.press("Home");
    await expect.poll(() => alert.innerText()).toContain("There is no temperature for 2019-05-16");
    await give(["2018-01-01,cold,5"]);
    await expect.poll(() => alert.innerText()).toContain("cold");
    await page.getByLabel("Your temperatures (CSV)").setInputFiles([]);
    await expect.poll(() => answer(page)).toContain("New York");
    const box = page.getByLabel("Or paste your temperatures here");
    await box.fill("date,min,max\n2018-01-01,banana,5");
    await expect.poll(() => alert.innerText()).toContain("banana");
    await box.fill(["date,min,max", ...year(1461)].join("\n"));
    await expect.poll(() => answer(page)).toContain("In your place");
    await picture(page, "broods-pasted");
    await box.fill("");
    await expect.poll(() => answer(page)).toContain("New York");
    for (const label of ["Latitude, north positive", "Longitude, east positive"]) {
      await page.getByLabel(label).and(page.locator("input[type=range]")).focus();
      await page.keyboard.press("ArrowRight");
    }
    expect([...complaints, ...requests]).toEqual([]);
  });
});
