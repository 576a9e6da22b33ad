import { greatest, least } from "../numeric/extremes.ts";
import { InputError, finite } from "../errors.ts";
import { given } from "../given.ts";
import type { Celsius } from "../units.ts";

/** One parameter of a rate model. */
export interface RateParameter<Name extends string = string> {
  readonly name: Name;
  readonly unit: string;
  readonly meaning: string;
}

/** Values of a model's parameters by name. */
export type RateParameters<Name extends string = string> = Readonly<Record<Name, number>>;

/** Development per day seen at a constant temperature. */
export interface RatePoint {
  readonly temperature: Celsius;
  /** 1 / days, above 0. */
  readonly rate: number;
}

/** Where a fit may look and where it begins. */
export interface RateGuess<Name extends string = string> {
  /** Least and greatest value of each parameter, or of the coordinate that stands in for it in the search. */
  readonly least: RateParameters<Name>;
  readonly greatest: RateParameters<Name>;
  /** Sets to begin from, always the same for the same points. */
  readonly starts: readonly RateParameters<Name>[];
}

/** A nonlinear model of the rate of development, as a value. */
export interface RateModel<Name extends string = string> {
  readonly id: string;
  /** In the order of the formula. */
  readonly parameters: readonly RateParameter<Name>[];
  /** Why values are impossible together, or `null`. */
  fault(parameters: RateParameters<Name>): string | null;
  /** Development per day at a temperature, never below 0, 0 outside the limits. Parameters are not checked. */
  rate(temperature: Celsius, parameters: RateParameters<Name>): number;
  /** Temperature at which the rate is greatest. Parameters are not checked. */
  optimum(parameters: RateParameters<Name>): Celsius;
  guess(points: readonly RatePoint[]): RateGuess<Name>;
  /**
   * Coordinates in which a fit moves, each under the name of the parameter it stands in for: for models whose own
   * parameters make a valley too narrow to follow. Default: the parameters themselves.
   */
  readonly search?: {
    to(parameters: RateParameters<Name>): RateParameters<Name>;
    from(coordinates: RateParameters<Name>): RateParameters<Name>;
  };
}

/**
 * The rate of a model with given parameters, as a function of temperature: what `developmentClock` and
 * `rateSummationEffect` take.
 * @param model One of the models. @param parameters All of its parameters.
 * @returns Development per day at a temperature in °C, never below 0.
 * @throws {InputError} `invalid-number` for a parameter that is missing or none; `invalid-parameters` for values
 *   that are impossible together.
 * @example
 * rateFunction(briere1, { a: 1e-4, lower: 10, upper: 35 })(20).toFixed(6) // → "0.077460"
 */
export function rateFunction<Name extends string>(
  model: RateModel<Name>,
  parameters: RateParameters<Name>,
): (temperature: Celsius) => number {
  checkParameters(model, parameters);
  return (temperature) => model.rate(temperature, parameters);
}

/**
 * The temperature at which development is fastest, and the rate there.
 * @param model One of the models. @param parameters All of its parameters.
 * @returns Temperature in °C and development per day.
 * @throws {InputError} As {@link rateFunction}.
 * @example
 * optimumOf(briere1, { a: 1e-4, lower: 10, upper: 35 }).temperature.toFixed(4) // → "29.2066"
 */
export function optimumOf<Name extends string>(
  model: RateModel<Name>,
  parameters: RateParameters<Name>,
): { temperature: Celsius; rate: number } {
  checkParameters(model, parameters);
  const temperature = model.optimum(parameters);
  return { temperature, rate: model.rate(temperature, parameters) };
}

/** Refuses parameters that are missing, no numbers, or impossible together. @internal */
export function checkParameters<Name extends string>(
  model: RateModel<Name>,
  parameters: RateParameters<Name>,
): void {
  given(model, ["model"], "a rate model, such as briere1", "parameters", "rate", "optimum", "fault");
  given(parameters, ["parameters"], "an object of parameters");
  for (const { name, meaning } of model.parameters) finite(parameters[name], ["parameters", name], meaning);
  const fault = model.fault(parameters);
  if (fault === null) return;
  throw new InputError("invalid-parameters", `the parameters of ${model.id} do not fit together: ${fault}.`, {
    path: ["parameters"],
    value: parameters,
  });
}

/** The greater number, or 0: a rate is never negative, and NaN from an overflow is no rate. @internal */
export function atLeastNothing(rate: number): number {
  return rate > 0 ? rate : 0;
}

/**
 * The factor by which a shape best meets the points, in least squares; 1 where the shape is 0 at all of them.
 * Gives starts for a parameter that only multiplies. @internal
 */
export function bestFactor(points: readonly RatePoint[], shape: (temperature: Celsius) => number): number {
  let [both, own] = [0, 0];
  for (const { temperature, rate } of points) {
    const value = shape(temperature);
    both += value * rate;
    own += value * value;
  }
  return own > 0 && both > 0 ? both / own : 1;
}

/** Coldest and hottest temperature of points. @internal */
export function temperatureRange(points: readonly RatePoint[]): [coldest: Celsius, hottest: Celsius] {
  const temperatures = points.map(({ temperature }) => temperature);
  return [least(temperatures), greatest(temperatures)];
}

/**
 * How far a limit stays outside the temperatures at which something developed, °C: no chamber is known more exactly,
 * and a curve that ends within it has no slope to follow. @internal
 */
export const MARGIN = 0.01;
