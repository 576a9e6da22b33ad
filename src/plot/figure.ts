import type * as ObservablePlot from "@observablehq/plot";
import { finite } from "../errors.ts";
import { given, givenList } from "../given.ts";
import { type DisplayUnit, type TemperatureUnit, unitOf } from "../units.ts";

/** Observable Plot as the caller imported it, so that only users of figures need it installed. */
export type PlotLibrary = typeof ObservablePlot;

/** A drawn figure: an element for the page, with Plot's `scale` method. */
export type Figure = (SVGSVGElement | HTMLElement) & ObservablePlot.Plot;

/** What every figure takes. */
export interface FigureOptions {
  /** Width in pixels. Default 640; text keeps its size, so give the real width on a narrow screen. */
  readonly width?: number;
  /** Scale that temperatures and degree-days are shown in. Default `C`. */
  readonly unit?: TemperatureUnit;
  /** Needed where there is no global `document`, as on a server with a DOM library. */
  readonly document?: Document;
}

/**
 * Colours of the figures. A page that sets the variables (for a dark ground, say) overrides them; each pair
 * that meets in one figure differs in lightness as well as in hue, and in shape besides.
 */
export const COLOURS = {
  /** Warmth that counts, and what is predicted. */
  heat: "var(--moltline-heat, #0b6a7d)",
  /** Warmth that does not count. */
  cool: "var(--moltline-cool, #93a9ae)",
  /** What was seen. */
  seen: "var(--moltline-seen, #a63c0e)",
  /** Thresholds and other limits. */
  limit: "var(--moltline-limit, #4b595b)",
  /** Ground behind text. */
  halo: "var(--moltline-halo, #fff)",
} as const;

/** Names over marks: ink on a halo of the ground. @internal */
export const READABLE = { fill: "currentColor", stroke: COLOURS.halo, strokeWidth: 4 } as const;

/** What a figure shows, beside its marks. */
export interface FigureParts extends ObservablePlot.PlotOptions {
  /** A few words that name the figure to those who hear it. */
  readonly ariaLabel: string;
  /** The figure's key numbers in words. */
  readonly ariaDescription: string;
  /** How to read the shapes: stands below the figure in place of a colour legend. */
  readonly caption: string;
}

/** Least width of a figure, pixels: its margins and a little between them. */
const NARROWEST = 240;

/**
 * What every figure begins with: looks at what it is given, and says how wide it is and how temperatures are shown.
 * @throws {InputError} `invalid-option`, `invalid-number`, `unknown-unit`. @internal
 */
export function frameOf(
  library: PlotLibrary,
  rows: readonly unknown[],
  options: FigureOptions,
): { readonly width: number; readonly display: DisplayUnit } {
  given(library, ["library"], "Observable Plot", "plot");
  givenList(rows, ["rows"], "a list of rows");
  return { display: unitOf(options), width: widthOf(options) };
}

// A page that is not laid out yet may say 0, in which no margin fits.
function widthOf({ width = 640 }: FigureOptions): number {
  return Math.max(finite(width, ["width"], "a number of pixels"), NARROWEST);
}

/** Draws a figure and makes it one image with a name and a description to those who hear the page. */
export function drawFigure(library: PlotLibrary, parts: FigureParts, options: FigureOptions): Figure {
  const { document } = options;
  const figure = library.plot({
    ...parts,
    width: widthOf(options),
    style: { fontSize: "12px", background: "none", overflow: "visible" },
    ...(document ? { document } : {}),
  });
  for (const drawing of figure.querySelectorAll("svg")) {
    drawing.setAttribute("role", "img");
    // Plot names its groups of marks, which ARIA forbids on groups without a role and nobody would hear.
    for (const group of drawing.querySelectorAll("[aria-label]")) group.removeAttribute("aria-label");
  }
  return figure;
}
