import { accumulationClock } from "../../src/clock/accumulation-clock.ts";
import type { ThermalClock } from "../../src/clock/thermal-clock.ts";
import { DrawnArc } from "../../src/diurnal/arc.ts";
import { DAY_MS } from "../../src/time/zone.ts";

/** A clock that gives so many degree-days a day, evenly, for 100 days from 0 on. */
export function evenClock(perDay: number): ThermalClock {
  const arc = new DrawnArc({
    shape: "line",
    start: 10,
    end: 10,
    u0: 0,
    u1: 1,
    from: 0,
    to: 100 * DAY_MS,
    origin: "observed",
  });
  const timeline = { arcs: [arc], from: 0, to: 100 * DAY_MS, endedBy: "end" } as unknown as Parameters<
    typeof accumulationClock
  >[0];
  return accumulationClock(timeline, { rate: () => perDay, over: (_, p, q) => perDay * (q - p) });
}

/** The same clock, which counts how often it is asked for an amount. */
export function counting(clock: ThermalClock, counter: { asked: number }): ThermalClock {
  return {
    ...clock,
    amountAt: (instant) => {
      counter.asked++;
      return clock.amountAt(instant);
    },
  };
}
