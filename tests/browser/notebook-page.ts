import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { expect } from "vitest";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What drawn marks stand for on a scale, read back from the page. */
export function drawn(page: Page, mark: string, attribute: string, scale: "x" | "y"): Promise<number[]> {
  return page.evaluate(
    ({ mark, attribute, scale }) => {
      const shapes = document.querySelectorAll(`.${mark} > *`);
      const figure:
        (Element & { scale?: (name: string) => { invert: (value: number) => unknown } }) | null | undefined =
        shapes[0]?.closest("figure");
      const axis = figure?.scale?.(scale);
      return Array.from(shapes, (shape) => Number(axis?.invert(Number(shape.getAttribute(attribute)))));
    },
    { mark, attribute, scale },
  );
}

/** Numbers rounded to what a drawing holds, to be compared with others. */
export function round(values: readonly number[]): number[] {
  return values.map((value) => Math.round(value * 1e4) / 1e4);
}

/** The cells of the table with a caption, row by row; none where there is no such table. */
export function cellsOf(page: Page, caption: string): Promise<string[][]> {
  return page.evaluate((caption) => {
    const table = [...document.querySelectorAll("table")].find((one) =>
      one.caption?.textContent.includes(caption),
    );
    const rows = [...(table?.tBodies[0]?.rows ?? [])];
    return rows.map((row) => Array.from(row.cells, (cell) => cell.textContent.trim()));
  }, caption);
}

/** Changes an input of a page by keys, and waits until the texts that it is to change are other ones. */
export function keyboardOf(
  page: Page,
): (label: string, watch: string, ...keys: readonly string[]) => Promise<void> {
  return async (label, watch, ...keys) => {
    const before = await page.locator(watch).allInnerTexts();
    // A slider and the number beside it have the same label.
    await page
      .getByLabel(label, { exact: true })
      .and(page.locator("select, input:not([type=number])"))
      .focus();
    for (const key of keys) await page.keyboard.press(key);
    await expect.poll(() => page.locator(watch).allInnerTexts(), { message: label }).not.toEqual(before);
  };
}

/** Serious and critical findings of axe, one line each. */
export async function findings(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const results = await page.evaluate<AxeResults>("axe.run()");
  // A run that looked at nothing would find nothing.
  expect(results.passes.length).toBeGreaterThan(20);
  return results.violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(" | ")}`);
}

/** Milliseconds from a key to the frame in which the first figure is a new one. */
export async function timeOf(page: Page, key: string): Promise<number> {
  // Watching has to begin before the key goes down, so it is set up first and asked afterwards.
  const watch = await page.evaluateHandle(() => {
    const before = document.querySelector("figure");
    const count = document.querySelectorAll("figure").length;
    const seen = { pressed: 0, drawn: 0 };
    addEventListener("input", () => (seen.pressed = performance.now()), { once: true, capture: true });
    const observer = new MutationObserver(() => {
      if (before?.isConnected !== false || document.querySelectorAll("figure").length < count) return;
      observer.disconnect();
      requestAnimationFrame(() => (seen.drawn = performance.now()));
    });
    observer.observe(document.body, { childList: true, subtree: true });
    return seen;
  });
  await page.keyboard.press(key);
  await page.waitForFunction((seen) => seen.drawn > 0, watch);
  const { pressed, drawn } = await watch.jsonValue();
  return drawn - pressed;
}
