// @vitest-environment jsdom
import * as Plot from "@observablehq/plot";
import { describe, expect, test } from "vitest";
import {
  type Figure,
  type StartRow,
  describeFoliage,
  describeStarts,
  foliageFigure,
  startFigure,
  startRows,
  startText,
} from "../../src/plot/index.ts";
import { celsiusToFahrenheit } from "../../src/units.ts";
import { near } from "../support/near.ts";
import { drawn } from "./drawn.ts";
import { FROM, WANTED, porchDays, porchPlan, roomPlan } from "./class-day.ts";

const porch = porchPlan();
const room = roomPlan();
const porchRows = startRows(porch);
const roomRows = startRows(room);
const best = porchRows.find(({ rank }) => rank === 1);
const [foliage] = porchDays(best?.on ?? FROM).foliage;
if (foliage === undefined) throw new Error("monarchs eat");

const noon = (day: string): number => Date.parse(`${day}T12:00Z`);
const eating = foliage.days.filter(({ most }) => most > 0);

describe("startRows", () => {
  test("stand in the order of the calendar, with every start of the plan", () => {
    expect(porchRows).toHaveLength(porch.ranked.length);
    expect(porchRows[0]?.on).toBe(FROM);
    expect(porchRows.at(-1)?.on).toBe(WANTED);
    expect(porchRows.map(({ on }) => on)).toEqual(porchRows.map(({ on }) => on).sort());
  });

  test("stand from the coolest room to the warmest", () => {
    const degrees = roomRows.map(({ temperature }) => temperature ?? NaN);
    expect(degrees).toEqual([...degrees].sort((a, b) => a - b));
    expect([degrees[0], degrees.at(-1)]).toEqual([18, 28]);
    expect(new Set(roomRows.map(({ on }) => on))).toEqual(new Set([FROM]));
  });

  test("hold the odds of the plan and the rank by chance", () => {
    for (const [plan, rows] of [
      [porch, porchRows],
      [room, roomRows],
    ] as const) {
      const first = rows.find(({ rank }) => rank === 1);
      expect(first).toMatchObject({
        chance: plan.best?.odds.chance,
        each: plan.best?.odds.each,
        early: plan.best?.odds.early,
        late: plan.best?.odds.late,
        absence: null,
      });
      for (const { chance } of rows) expect(chance ?? 0).toBeLessThanOrEqual(first?.chance ?? 0);
    }
  });

  test("keep a start without odds, with its reason", () => {
    const unknown = startRows({
      ...porch,
      ranked: [{ on: FROM, odds: null, absence: { reason: "no-temperatures", message: "None." } }],
    });
    expect(unknown).toEqual([
      {
        on: FROM,
        temperature: null,
        rank: null,
        chance: null,
        each: null,
        early: null,
        late: null,
        absence: "None.",
      },
    ]);
    expect(startFigure(Plot, unknown, { document }).querySelector("figcaption")?.textContent).toContain(
      "not known",
    );
  });

  test("are plain data", () => {
    expect(JSON.parse(JSON.stringify(roomRows))).toEqual(roomRows);
  });
});

const figures: readonly (readonly [string, (width: number) => Figure])[] = [
  ["startFigure of days", (width) => startFigure(Plot, porchRows, { chosen: best ?? null, width, document })],
  ["startFigure of rooms", (width) => startFigure(Plot, roomRows, { unit: "F", width, document })],
  ["foliageFigure", (width) => foliageFigure(Plot, foliage, { width, document })],
];

describe.each(figures)("%s", (_, draw) => {
  test.each([320, 640, 1200])("is one named and described image %d pixels wide", (width) => {
    const figure = draw(width);
    const drawing = figure.querySelector("svg");
    expect(drawing?.getAttribute("role")).toBe("img");
    expect(drawing?.getAttribute("width")).toBe(String(width));
    expect(drawing?.getAttribute("aria-label")).toBeTruthy();
    expect(drawing?.getAttribute("aria-description")).toMatch(/\d/);
    expect(drawing?.querySelector("[aria-label]")).toBeNull();
    expect(figure.querySelector("figcaption")?.textContent).toMatch(/\.$/);
  });

  test("draws the same twice", () => {
    expect(draw(640).outerHTML).toBe(draw(640).outerHTML);
  });
});

describe("startFigure", () => {
  test("has a stem for each chance, on its day", () => {
    const figure = startFigure(Plot, porchRows, { document });
    near(
      drawn(figure, "chance", "y2", "y"),
      porchRows.map(({ chance }) => (chance ?? NaN) * 100),
    );
    near(
      drawn(figure, "chance", "x1", "x"),
      porchRows.map(({ on }) => noon(on)),
      7 * 60_000,
    );
  });

  test("stands on the temperatures of the chosen scale", () => {
    for (const unit of ["C", "F"] as const) {
      const figure = startFigure(Plot, roomRows, { unit, document });
      near(
        drawn(figure, "chance", "x1", "x"),
        roomRows.map(({ temperature }) =>
          unit === "C" ? (temperature ?? NaN) : celsiusToFahrenheit(temperature ?? NaN),
        ),
      );
      expect(figure.textContent).toContain(`°${unit}`);
    }
  });

  test("marks the best by shape and the chosen start by a rule with its name", () => {
    const chosen = porchRows[3] ?? null;
    const figure = startFigure(Plot, porchRows, { chosen, document });
    expect(figure.querySelectorAll(".best-start > *")).toHaveLength(1);
    near(drawn(figure, "chosen", "x1", "x"), [noon(chosen?.on ?? "")], 7 * 60_000);
    expect(figure.textContent).toContain("chosen: 23 May");
    const dashes = [".too-early", ".too-late"].map((line) =>
      figure.querySelector(line)?.getAttribute("stroke-dasharray"),
    );
    expect(dashes[0]).not.toBe(dashes[1]);
  });

  test("of nothing is drawn without failing", () => {
    expect(startFigure(Plot, [], { document }).querySelector("svg")).not.toBeNull();
  });
});

