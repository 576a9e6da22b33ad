// @vitest-environment jsdom
import * as Plot from "@observablehq/plot";
import { describe, expect, test } from "vitest";
import {
  type Figure,
  type LoggedStage,
  type OutlookRow,
  describePaces,
  describeUpdatedWindows,
  describeWindowWidths,
  outlookRows,
  paceFigure,
  sureSince,
  updatedWindowFigure,
  updatedWindowRows,
  windowWidthFigure,
} from "../../src/plot/index.ts";
import { near } from "../support/near.ts";
import { drawn } from "./drawn.ts";
import { outlookOn, slowSeen } from "./slow-season.ts";

const today = "2013-06-24";
const days = { from: "2013-06-05", to: "2013-07-11" };
const outlooks = ["2013-06-05", "2013-06-14", today, "2013-07-07"].map((day) => outlookOn(day));
const rows = outlookRows(outlooks);
const forecasts = outlooks.map(({ forecast }) => forecast);
const [first, , now] = forecasts;
if (first === undefined || now === undefined) throw new Error("there are four evenings");
const windows = updatedWindowRows(first, now, { log: slowSeen, today });

const clock = (at: string | null | undefined): number => Date.parse(`${at?.slice(0, 19)}Z`);
/** A tenth of a pixel of a month on 600 pixels is about seven minutes. */
const SEVEN_MINUTES = 7 * 60_000;

describe("outlookRows", () => {
  test("take times without an offset for a local clock, in whatever zone they are read", () => {
    const zone = process.env["TZ"];
    // Clocks went back on 1 November: the window has 48 hours on the wall and 49 in New York.
    const window = { early: "2026-10-31T12:00:00", expected: null, late: "2026-11-02T12:00:00" };
    const [outlook] = outlooks;
    if (outlook === undefined) throw new Error("there are four evenings");
    const stages = outlook.forecast.stages.map((one) => ({ ...one, begins: { ...one.begins, ...window } }));
    const local = { ...outlook, forecast: { ...outlook.forecast, stages } };
    try {
      process.env["TZ"] = "America/New_York";
      expect(outlookRows([local])[0]?.windowDays).toBe(2);
    } finally {
      if (zone === undefined) delete process.env["TZ"];
      else process.env["TZ"] = zone;
    }
  });

  test("hold the widths of the windows and the belief, evening by evening", () => {
    outlooks.forEach(({ day, forecast, withoutLog, learned }, i) => {
      const [adult, without] = [forecast, withoutLog].map(
        ({ stages }) => stages.find(({ stage }) => stage === "adult")?.begins,
      );
      expect(rows[i]).toMatchObject({
        day,
        expected: adult?.expected,
        paceLow: learned.pace.low,
        paceMiddle: learned.pace.middle,
        paceHigh: learned.pace.high,
      });
      const width = (window: typeof adult): number =>
        (Date.parse(window?.late ?? "") - Date.parse(window?.early ?? "")) / 86_400_000;
      expect(rows[i]?.windowDays).toBeCloseTo(width(adult), 9);
      expect(rows[i]?.windowDaysWithoutLog).toBeCloseTo(width(without), 9);
    });
  });

  test("are the same with the log and without it while the log is empty, and narrower with it later", () => {
    expect(rows[0]?.windowDays).toBe(rows[0]?.windowDaysWithoutLog);
    for (const { windowDays, windowDaysWithoutLog } of rows.slice(1))
      expect(windowDays).toBeLessThan(windowDaysWithoutLog ?? NaN);
  });

  test("have no width for a stage that is not ahead", () => {
    expect(outlookRows(outlooks, "egg")[0]).toMatchObject({ expected: null, windowDays: null });
  });

  test("are plain data", () => {
    expect(JSON.parse(JSON.stringify(rows))).toEqual(rows);
  });
});

describe("updatedWindowRows", () => {
  test("hold the windows of the first forecast and of now, and none for stages that lie behind", () => {
    expect(windows.map(({ begins }) => begins)).toEqual([
      ...first.stages.slice(0, -1).map(({ stage }) => stage),
      "darkening",
      "adult",
    ]);
    for (const { stage, begins } of first.stages)
      expect(windows.find((row) => row.begins === stage)?.first).toEqual(begins);
    for (const { stage, begins } of now.stages)
      expect(windows.find((row) => row.begins === stage)?.now).toEqual(begins);
    expect(windows.find(({ begins }) => begins === "instar-3")?.now).toBeNull();
  });

  test("part the log at the evening of today", () => {
    expect(windows.find(({ begins }) => begins === "instar-5")).toMatchObject({
      seen: [{ day: "2013-06-24", count: 4 }],
      later: [
        { day: "2013-06-25", count: 4 },
        { day: "2013-06-26", count: 1 },
      ],
    });
  });
});

