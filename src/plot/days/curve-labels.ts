import { type DisplayUnit, short } from "../display-unit.ts";

/** A point of a drawn curve: its height, and the area that counts. */
interface Point {
  readonly x: Date;
  readonly y: number;
  readonly from: number;
  readonly to: number;
}

/** At the left end of a threshold. */
export const LEFT = { frameAnchor: "left", textAnchor: "start", dx: 4 } as const;

/** Where the name of a threshold stands along it. */
export type Place = typeof LEFT | { readonly x: readonly Date[]; readonly textAnchor: "middle" };

/**
 * Where the name of the lower threshold has room under it: on the left, or else in the middle of the longest stretch
 * of curve above it. `null` where none is long enough; then there is room over the line.
 * @param need How many points the name is wide.
 */
export function belowThreshold(points: readonly Point[], need: number): Place | null {
  const above = ({ y, from }: Point): boolean => y >= from;
  if (points.slice(0, Math.ceil(need)).every(above)) return LEFT;
  const { middle, length } = longestRun(points, above);
  return middle === undefined || length < need ? null : { x: [middle.x], textAnchor: "middle" };
}

/**
 * The sum, in the longest stretch of area that is high enough for a line of text and wide enough for it.
 * @param counts The sum in °C·day, `null` for none.
 * @param width Of the curve in pixels, as `height`.
 * @param shown What the height spans.
 */
export function areaLabel(
  points: readonly Point[],
  {
    counts,
    unit,
    width,
    height,
    shown,
  }: {
    readonly counts: number | null;
    readonly unit: DisplayUnit;
    readonly width: number;
    readonly height: number;
    readonly shown: readonly number[];
  },
) {
  if (counts === null) return [];
  const text = `${short(unit.sum(counts))} ${unit.degreeDay}`;
  const range = shown.reduce((a, b) => Math.max(a, b)) - shown.reduce((a, b) => Math.min(a, b));
  const enough = (30 * range) / height;
  const { middle, length } = longestRun(points, ({ from, to }) => to - from >= enough);
  if (middle === undefined || (length * width) / points.length < 9 * text.length) return [];
  return [{ x: middle.x, y: (middle.from + middle.to) / 2, text }];
}

function longestRun(points: readonly Point[], fits: (point: Point) => boolean) {
  let [best, length, run]: [number, number, number] = [0, 0, 0];
  points.forEach((point, i) => {
    run = fits(point) ? run + 1 : 0;
    if (run > length) [best, length] = [i, run];
  });
  return { middle: points[Math.round(best - length / 2)], length };
}