describe("foliageFigure", () => {
  test("has a stem and a ring for each day on which leaves are eaten", () => {
    const figure = foliageFigure(Plot, foliage, { document });
    near(
      drawn(figure, "leaves", "y2", "y"),
      eating.map(({ expected }) => expected),
    );
    near(
      drawn(figure, "leaves-most", "cy", "y"),
      eating.map(({ most }) => most),
    );
    near(
      drawn(figure, "leaves", "x1", "x"),
      eating.map(({ day }) => noon(day)),
      7 * 60_000,
    );
  });

  test("marks the day on which the leaves do not last, and no day where they do", () => {
    expect(foliage.runsOut).not.toBeNull();
    near(
      drawn(foliageFigure(Plot, foliage, { document }), "runs-out", "x1", "x"),
      [noon(foliage.runsOut ?? "")],
      7 * 60_000,
    );
    const enough = { ...foliage, supplied: 400, runsOut: null, runsOutEarly: null };
    const drawing = foliageFigure(Plot, enough, { document });
    expect(drawing.querySelectorAll(".runs-out > *")).toHaveLength(0);
    expect(drawing.textContent).not.toContain("not enough");
  });

  test("of no leaves is drawn without failing", () => {
    const none = { ...foliage, days: [], peak: null, runsOut: null };
    expect(foliageFigure(Plot, none, { document }).querySelector("svg")).not.toBeNull();
    expect(describeFoliage(none)).toBe("No leaves of milkweed are eaten.");
  });
});

describe("the words beside the figures", () => {
  test("hold the key numbers of the starts", () => {
    expect(describeStarts(porchRows)).toMatch(
      /^The best of 45 starts is \d+ (May|June), with a chance of \d+ %; an animal is then too early with \d+ % and too late with \d+ %\. The chance is at least half of that from \d+ May to \d+ June\.$/,
    );
    expect(describeStarts(roomRows, { unit: "F" })).toMatch(/starts is 6[\d.]+\u00a0°F, with/);
    expect(describeStarts([])).toBe("No chance is known for any start.");
    const row: StartRow = {
      on: FROM,
      temperature: 20,
      rank: 1,
      chance: 0,
      each: 0,
      early: 0,
      late: 1,
      absence: null,
    };
    expect(startText(row)).toBe("20\u00a0°C");
    expect(describeStarts([row, { ...row, rank: null, chance: null }])).toBe(
      "The best of 2 starts is 20\u00a0°C, with a chance of 0 %; an animal is then too early with 0 % and too late with 100 %. For 1 of them the chance is not known.",
    );
  });

  test("claim no certainty that is not there", () => {
    const row: StartRow = {
      on: FROM,
      temperature: 20,
      rank: 1,
      chance: 0.997,
      each: 0.997,
      early: 0.003,
      late: 0,
      absence: null,
    };
    expect(describeStarts([row])).toContain(
      "with a chance of >99 %; an animal is then too early with <1 % and too late with 0 %.",
    );
  });

  test("hold the key numbers of the leaves, and how long they last", () => {
    const { total, margin, withMargin } = foliage;
    const text = describeFoliage(foliage);
    for (const leaves of [total, margin, withMargin])
      expect(text).toContain(String(Math.round(leaves * 10) / 10));
    expect(text).toMatch(
      /The 80 leaves at hand run out on \d+ June, on \d+ June if all animals are early\.$/,
    );
    expect(describeFoliage({ ...foliage, supplied: null })).not.toContain("at hand");
    expect(describeFoliage({ ...foliage, runsOut: null, runsOutEarly: null })).toContain("at hand last.");
    expect(describeFoliage({ ...foliage, runsOut: null })).toMatch(
      /at hand last as expected, but run out on \d+ June if all animals are early\.$/,
    );
  });
});

test("one start, and one whose chance is not known, are told as one", () => {
  const [first] = porchRows.filter(({ rank }) => rank === 1);
  if (first === undefined) throw new Error("a start is best");
  expect(describeStarts([first])).toMatch(/^The only start is /);
  const unknown = { ...first, on: "2026-01-01", rank: null, chance: null };
  expect(describeStarts([first, unknown])).toContain(" For 1 of them the chance is not known.");
});

test("one leaf is told as one", () => {
  const few = {
    ...foliage,
    total: 1,
    withMargin: 1,
    margin: 0,
    supplied: 1,
    runsOut: null,
    runsOutEarly: null,
  };
  expect(describeFoliage(few)).toContain("about 1 leaf of");
  expect(describeFoliage(few)).toContain("The 1 leaf at hand lasts.");
});
