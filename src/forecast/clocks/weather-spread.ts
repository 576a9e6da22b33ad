import type { ThermalClock } from "../../clock/thermal-clock.ts";
import { DAY_MS, type Instant } from "../../time/zone.ts";
import { studentQuantile } from "../../numeric/student-t.ts";

/** A clock that stands for part of what the weather may do. */
export interface SpreadClock {
  readonly weight: number;
  readonly clock: ThermalClock;
}

/**
 * Number of clocks that stand for the spread. With 25 of the same weight the 10, 50 and 90 % points fall in
 * the middle of one each, and so are exact.
 */
const CLOCKS = 25;

/** Steps of the table of each clock. A quarter of a day keeps night and day apart. */
const STEP_MS = DAY_MS / 4;

/**
 * Clocks for weather of which a few past years are a sample. At each moment the heat to come is taken as
 * Student-distributed around the mean of the years, with their standard deviation and one degree of freedom
 * less than there are years, widened by √(1 + 1/n) because the mean itself is known from n years only. So a few
 * years give wide windows, as they should, and many years give those of their own distribution. A warm clock
 * stays warm: the k-th is at the same point of the distribution at all times.
 * @param members Clocks of the years, all from the same start.
 * @param known Up to here all members are the same.
 */
export function spreadClocks(members: readonly ThermalClock[], known: Instant): SpreadClock[] {
  const [first] = members;
  if (first === undefined) return [];
  if (members.length < 3) return members.map((clock) => ({ weight: 1 / members.length, clock }));
  const to = Math.min(...members.map((clock) => clock.to));
  const from = Math.max(first.from, Math.min(known, to));
  const steps = Math.floor((to - from) / STEP_MS);
  const mean = new Float64Array(steps + 1);
  const deviation = new Float64Array(steps + 1);
  const count = members.length;
  for (let i = 0; i <= steps; i++) {
    const amounts = members.map((clock) => clock.amountAt(from + i * STEP_MS));
    const middle = amounts.reduce((sum, one) => sum + one, 0) / count;
    mean[i] = middle;
    deviation[i] = Math.sqrt(amounts.reduce((sum, one) => sum + (one - middle) ** 2, 0) / (count - 1));
  }
  return pointsFor(count).map((points) => {
    const amounts = new Float64Array(steps + 1);
    let highest = 0;
    for (let i = 0; i <= steps; i++) {
      // Heat does not run backwards, also where the years come closer together again.
      highest = Math.max(highest, (mean[i] ?? 0) + points * (deviation[i] ?? 0));
      amounts[i] = highest;
    }
    return { weight: 1 / CLOCKS, clock: tableClock(first, from, amounts) };
  });
}

const pointsOf = new Map<number, number[]>();

/** Standard deviations from the mean at which the clocks of so many years lie. */
function pointsFor(count: number): number[] {
  let points = pointsOf.get(count);
  if (points === undefined) {
    points = Array.from(
      { length: CLOCKS },
      (_, k) => studentQuantile((k + 0.5) / CLOCKS, count - 1) * Math.sqrt(1 + 1 / count),
    );
    pointsOf.set(count, points);
  }
  return points;
}

/** A clock that is another one up to an instant and a table, straight between its steps, from there on. */
function tableClock(before: ThermalClock, from: Instant, amounts: Float64Array): ThermalClock {
  const last = amounts.length - 1;
  const to = from + last * STEP_MS;
  const total = amounts[last] ?? 0;
  const start = amounts[0] ?? 0;
  return {
    from: before.from,
    to,
    total,
    amountAt(instant) {
      if (instant <= from) return before.amountAt(instant);
      if (instant >= to) return total;
      const at = (instant - from) / STEP_MS;
      const i = Math.floor(at);
      const low = amounts[i] ?? total;
      return low + ((amounts[i + 1] ?? total) - low) * (at - i);
    },
    when(amount) {
      if (amount <= start) return before.when(amount);
      if (amount > total) return null;
      let [low, high] = [0, last];
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if ((amounts[middle] ?? 0) < amount) low = middle;
        else high = middle;
      }
      const [a, b] = [amounts[low] ?? 0, amounts[high] ?? total];
      return from + (low + (b > a ? (amount - a) / (b - a) : 0)) * STEP_MS;
    },
  };
}
