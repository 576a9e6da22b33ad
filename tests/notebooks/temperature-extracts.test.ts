import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

// Source: weather.csv of vega-datasets 3.2.1, NOAA daily observations; see fixtures/temperatures/README.md.
const SOURCE = new URL("../../node_modules/vega-datasets/data/weather.csv", import.meta.url);

function rowsOf(path: string | URL): string[][] {
  const text = readFileSync(path, "utf8").trim();
  return text.split(/\r?\n/).map((line) => line.split(","));
}

const [header = [], ...rows] = rowsOf(SOURCE);
const [location, date, max, min] = ["location", "date", "temp_max", "temp_min"].map((name) =>
  header.indexOf(name),
);

test.each([
  ["New York", "new-york-2012-2015.csv"],
  ["Seattle", "seattle-2012-2015.csv"],
])("the extract of %s is the published columns, row for row", (place, file) => {
  const published = rows
    .filter((row) => row[location ?? -1] === place)
    .map((row) => [row[date ?? -1], row[max ?? -1], row[min ?? -1]]);
  expect(published).toHaveLength(1461);
  const extract = rowsOf(new URL(`../../fixtures/temperatures/${file}`, import.meta.url));
  expect(extract).toEqual([["date", "temp_max", "temp_min"], ...published]);
});

test("the hourly normals of Seattle are the published columns, row for row", () => {
  const source = new URL(
    "../../node_modules/vega-datasets/data/seattle-weather-hourly-normals.csv",
    import.meta.url,
  );
  const [names = [], ...published] = rowsOf(source);
  expect(names).toEqual(["date", "pressure", "temperature", "wind"]);
  expect(published).toHaveLength(8759);
  const extract = rowsOf(new URL("../../fixtures/temperatures/seattle-hourly-normals.csv", import.meta.url));
  expect(extract).toEqual([
    ["date", "temperature"],
    ...published.map(([at, , temperature]) => [at, temperature]),
  ]);
});
