import type { LifeCycle, StageId, StageNeeds } from "../../src/species/life-cycle.ts";

// Development at one temperature by hand, independent of the clock in src: K / (min(T, U) - L), stage by stage.

/** The needs of named stages, in the order of life; throws when the species lacks one. */
export function needsOf(lifeCycle: LifeCycle, stages: readonly StageId[]): readonly StageNeeds[] {
  return stages.map((stage) => {
    const needs = lifeCycle.stages.find((candidate) => candidate.stage === stage);
    if (!needs) throw new Error(`${lifeCycle.species} has no ${stage}`);
    return needs;
  });
}

/** Degree-days a day at a constant temperature, horizontal cutoff, °C. */
export function ratePerDay(needs: StageNeeds, temperature: number): number {
  return Math.min(temperature, needs.upper?.value ?? Infinity) - needs.lower.value;
}

/** Days that the middle animal needs for the stages at a constant temperature. */
export function daysAt(needs: readonly StageNeeds[], temperature: number): number {
  return needs.reduce((days, one) => days + one.degreeDays.value / ratePerDay(one, temperature), 0);
}

/** Thermal constants added up, °C·day; only has a meaning where the stages share their thresholds. */
export function degreeDaysOf(needs: readonly StageNeeds[]): number {
  return needs.reduce((sum, one) => sum + one.degreeDays.value, 0);
}

/**
 * Coefficient of variation of the stages' summed degree-days, every pair of stages being correlated alike:
 * variance = Σ(s²) + r·((Σs)² - Σ(s²)).
 */
export function variationOf(needs: readonly StageNeeds[], correlation: number): number {
  const spread = needs.map((one) => one.cv.value * one.degreeDays.value);
  const squares = spread.reduce((sum, s) => sum + s * s, 0);
  const total = spread.reduce((sum, s) => sum + s, 0);
  return Math.sqrt(squares + correlation * (total * total - squares)) / degreeDaysOf(needs);
}
