// @vitest-environment jsdom
import * as Plot from "@observablehq/plot";
import { describe, expect, test } from "vitest";
import {
  type Figure,
  dayLengthFigure,
  dayLengthRows,
  describeDayLengths,
  describeLastEggs,
  describeSeasons,
  lastEggRows,
  lastEggsFigure,
  seasonFigure,
  seasonRows,
} from "../../src/plot/index.ts";
import { dayLength } from "../../src/diurnal/day-length.ts";
import { dailyTemperatures } from "../../src/temperature/daily.ts";
import { dayNumber } from "../../src/time/civil-day.ts";
import { seasonAt } from "./two-places.ts";

const places = [seasonAt("New York"), seasonAt("Seattle")];
const rows = seasonRows(places);
const shares = lastEggRows(places);
const lengths = dayLengthRows(places);

const figures: readonly (readonly [string, (width: number) => Figure])[] = [
  ["seasonFigure", (width) => seasonFigure(Plot, rows, { width, document })],
  ["lastEggsFigure", (width) => lastEggsFigure(Plot, shares, { width, document })],
  ["dayLengthFigure", (width) => dayLengthFigure(Plot, lengths, { width, document })],
];

describe.each(figures)("%s", (_, draw) => {
  test.each([320, 640, 1200])("is one named and described image %d pixels wide", (width) => {
    const figure = draw(width);
    const drawing = figure.querySelector("svg[role=img]");
    expect(drawing?.getAttribute("width")).toBe(String(width));
    expect(drawing?.getAttribute("aria-label")).toBeTruthy();
    expect(drawing?.getAttribute("aria-description")).toMatch(/\d/);
    expect(figure.querySelector("figcaption")?.textContent).toMatch(/\.$/);
    expect(figure.textContent).toContain("Seattle");
  });
});

test("figures of nothing are drawn without failing", () => {
  for (const draw of [seasonFigure, lastEggsFigure, dayLengthFigure])
    expect(draw(Plot, [], { document }).querySelector("svg")).not.toBeNull();
});

/** Days since the first of January of the year that seasons are laid on, for a mark drawn in one panel or more. */
function days(figure: Figure, mark: string, attribute: string): number[] {
  const axis = figure.scale("x");
  return Array.from(figure.querySelectorAll(`.${mark} > *`), (shape) =>
    Math.floor(Number(axis?.invert?.(Number(shape.getAttribute(attribute)))) / 86_400_000),
  );
}

describe("seasonFigure", () => {
  const figure = seasonFigure(Plot, rows, { document });

  test("has a bar for each whole brood, from its eggs to its adults", () => {
    const whole = rows.flatMap(({ broods }) => broods.filter(({ adults }) => adults !== null));
    const inReference = (day: string): number => dayNumber(`2000${day.slice(4)}`);
    expect(days(figure, "brood", "x1")).toEqual(whole.map(({ eggs }) => inReference(eggs)));
    expect(days(figure, "brood", "x2")).toEqual(whole.map(({ adults }) => inReference(adults ?? "")));
    const unfinished = rows.flatMap(({ broods }) => broods.filter(({ adults }) => adults === null));
    expect(figure.querySelectorAll(".brood-unfinished > *")).toHaveLength(unfinished.length);
    expect(figure.querySelectorAll(".last-eggs > *")).toHaveLength(8);
    expect(figure.querySelectorAll(".ends-by-cold > *")).toHaveLength(8);
  });

  test("lays southern seasons from midwinter to midwinter", () => {
    // New York moved by half a year, to the day.
    const { outlook } = seasonAt("New York", (record) =>
      dailyTemperatures("2011-07-02", record.min, record.max),
    );
    expect(outlook.hemisphere).toBe("south");
    const moved = seasonFigure(Plot, seasonRows([{ name: "south", outlook }]), { document });
    const [first = 0] = days(moved, "brood", "x1");
    expect(first).toBe(dayNumber("1999-11-18"));
    expect(moved.textContent).toContain("1 Dec");
  });
});

describe("lastEggsFigure", () => {
  test("has a point for each date with the share of the seasons", () => {
    const figure = lastEggsFigure(Plot, shares, { document });
    const axis = figure.scale("y");
    const found = Array.from(figure.querySelectorAll(".share > *"), (dot) =>
      Number(axis?.invert?.(Number(dot.getAttribute("cy")))),
    );
    expect(found.map(Math.round)).toEqual(shares.map(({ share }) => Math.round(share * 100)));
  });
});

describe("dayLengthRows", () => {
  test("hold the day length of each emergence", () => {
    const [newYork] = places;
    const emergences = lengths.filter(({ place, brood }) => place === "New York" && brood !== null);
    expect(emergences.map(({ hours }) => hours)).toEqual(
      newYork?.outlook.broods.flatMap(({ adults }) =>
        adults === null ? [] : [dayLength(`2000-${adults.middle}`, 40.7, { longitude: -74 })],
      ),
    );
    expect(dayLengthRows(places.map((one) => ({ ...one, place: null })))).toEqual([]);
  });
});

describe("the words beside the figures", () => {
  test("hold the key numbers", () => {
    expect(describeSeasons(rows)).toMatch(
      /^New York 2012 has 3 broods: adults of brood 1 on \d+ June, .*; it ends on 29 October by cold\./,
    );
    expect(describeLastEggs(shares)).toMatch(
      /^Eggs at New York: laid by 1 September they make it in 4 of 4 seasons, laid by 3 September they make it in 2 of 4/,
    );
    expect(describeDayLengths(lengths)).toMatch(
      /^The longest day at New York has 15\.1 hours; 15\.\d hours on \d+ June for brood 1/,
    );
  });

  test("say so when there is nothing to say", () => {
    expect(describeSeasons([])).toBe("There are no seasons to show.");
    expect(describeLastEggs([])).toBe("There is no last date for eggs.");
    expect(describeDayLengths([])).toBe("No place is known for a day length.");
  });
});
