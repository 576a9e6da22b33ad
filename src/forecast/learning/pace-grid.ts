import { normalDensity } from "../../numeric/normal-distribution.ts";
import type { LearnedNode } from "../question/learned.ts";

const PACE_STEPS = 61;
const OFFSET_STEPS = 15;

/** Lognormal belief in the pace and normal belief in the offset, on a grid. */
export function priorGrid(sigma: number, deviation: number): LearnedNode[] {
  const offsets =
    deviation === 0
      ? [{ offset: 0, weight: 1 }]
      : steps(OFFSET_STEPS, 2.5).map((z) => ({ offset: z * deviation, weight: normalDensity(z) }));
  return normalised(
    offsets.flatMap(({ offset, weight }) =>
      steps(PACE_STEPS, 4).map((z) => ({
        pace: Math.exp(sigma * z),
        offset,
        weight: weight * normalDensity(z),
      })),
    ),
  );
}

function steps(count: number, reach: number): number[] {
  return Array.from({ length: count }, (_, i) => (reach * (2 * i)) / (count - 1) - reach);
}

/** Nodes with weights that add up to 1. */
export function normalised(nodes: readonly LearnedNode[]): LearnedNode[] {
  const total = nodes.reduce((sum, { weight }) => sum + weight, 0);
  return nodes.map((node) => ({ ...node, weight: node.weight / total }));
}

/** Fewer nodes with the same weight: neighbours in pace are put together until they weigh enough to matter. */
export function thinned(grid: readonly LearnedNode[]): LearnedNode[] {
  const thin: LearnedNode[] = [];
  let held: LearnedNode | null = null;
  for (const node of grid) {
    if (held !== null && held.offset !== node.offset) {
      thin.push(held);
      held = null;
    }
    const weight: number = (held?.weight ?? 0) + node.weight;
    if (weight > 0) {
      const pace: number = ((held?.pace ?? 0) * (held?.weight ?? 0) + node.pace * node.weight) / weight;
      held = { pace, offset: node.offset, weight };
    }
    if (weight >= 0.04) {
      if (held !== null) thin.push(held);
      held = null;
    }
  }
  if (held !== null) thin.push(held);
  return normalised(thin.filter(({ weight }) => weight > 1e-9));
}