const figures: readonly (readonly [string, (width: number) => Figure])[] = [
  ["updatedWindowFigure", (width) => updatedWindowFigure(Plot, windows, { today, days, width, document })],
  ["windowWidthFigure", (width) => windowWidthFigure(Plot, rows, { today, days, width, document })],
  ["paceFigure", (width) => paceFigure(Plot, rows, { today, days, width, document })],
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

  test("marks the end of today", () => {
    const evening = Date.parse("2013-06-25T00:00Z");
    near(drawn(draw(640), "today", "x1", "x"), [evening], SEVEN_MINUTES);
  });

  test("draws the same twice", () => {
    expect(draw(640).outerHTML).toBe(draw(640).outerHTML);
  });
});

describe("updatedWindowFigure", () => {
  const figure = updatedWindowFigure(Plot, windows, { today, days, document });

  test("draws the bars and the ticks of both forecasts", () => {
    const ahead = windows.flatMap((row) => row.now ?? []);
    const behind = windows.map((row) => row.first);
    for (const [mark, bars] of [
      ["first", behind],
      ["now", ahead],
    ] as const) {
      near(
        drawn(figure, mark, "x1", "x"),
        bars.map(({ early }) => clock(early)),
        SEVEN_MINUTES,
      );
      near(
        drawn(figure, mark, "x2", "x"),
        bars.map(({ late }) => clock(late)),
        SEVEN_MINUTES,
      );
      near(
        drawn(figure, `${mark}-expected`, "x1", "x"),
        bars.map(({ expected }) => clock(expected)),
        SEVEN_MINUTES,
      );
    }
  });

  test("draws a full diamond for each day of the log so far and a hollow one for each later", () => {
    expect(figure.querySelectorAll(".seen > *")).toHaveLength(windows.flatMap(({ seen }) => seen).length);
    expect(figure.querySelectorAll(".later > *")).toHaveLength(windows.flatMap(({ later }) => later).length);
    const fills = [".seen", ".later"].map((mark) => figure.querySelector(mark)?.getAttribute("fill"));
    expect(new Set(fills).size).toBe(2);
  });

  test("draws a cross for what was kept aside, and leaves the names where they were", () => {
    const aside = [{ stage: "adult", on: "2013-06-12", count: 1 }] as const;
    const crossed = updatedWindowRows(first, now, { log: slowSeen, aside, today });
    const drawing = updatedWindowFigure(Plot, crossed, { today, days, document });
    expect(figure.querySelector(".aside")?.childElementCount ?? 0).toBe(0);
    expect(drawing.querySelectorAll(".aside > *")).toHaveLength(1);
    expect(drawing.querySelector("figcaption")?.textContent).toContain("cross: kept aside");
    expect(describeUpdatedWindows(crossed, today)).toContain("kept aside: 12 June (1)");
    const places = (one: Figure): (string | null)[] =>
      Array.from(one.querySelectorAll("text"), (text) => text.getAttribute("transform"));
    expect(places(drawing)).toEqual(places(figure));
  });

  test("leaves a bar open where the temperatures end, and says so", () => {
    const open = windows.map((row) => ({ ...row, now: row.now && { ...row.now, late: null } }));
    const drawing = updatedWindowFigure(Plot, open, { today, document });
    expect(drawing.querySelectorAll(".open-end > *")).toHaveLength(now.stages.length + now.signs.length);
    expect(drawing.querySelector("figcaption")?.textContent).toContain("beyond the temperatures");
  });
});

describe("windowWidthFigure", () => {
  test("has a point for each width, on a full and on a dashed line", () => {
    const figure = windowWidthFigure(Plot, rows, { today, days, document });
    near(
      drawn(figure, "with-log-day", "cy", "y"),
      rows.map((row) => row.windowDays ?? NaN),
      1e-6,
    );
    near(
      drawn(figure, "without-log-day", "cy", "y"),
      rows.map((row) => row.windowDaysWithoutLog ?? NaN),
      1e-6,
    );
    const dashes = [".with-log", ".without-log"].map((line) =>
      figure.querySelector(line)?.getAttribute("stroke-dasharray"),
    );
    expect(dashes[0]).not.toBe(dashes[1]);
  });
});

