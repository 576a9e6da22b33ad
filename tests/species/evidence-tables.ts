import { SPECIES, findSpecies } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { daysAt, needsOf, variationOf } from "../support/constant-temperature.ts";
import { published } from "../support/published.ts";
import {
  type Line,
  incubators,
  leaveOneOutError,
  meanAbsoluteError,
  outdoorError,
  predictedDays,
  relativeError,
  ways,
} from "./pupal-fit.ts";

// Tables of docs/evidence.md, made from the fixtures, so that no figure there is typed by hand.

const percent = (value: number, digits = 1): string => `${(100 * value).toFixed(digits)} %`;
const signed = (value: number): string => `${value < 0 ? "−" : "+"}${percent(Math.abs(value))}`;
const row = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
const span = ([from, to]: readonly [number, number]): string =>
  to - from < 5e-4 ? signed(from) : `${signed(from)} to ${signed(to)}`;

/** Way, base, constant, error on the fitted rows, left out, outdoors in summer and fall. */
export function fitTable(): readonly string[] {
  return ways.map((way) => {
    const line = way.fit(incubators);
    return row([
      way.name,
      line.lower.toFixed(1),
      line.degreeDays.toFixed(1),
      percent(meanAbsoluteError(line, incubators)),
      percent(leaveOneOutError(way)),
      span(outdoorError(line, "summer")),
      span(outdoorError(line, "fall")),
    ]);
  });
}

/** Temperature, days seen, days of the published and of the refitted set with their errors. */
export function incubatorTable(refitted: Line): readonly string[] {
  const [publishedWay] = ways;
  if (!publishedWay) throw new Error("no published set");
  const line = publishedWay.fit(incubators);
  return incubators.map((incubator) =>
    row([
      String(incubator.temperature),
      incubator.days.toFixed(2),
      ...[line, refitted].flatMap((one) => [
        predictedDays(one, incubator.temperature).toFixed(2),
        signed(relativeError(one, incubator)),
      ]),
    ]),
  );
}

/** CV of egg to adult and of second instar to adult for several stage correlations. */
export function correlationTable(): readonly string[] {
  const all = danausPlexippus.stages;
  const dosed = needsOf(danausPlexippus, ["instar-2", "instar-3", "instar-4", "instar-5", "pupa"]);
  return [0, 0.2, 0.4, 0.6].map((r) =>
    row([r.toFixed(1), percent(variationOf(all, r)), percent(variationOf(dosed, r))]),
  );
}

/**
 * Correlation between larval and pupal days of one animal, from the SDs of both and of their sum, at the
 * temperatures where all three are known. Rounding of the two dates adds 1/6 d² to each variance and, since
 * the date of pupation enters both stages with opposite signs, takes 1/12 d² from their covariance.
 */
export function larvaPupaCorrelations(): readonly {
  temperature: number;
  raw: number;
  corrected: number | null;
}[] {
  return published("monarch-rearing").constant.rows.flatMap(
    ({ temperature, pupaDays, doseToPupationDays, doseToAdultDays }) => {
      const [larva, pupa, total] = [doseToPupationDays?.sd, pupaDays.sd, doseToAdultDays?.sd];
      if (larva == null || pupa == null || total == null) return [];
      const covariance = (total ** 2 - larva ** 2 - pupa ** 2) / 2;
      const variances = [larva ** 2 - 1 / 6, pupa ** 2 - 1 / 6] as const;
      return {
        temperature,
        raw: covariance / (larva * pupa),
        corrected:
          Math.min(...variances) > 0 ? (covariance + 1 / 12) / Math.sqrt(variances[0] * variances[1]) : null,
      };
    },
  );
}

/** Temperature, raw correlation, correlation after rounding was taken out. */
export function larvaPupaTable(): readonly string[] {
  const two = (value: number): string => value.toFixed(2).replace("-", "−");
  return larvaPupaCorrelations().map(({ temperature, raw, corrected }) =>
    row([String(temperature), two(raw), corrected === null ? "not to be had" : two(corrected)]),
  );
}

/** Species, days at 25 °C by its stages, days by the published whole-life pair, and how far they are apart. */
export function wholeLifeTable(): readonly string[] {
  return published("development-times").rows.flatMap((pair) => {
    if (pair.kind !== "whole-life") return [];
    const stages = daysAt(findSpecies(pair.species).stages, pair.temperature);
    const whole = pair.degreeDays / (pair.temperature - pair.lower);
    return row([pair.species, stages.toFixed(1), whole.toFixed(1), signed(stages / whole - 1)]);
  });
}

/** Species and the CV of egg to adult that its constants and its stage correlation come to. */
export function spreadTable(): readonly string[] {
  return SPECIES.map(({ species, stages, stageCorrelation }) =>
    row([species, percent(variationOf(stages, stageCorrelation.value))]),
  );
}
