import { type LearnedNode, byOffset } from "../question/learned.ts";

const PACE_STEPS = 61;
const OFFSET_STEPS = 15;

/** What is believed before anything is seen: a lognormal pace around 1, and a normal offset around 0 °C. */
export interface PaceBelief {
  /** Standard deviation of the logarithm of the pace. */
  readonly sigma: number;
  /** Standard deviation of the offset, °C; 0 where it is known to be none. */
  readonly deviation: number;
}

/** One point of a grid over pace and offset. */
export interface GridNode {
  readonly pace: number;
  readonly offset: number;
  /** Natural logarithm of its weight, up to a constant of the grid: the weights of a large brood underflow. */
  readonly logWeight: number;
}

/** The belief before anything is seen, on a grid: all paces of one offset, then those of the next. */
export function priorGrid(belief: PaceBelief): GridNode[] {
  const { deviation } = belief;
  const offsets = deviation === 0 ? [0] : evenly(-2.5 * deviation, 2.5 * deviation, OFFSET_STEPS);
  return offsets.flatMap((offset) => pacesOf(belief, offset, -4, 4));
}

/** Points at one offset, for logarithms of the pace between two multiples of its standard deviation. */
function pacesOf({ sigma, deviation }: PaceBelief, offset: number, from: number, to: number): GridNode[] {
  const ofOffset = deviation === 0 ? 0 : -((offset / deviation) ** 2) / 2;
  // A point stands for what lies around it, which is less where the points lie closer.
  const share = Math.log(to - from);
  return evenly(from, to, PACE_STEPS).map((z) => {
    return { pace: Math.exp(sigma * z), offset, logWeight: ofOffset - (z * z) / 2 + share };
  });
}

function evenly(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}

/**
 * The belief once something was seen of some animals, independent of each other given pace and offset.
 * @param chances Of what was seen of one animal, at each point of the grid.
 * @returns `null` where the belief before leaves no point at which it can have happened.
 */
export function judged(
  grid: readonly GridNode[],
  chances: readonly number[],
  animals: number,
): GridNode[] | null {
  const next = grid.map((node, i) => {
    return { ...node, logWeight: node.logWeight + animals * Math.log(Math.max(0, chances[i] ?? 0)) };
  });
  return next.some(({ logWeight }) => logWeight > -Infinity) ? next : null;
}

/**
 * A normal belief with a standard deviation of two steps has so many points above this share of its highest weight. On
 * a coarser grid the quantiles, which run straight between its points, lie too far apart: by 12 % at one step.
 */
const [FEWEST, FAINT] = [25, 1e-9];

/**
 * A finer grid, without what was seen, where a belief has become too narrow for its grid.
 * @returns `null` where no offset needs it.
 */
export function refined(grid: readonly GridNode[], belief: PaceBelief): GridNode[] | null {
  const faint = highest(grid) + Math.log(FAINT);
  const spans = byOffset(grid).flatMap((points) => {
    const first = points.findIndex(({ logWeight }) => logWeight > faint);
    const last = points.findLastIndex(({ logWeight }) => logWeight > faint);
    return first < 0 ? [] : [{ points, first, last }];
  });
  if (spans.every(({ first, last }) => last - first + 1 >= FEWEST)) return null;
  return spans.flatMap(({ points, first, last }) => {
    const z = (i: number): number => Math.log(points[i]?.pace ?? 1) / belief.sigma;
    const [from, to] = [Math.max(0, first - 1), Math.min(points.length - 1, last + 1)];
    return pacesOf(belief, points[0]?.offset ?? 0, z(from), z(to));
  });
}

function highest(grid: readonly GridNode[]): number {
  return Math.max(...grid.map(({ logWeight }) => logWeight));
}

/** The points with weights that add up to 1. */
export function weighted(grid: readonly GridNode[]): LearnedNode[] {
  const top = highest(grid);
  return normalised(
    grid.map(({ pace, offset, logWeight }) => ({ pace, offset, weight: Math.exp(logWeight - top) })),
  );
}

function normalised(nodes: readonly LearnedNode[]): LearnedNode[] {
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
