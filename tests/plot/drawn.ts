import type { Figure } from "../../src/plot/index.ts";

/** What the drawn marks of a kind stand for on a scale, read back from their attributes. */
export function drawn(figure: Figure, mark: string, attribute: string, scale: "x" | "y"): number[] {
  const axis = figure.scale(scale);
  const shapes = figure.querySelectorAll(`.${mark} > *`);
  return Array.from(shapes, (shape) => Number(axis?.invert?.(Number(shape.getAttribute(attribute)))));
}
