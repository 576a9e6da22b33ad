// The libraries that a cell may name without importing them: plots, inputs and text.
export const Plot = () => import("@observablehq/plot");
export const Inputs = () => import("./inputs.ts");
export const md = () => import("virtual:markdown").then((module) => module.md);
