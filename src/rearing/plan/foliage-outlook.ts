import { type CivilDay, civilDay, dayNumber } from "../../time/civil-day.ts";
import { isFeeding } from "./foliage-needs.ts";
import type { PlanAnimals } from "./plan-cohort.ts";
import { type StandIn, shareInDay } from "./stand-ins.ts";

/** Leaves of one day. */
export interface Leaves {
  /** As expected, animals being spread over their windows. */
  readonly expected: number;
  /** The most of: as expected, all early, all in the middle, all late. */
  readonly most: number;
}

/** Leaves that are there, or come later. */
export interface FoliageSupply {
  /** The food, as the needs name it. Not needed where all cohorts eat the same. */
  readonly food?: string;
  readonly leaves: number;
  /** Day on which they come. Without one they are there from the start. */
  readonly on?: CivilDay;
}

/** One day of a food's season. */
export interface FoliageDay extends Leaves {
  readonly day: CivilDay;
  /** Eaten up to the end of the day, as expected. */
  readonly eaten: number;
  /** Leaves that are left at the end of the day; `null` where no supply was given. */
  readonly left: number | null;
}

/** The whole season of one kind of food. */
export interface FoliageOutlook {
  readonly food: string;
  readonly cohorts: readonly string[];
  readonly days: readonly FoliageDay[];
  /** Leaves from the first to the last day, as expected. */
  readonly total: number;
  /**
   * What to have beyond the expected, so that none goes short however early or late they are: the most leaves
   * that early animals are ever ahead of middle ones, and what late ones eat more in all.
   */
  readonly margin: number;
  readonly withMargin: number;
  /** Day of the largest need. */
  readonly peak: CivilDay | null;
  readonly leavesPerStem: number | null;
  /** Whole stems for `withMargin`; `null` without `leavesPerStem`. */
  readonly stems: number | null;
  /** Leaves at hand and to come in all; `null` where none were given. */
  readonly supplied: number | null;
  /** First day on which the supply does not last, as expected; `null` where it lasts or none was given. */
  readonly runsOut: CivilDay | null;
  /** The same if all animals are early. */
  readonly runsOutEarly: CivilDay | null;
}

/** Leaves that a cohort eats on a civil day; `null` where its needs are not known. */
export function leavesOn(animals: PlanAnimals, day: number): Leaves | null {
  if (animals.needs === null) return null;
  const { standIns, scenarios, count } = animals;
  const mean = standIns.reduce((sum, one) => sum + eatenBy(animals, one, day), 0) / standIns.length;
  const each = scenarios.map((one) => eatenBy(animals, one, day));
  return { expected: mean * count, most: Math.max(mean, ...each) * count };
}

/**
 * The season of one kind of food, over all cohorts that eat it.
 * @param cohorts Cohorts with that food, in the order of their names.
 * @param days First and last day, as numbers.
 * @param supplies Those of this food.
 */
export function foliageOutlook(
  food: string,
  cohorts: readonly PlanAnimals[],
  [first, last]: readonly [first: number, last: number],
  supplies: readonly FoliageSupply[],
  leavesPerStem: number | null,
): FoliageOutlook {
  const given = supplies.length > 0;
  const days: FoliageDay[] = [];
  let [eaten, ahead, margin, middleAll, lateAll] = [0, 0, 0, 0, 0];
  let [runsOut, runsOutEarly]: [CivilDay | null, CivilDay | null] = [null, null];
  let earlyAll = 0;
  for (let day = first; day <= last; day++) {
    const [early, middle, late] = [0, 1, 2].map((i) => ofScenario(cohorts, i, day));
    let [expected, most] = [0, 0];
    for (const cohort of cohorts) {
      const leaves = leavesOn(cohort, day);
      expected += leaves?.expected ?? 0;
      most += leaves?.most ?? 0;
    }
    eaten += expected;
    earlyAll += early ?? 0;
    middleAll += middle ?? 0;
    lateAll += late ?? 0;
    ahead = Math.max(ahead, earlyAll - middleAll);
    const there = supplies.reduce(
      (sum, { leaves, on }) => sum + (on === undefined || dayNumber(on) <= day ? leaves : 0),
      0,
    );
    // Sums of shares are a hair off; a leaf is not.
    if (given && eaten > there + 1e-6) runsOut ??= civilDay(day);
    if (given && Math.max(earlyAll, eaten) > there + 1e-6) runsOutEarly ??= civilDay(day);
    const left = given ? Math.max(0, there - eaten) : null;
    days.push({ day: civilDay(day), expected, most, eaten, left });
  }
  margin = ahead + Math.max(0, lateAll - middleAll);
  const withMargin = eaten + margin;
  const most = Math.max(...days.map((one) => one.expected));
  return {
    food,
    cohorts: cohorts.map(({ name }) => name),
    days,
    total: eaten,
    margin,
    withMargin,
    peak: most > 0 ? (days.find((one) => one.expected === most)?.day ?? null) : null,
    leavesPerStem,
    stems: leavesPerStem === null ? null : Math.ceil(withMargin / leavesPerStem - 1e-6),
    supplied: given ? supplies.reduce((sum, { leaves }) => sum + leaves, 0) : null,
    runsOut,
    runsOutEarly,
  };
}

function ofScenario(cohorts: readonly PlanAnimals[], index: number, day: number): number {
  return cohorts.reduce((sum, animals) => {
    const one = animals.scenarios[index];
    return one === undefined ? sum : sum + animals.count * eatenBy(animals, one, day);
  }, 0);
}

/** Leaves that one animal eats on a civil day: what a stage needs, spread evenly over the stage. */
function eatenBy({ order, needs }: PlanAnimals, { begins, left }: StandIn, day: number): number {
  return order.reduce((sum, stage, k) => {
    const whole = isFeeding(stage) ? (needs?.leaves[stage]?.value ?? 0) : 0;
    if (whole === 0) return sum;
    const share = shareInDay(begins[k] ?? Infinity, begins[k + 1] ?? Infinity, day);
    return sum + whole * (k === 0 ? left : 1) * share;
  }, 0);
}
