// @vitest-environment jsdom
import * as Plot from "@observablehq/plot";
import { describe, expect, test } from "vitest";
import { figureSvg, stageWindowFigure, stageWindowRows, temperatureFigure } from "../../src/plot/index.ts";
import { log, season } from "./season.ts";

const figure = stageWindowFigure(Plot, stageWindowRows(season, log), { width: 640, document });
const svg = figureSvg(figure);
const read = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;

describe("figureSvg", () => {
  test("is well-formed SVG with the name and the description of the figure", () => {
    expect(read.namespaceURI).toBe("http://www.w3.org/2000/svg");
    const drawing = figure.querySelector("svg");
    expect(read.querySelector("title")?.textContent).toBe(drawing?.getAttribute("aria-label"));
    expect(read.querySelector("desc")?.textContent).toBe(drawing?.getAttribute("aria-description"));
  });

  test("keeps every mark where it was", () => {
    const marks = (root: Element): string[][] =>
      Array.from(root.querySelectorAll(".expected > *, .seen > *"), (shape) =>
        Array.from(shape.attributes, ({ name, value }) => `${name}=${value}`),
      );
    expect(marks(read)).toHaveLength(marks(figure).length);
    expect(marks(read)).toEqual(marks(figure));
    expect(marks(read).length).toBeGreaterThan(15);
  });

  test("needs no page: fixed colours, a white ground, nothing from outside", () => {
    expect(svg).not.toMatch(/var\(|url\(|https?:(?!\/\/www\.w3\.org\/)/);
    const [ground] = read.getElementsByTagName("rect");
    expect(ground?.getAttribute("fill")).toBe("#fff");
    expect(ground?.getAttribute("height")).toBe(read.getAttribute("height"));
  });

  test("has the whole caption below the drawing, within its width", () => {
    const lines = Array.from(read.querySelectorAll("text.caption"));
    expect(lines.map((line) => line.textContent).join(" ")).toBe(
      figure.querySelector("figcaption")?.textContent,
    );
    const height = Number(figure.querySelector("svg")?.getAttribute("height"));
    for (const line of lines) {
      expect(Number(line.getAttribute("y"))).toBeGreaterThan(height);
      expect(Number(line.getAttribute("y"))).toBeLessThan(Number(read.getAttribute("height")));
      expect(line.textContent.length * 6.1).toBeLessThanOrEqual(640);
    }
  });

  test("leaves the figure as it was", () => {
    const before = figure.outerHTML;
    figureSvg(figure);
    expect(figure.outerHTML).toBe(before);
  });

  test("escapes what a name brings along", () => {
    const rows = stageWindowRows(season).map((row) => ({ ...row, name: `<b>&"${row.name}` }));
    const text = figureSvg(stageWindowFigure(Plot, rows, { document }));
    expect(text).not.toContain("<b>");
    expect(new DOMParser().parseFromString(text, "image/svg+xml").querySelector("parsererror")).toBeNull();
  });

  test("refuses a figure without a drawing", () => {
    const empty = temperatureFigure(Plot, [], { document });
    empty.querySelector("svg")?.remove();
    expect(() => figureSvg(empty)).toThrow(/holds no drawing/);
  });
});

test("text of a name that no XML may have is left out", () => {
  const rows = stageWindowRows(season).map((row) => ({ ...row, name: `${row.name}\u0001\uFFFF` }));
  const odd = figureSvg(stageWindowFigure(Plot, rows, { document }));
  expect(new DOMParser().parseFromString(odd, "image/svg+xml").querySelector("parsererror")).toBeNull();
  expect(odd).not.toMatch(/[\u0001\uFFFF]/);
});
