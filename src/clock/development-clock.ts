import { InputError, isUsable, shown } from "../errors.ts";
import { given, givenFunction } from "../given.ts";
import { arcTemperature } from "../diurnal/arc.ts";
import type { Timeline } from "../diurnal/timeline.ts";
import { type AccumulationClock, accumulationClock } from "./accumulation-clock.ts";
import { integral } from "../numeric/gauss-lobatto.ts";

/**
 * Development per day at a temperature, °C: the reciprocal of the days that a stage takes there. 0 or more,
 * finite.
 */
export type DevelopmentRate = (temperature: number) => number;

/** Development as a function of time, and its inverse: 1 is one stage, or whatever the rate completes. */
export type DevelopmentClock = AccumulationClock;

/**
 * The clock of any rate of development along a curve: rate summation. Where the rate is a straight line, use
 * `thermalClock`, which is exact and faster.
 *
 * Integrals are by a Gauss-Lobatto rule of eight points that is halved where it must be. On rates that are smooth
 * within the day's temperatures they are good to 1e-9 of the amount, across bends such as a lower or upper limit
 * to 1e-6 and usually far better. Development that is confined to a band of a degree or less within a day's range can
 * be overlooked; real animals have none. An instant from `when` is as good as the amount: 1e-9 of a development that
 * takes 20 days is about 2 milliseconds.
 * @param timeline The curve, °C over time.
 * @param rate Development per day, 0 or more and finite at every temperature of the curve.
 * @returns A clock whose amounts are shares of the development: 1 when it is complete.
 * @throws {InputError} `invalid-number` when the rate is negative or not a finite number.
 * @see Kaufmann, O. (1932), Z. Morphol. Oekol. Tiere 25, 353-361 (from memory): the rate of the mean temperature
 *   is not the mean rate.
 */
export function developmentClock(timeline: Timeline, rate: DevelopmentRate): DevelopmentClock {
  given(timeline, ["timeline"], "what timelineOf returns", "arcs");
  givenFunction(rate, ["rate"]);
  const checked = checkedRate(rate);
  return accumulationClock(timeline, {
    rate: checked,
    over: (arc, p, q) =>
      arc.start === arc.end
        ? (q - p) * checked(arc.start)
        : integral((u) => checked(arcTemperature(arc, u)), p, q),
  });
}

/**
 * A rate that throws where it is not a rate. @internal
 */
export function checkedRate(rate: DevelopmentRate): DevelopmentRate {
  return (temperature) => {
    const value = rate(temperature);
    if (value >= 0 && isUsable(value)) return value;
    throw new InputError(
      "invalid-number",
      `the rate at ${temperature} °C is ${shown(value)}; it must be 0 or more and finite at every temperature of the curve.`,
      { path: ["rate"], value },
    );
  };
}
