import { greatest as highest } from "../../numeric/extremes.ts";
import type { RateModel, RateParameters, RatePoint } from "../../response/rate-model.ts";
import type { TrialColumns } from "../threshold/trial.ts";

/**
 * A model and trials as residuals of a vector of parameters, made without a unit: each rate over the greatest one
 * and times the root of its weight, so that weights never meet the optimiser.
 */
export interface RateProblem<Name extends string> {
  readonly least: readonly number[];
  readonly greatest: readonly number[];
  readonly starts: readonly (readonly number[])[];
  /** Scaled rates of the trials. */
  readonly observed: readonly number[];
  /** By this the squared scaled residuals become those of the rates, per day². */
  readonly unit: number;
  /** Parameters of a vector, and back. */
  named(values: readonly number[]): RateParameters<Name>;
  vector(parameters: RateParameters<Name>): number[];
  /** Scaled rates of the model at the trials. */
  fitted(values: readonly number[]): number[];
  /** Sum of the squared scaled residuals. */
  cost(values: readonly number[]): number;
  /** Derivatives of the fitted rates: a row for each trial, a column for each parameter. */
  jacobian(values: readonly number[]): number[][];
}

/**
 * The problem in the model's search coordinates, or in its parameters themselves. @internal
 */
export function rateProblem<Name extends string>(
  model: RateModel<Name>,
  { temperatures, rates, weights }: TrialColumns,
  {
    starts,
    coordinates,
  }: {
    readonly starts?: readonly RateParameters<Name>[] | undefined;
    readonly coordinates: "search" | "parameters";
  },
): RateProblem<Name> {
  const points: RatePoint[] = temperatures.map((temperature, i) => ({ temperature, rate: rates[i] ?? 0 }));
  const guess = model.guess(points);
  const search = coordinates === "search" ? model.search : undefined;
  const listed = (record: RateParameters<Name>): number[] => model.parameters.map(({ name }) => record[name]);
  const vector = (parameters: RateParameters<Name>): number[] =>
    listed(search === undefined ? parameters : search.to(parameters));
  const least = listed(guess.least);
  const greatest = listed(guess.greatest);
  const within = (value: number, j: number): number =>
    Math.min(greatest[j] ?? value, Math.max(least[j] ?? value, value));

  const top = highest(rates);
  const scales = weights.map((weight) => Math.sqrt(weight) / top);
  const observed = rates.map((rate, i) => rate * (scales[i] ?? 1));

  const named = (values: readonly number[]): RateParameters<Name> => {
    const record: Record<Name, number> = { ...guess.least };
    model.parameters.forEach(({ name }, j) => {
      record[name] = values[j] ?? Number.NaN;
    });
    return search === undefined ? record : search.from(record);
  };
  const fitted = (values: readonly number[]): number[] => {
    const parameters = named(values);
    return temperatures.map((temperature, i) => model.rate(temperature, parameters) * (scales[i] ?? 1));
  };

  // Differences of the fourth order: with steps of 2e-5 both their own error and rounding stay near 1e-11.
  const jacobian = (values: readonly number[]): number[][] => {
    const columns = values.map((value, j) => {
      const size = Math.max(Math.abs(value), 1e-3 * ((greatest[j] ?? 0) - (least[j] ?? 0)));
      const step = 2e-5 * size;
      const moved = (steps: number): number[] =>
        fitted(values.map((other, k) => (k === j ? other + steps * step : other)));
      const [a, b, c, d] = [moved(-2), moved(-1), moved(1), moved(2)];
      return a.map((far, i) => (far - 8 * (b[i] ?? 0) + 8 * (c[i] ?? 0) - (d[i] ?? 0)) / (12 * step));
    });
    return temperatures.map((_, i) => columns.map((column) => column[i] ?? 0));
  };

  return {
    least,
    greatest,
    starts: (starts ?? guess.starts).map((start) => vector(start).map(within)),
    observed,
    unit: top * top,
    named,
    vector,
    fitted,
    cost: (values) => fitted(values).reduce((sum, value, i) => sum + ((observed[i] ?? 0) - value) ** 2, 0),
    jacobian,
  };
}
