import type { Markish } from "@observablehq/plot";
import type { DisplayUnit } from "../display-unit.ts";
import { COLOURS, type PlotLibrary } from "../figure.ts";
import type { TrialRow } from "./trial-rows.ts";

/** The axis of temperatures that figures of trials have. */
export function temperatureAxis({ degree }: DisplayUnit, width: number) {
  return { label: `temperature, ${degree}`, labelArrow: "none", tickSize: 4, ticks: width / 80 } as const;
}

/** Trials as points: a ring for one that an estimate uses, a cross for one that it leaves out. */
export function trialMarks(
  library: PlotLibrary,
  rows: readonly TrialRow[],
  at: { readonly x: (temperature: number) => number; readonly y: (row: TrialRow) => number },
): Markish[] {
  const points = rows.map((row) => ({ x: at.x(row.temperature), y: at.y(row), used: row.used }));
  const place = { x: "x", y: "y", stroke: "currentColor", strokeWidth: 2 };
  return [
    library.dot(
      points.filter(({ used }) => used),
      { ...place, r: 5, fill: COLOURS.halo, className: "trial" },
    ),
    library.dot(
      points.filter(({ used }) => !used),
      { ...place, r: 5, symbol: "times", className: "trial-left-out" },
    ),
  ];
}
