import { InputError } from "../errors.ts";
import { given } from "../given.ts";
import type { Figure } from "./figure.ts";

/** Characters that XML 1.0 does not have, section 2.2: names of the caller may hold them. */
const NO_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/** Ground and ink of a drawing that stands alone, where no page sets them. */
const GROUND = "#fff";
const INK = "#16211f";

/** Advance of an average letter of the caption at its size, and its lines' distance, in pixels. */
const LETTER = 6.1;
const LINE = 15;
const MARGIN = 12;

/**
 * A figure as the text of an SVG file that stands alone: for documents, reports and mail, made in a browser or
 * on a server with a DOM library such as jsdom. Colours are fixed, the ground is white, the caption stands
 * below, and name and description are kept for those who hear it.
 * @param figure From any of the figure functions, such as `stageWindowFigure`, drawn with one SVG.
 * @returns SVG 1.1, without a trailing line end.
 * @throws {InputError} `invalid-option` when the figure holds no drawing.
 */
export function figureSvg(figure: Figure): string {
  given(figure, ["figure"], "what a figure function returned", "localName", "ownerDocument");
  const found = figure.localName === "svg" ? figure : figure.querySelector(":scope > svg");
  const view = figure.ownerDocument.defaultView;
  if (found === null || view === null) {
    throw new InputError(
      "invalid-option",
      "the figure holds no drawing; give what a figure function returned.",
      {
        path: ["figure"],
      },
    );
  }
  const drawing = found.cloneNode(true);
  if (!(drawing instanceof view.SVGElement)) throw new TypeError("a copy of an SVG element is one");
  const caption = figure.querySelector("figcaption")?.textContent ?? "";
  standAlone(drawing, captionLines(caption, sizeOf(drawing).width - 2 * MARGIN));
  // Variables are what a page sets; alone, each has its fixed colour.
  const text = new view.XMLSerializer().serializeToString(drawing);
  return text.replace(/var\(--[\w-]+,\s*([^)]+)\)/g, "$1").replace(NO_XML, "");
}

/** Puts a ground under a drawing, and its caption below it. */
function standAlone(drawing: SVGElement, lines: readonly string[]): void {
  const { width, height } = sizeOf(drawing);
  const tall = height + (lines.length === 0 ? 0 : lines.length * LINE + MARGIN);
  drawing.setAttribute("height", String(tall));
  drawing.setAttribute("viewBox", `0 0 ${width} ${tall}`);
  drawing.setAttribute("color", INK);
  const added = (name: string, attributes: Readonly<Record<string, string | number>>): Element => {
    const element = drawing.ownerDocument.createElementNS("http://www.w3.org/2000/svg", name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
    return element;
  };
  drawing.prepend(
    textIn(added("title", {}), drawing.getAttribute("aria-label") ?? ""),
    textIn(added("desc", {}), drawing.getAttribute("aria-description") ?? ""),
    added("rect", { width, height: tall, fill: GROUND }),
  );
  lines.forEach((line, i) => {
    const y = height + (i + 1) * LINE;
    drawing.append(textIn(added("text", { x: MARGIN, y, "text-anchor": "start", class: "caption" }), line));
  });
}

function textIn(element: Element, text: string): Element {
  element.textContent = text;
  return element;
}

function sizeOf(drawing: Element): { readonly width: number; readonly height: number } {
  return { width: Number(drawing.getAttribute("width")), height: Number(drawing.getAttribute("height")) };
}

/** Words laid out in lines of at most a width. */
function captionLines(caption: string, width: number): string[] {
  const letters = Math.max(20, Math.floor(width / LETTER));
  const lines: string[] = [];
  for (const word of caption.split(/\s+/).filter(Boolean)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