describe("paceFigure", () => {
  test.each(["paceLow", "paceMiddle", "paceHigh"] as const)("has a point for each %s", (key) => {
    const figure = paceFigure(Plot, rows, { today, days, document });
    near(
      drawn(figure, key, "cy", "y"),
      rows.map((row) => row[key]),
      1e-6,
    );
  });
});

test("figures of nothing are drawn without failing", () => {
  expect(updatedWindowFigure(Plot, [], { today, document }).querySelector("svg")).not.toBeNull();
  expect(windowWidthFigure(Plot, [], { today, document }).querySelector("svg")).not.toBeNull();
  expect(paceFigure(Plot, [], { today, document }).querySelector("svg")).not.toBeNull();
});

describe("the words beside the figures", () => {
  const invented = (day: string, paceLow: number, paceHigh: number): OutlookRow => ({
    day,
    expected: null,
    windowDays: null,
    windowDaysWithoutLog: null,
    paceLow,
    paceMiddle: (paceLow + paceHigh) / 2,
    paceHigh,
  });

  test("hold the key numbers", () => {
    expect(describeUpdatedWindows(windows, today)).toMatch(
      /^As seen on 24 June\. First instar: behind them; on the first day about \d+ June, .*; seen on 8 June \(2\), 9 June \(6\), 10 June \(2\)\./,
    );
    expect(describeUpdatedWindows(windows, today)).toMatch(
      /Adult: about \d+ July, .*; to be seen on 8 July \(2\)/,
    );
    expect(describeWindowWidths(rows)).toMatch(
      /^With the log the window goes from [\d.]+ days on 5 June to [\d.]+ days on 7 July\. Without it, it goes from/,
    );
    expect(describePaces(rows)).toMatch(
      /^The pace on 5 June is \d\.\d\d \(0\.\d\d to 1\.\d\d\); on 7 July 1\.\d\d \(/,
    );
  });

  test("say so when there is nothing to say", () => {
    expect(describeUpdatedWindows([], today)).toBe("There are no stages to show.");
    expect(describeWindowWidths([invented("2013-06-05", 0.9, 1.1)])).toBe("No window is known on any day.");
    expect(describePaces([])).toBe("There is no belief to show.");
  });

  test("find the day from which on a pace of 1 is ruled out for good", () => {
    const a = invented("2013-06-05", 1.01, 1.2);
    const b = invented("2013-06-06", 0.99, 1.2);
    const c = invented("2013-06-07", 1.01, 1.2);
    const d = invented("2013-06-08", 1.02, 1.2);
    expect(sureSince([a, b, c, d])).toBe(c);
    expect(sureSince([a, c, d])).toBe(a);
    expect(sureSince([a, b])).toBeNull();
    expect(sureSince([])).toBeNull();
    const fast = invented("2013-06-09", 0.8, 0.95);
    expect(sureSince([a, c, fast])).toBe(fast);
    expect(describePaces([a, fast])).toContain(
      "From 9 June on, a pace of 1 lies outside the outer points: the animals are faster",
    );
    expect(describePaces([a, b])).toContain("On the last day a pace of 1 is still between the outer points.");
  });
});

test("a stage without any date leaves the axis of the others as it is", () => {
  const none = { early: null, expected: null, late: null };
  const bare = windows.map((row, i) =>
    i === 0 ? { ...row, first: none, now: null, seen: [], later: [] } : row,
  );
  const figure = updatedWindowFigure(Plot, bare, { today, document });
  const [begin, end] = figure.scale("x")?.domain ?? [];
  expect(Number(begin)).toBeGreaterThan(0);
  expect(Number(end)).toBeGreaterThan(Number(begin));
});

test("the dead and the lost are not seen to have begun a stage", () => {
  const dead = { stage: "pupa", on: "2013-06-30", count: 1, fate: "died" } as const;
  const seenIn = (log: readonly LoggedStage[]) =>
    updatedWindowRows(first, now, { log, aside: log, today }).map((row) => [row.seen, row.later, row.aside]);
  expect(seenIn([dead, { ...dead, fate: "lost" }])).toEqual(seenIn([]));
});

test("a width of nothing leaves the axis its labels", () => {
  const day = { from: today, to: today };
  const figure = windowWidthFigure(Plot, rows.slice(0, 1), { today, days: day, width: 0, document });
  expect(figure.querySelectorAll("[class^=tick], g text").length).toBeGreaterThan(0);
});
