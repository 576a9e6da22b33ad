import { given } from "../../given.ts";
import type { Forecast } from "../../forecast/question/result.ts";
import { type CsvCell, csvText, toThousandths } from "../layout/csv-table.ts";

/**
 * The dates of a forecast as CSV, one row for each stage and sign in the order of time: early, expected and late as
 * ISO 8601, degree-days in °C·day. An empty date is one that is not known; the last column says why.
 */
export function forecastCsv(forecast: Forecast): string {
  given(forecast, ["forecast"], "a forecast, as forecast returns it", "stages", "found", "notes", "tables");
  const { species, stages, signs } = forecast;
  return csvText(
    ["species", "begins", "early", "expected", "late", "degree-days", "reason"],
    stages.flatMap(({ stage, begins, degreeDays, absence }): CsvCell[][] => [
      ...(stage === "adult" ? signs : []).map((one): CsvCell[] => [
        species,
        one.sign,
        one.begins.early,
        one.begins.expected,
        one.begins.late,
        null,
        one.absence?.message ?? null,
      ]),
      [
        species,
        stage,
        begins.early,
        begins.expected,
        begins.late,
        toThousandths(degreeDays),
        absence?.message ?? null,
      ],
    ]),
  );
}
