import { InputError } from "../errors.ts";
import type { PlotLibrary } from "../plot/index.ts";

/** What drawing outside a browser needs. */
export interface DrawingLibraries {
  readonly plot: PlotLibrary;
  /** A document to draw in. */
  readonly document: Document;
}

/**
 * Observable Plot and jsdom, which only those install who draw.
 * @throws {InputError} `invalid-option` when one of them is not there, with how to install it.
 */
export async function drawingLibraries(): Promise<DrawingLibraries> {
  try {
    const [plot, { JSDOM }] = await Promise.all([import("@observablehq/plot"), import("jsdom")]);
    return { plot, document: new JSDOM("").window.document };
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "ERR_MODULE_NOT_FOUND")) throw error;
    throw new InputError(
      "invalid-option",
      "drawing needs two packages that are not installed; install them beside moltline: npm install @observablehq/plot jsdom.",
      { path: ["out"] },
    );
  }
}
