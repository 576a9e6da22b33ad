import { readFileSync } from "node:fs";
import * as core from "../../src/index.ts";
import * as plot from "../../src/plot/index.ts";
import * as read from "../../src/read/index.ts";
import * as sql from "../../src/sql/index.ts";
import * as write from "../../src/write/index.ts";
import { fairWeather } from "../support/fair-weather.ts";
import { inventedDays } from "../support/invented-season.ts";
import { inventedLogger, inventedStation } from "../support/room.ts";

/** A public function and arguments that it takes, made anew each time. */
export interface Call {
  readonly name: string;
  readonly entry: "core" | "read" | "write" | "plot" | "sql";
  readonly run: (...given: readonly unknown[]) => unknown;
  readonly args: () => unknown[];
  /** How many arguments it needs; those after them have defaults. */
  readonly needed: number;
}

const fixture = (name: string): string =>
  readFileSync(new URL(`../../fixtures/${name}`, import.meta.url), "utf8");

const STAGES = ["egg", "instar-1", "instar-3", "pupa", "adult"] as const;
const monarch = core.findSpecies("monarch");
const days = inventedDays("2026-05-01", 120);
const years = inventedDays("2021-01-01", 4 * 365 + 1);
const zone = "America/New_York";
const place = { latitude: 40.7, longitude: -74 };
const found = { stage: "egg", on: "2026-06-08", count: 12 } as const;
const input = (): core.ForecastInput => ({
  lifeCycle: monarch,
  found: { ...found },
  temperatures: days,
  zone,
  shares: [0.1, 0.5, 0.9],
});
const result = core.forecast(input());
const seen = (): core.LogEntry[] => [
  core.logEntry({ stage: "instar-1", on: "2026-06-12", count: 9, notYet: "2026-06-11" }),
  core.logEntry({ stage: "pupa", on: "2026-06-27", count: 3, note: "on the lid", cohort: "porch" }),
  core.logEntry({ stage: "instar-3", on: "2026-06-18", count: 1, fate: "died" }),
];
const learned = core.learn(input(), seen().slice(0, 1));
const trials = (): core.Trial[] =>
  [
    [15, 40, 8],
    [18, 28.2, 12],
    [21, 21.5, 10],
    [25, 16.1, 9],
    [28, 13.9, 9],
    [31, 13.1, 4],
    [33, 14.8, 2],
  ].map(([temperature = 0, of = 1, weight = 1]) => ({ temperature, days: of, weight }));
const station = inventedStation("2026-06-01", 30);
const logger = inventedLogger(station, { offset: 12, damping: 0.5, rangeRatio: 0.3, scatter: 0.4 });
const relation = core.relateRoom(logger, station);
const weather = fairWeather("2026-07-05T04:00Z", 60);
const gappy = core.dailyTemperatures("2026-05-01", [8, NaN], [20, NaN]);
const inRoom = core.roomTemperatures(station, relation);
const warm = core.constantTemperature(20, { from: "2026-08-29", to: "2026-10-01" });
const cohort = (): core.PlanCohort => ({ name: "porch", lifeCycle: monarch, forecast: result, cages: 1 });
const plan = core.dayPlan([cohort()]);
const releaseOptions = (): core.ReleaseOptions => ({ lifeCycle: monarch, place: { ...place }, zone });
const release = core.releaseHours([{ at: "2026-07-05T07:00" }], weather, releaseOptions());
const target = (): core.DateTarget => ({
  lifeCycle: monarch,
  start: { stage: "pupa", count: 12, age: "new" },
  day: "2026-06-12",
  temperatures: core.constantTemperature(24),
});
const startPlan = core.startFor(target());
const seasonInput = (): core.SeasonInput => ({
  lifeCycle: monarch,
  temperatures: years,
  hemisphere: "north",
  firstEggs: "05-20",
  place: { ...place },
  zone,
  frostBelow: 0,
  share: 0.9,
  level: 0.95,
});
const outlook = core.season(seasonInput());
const parameters = { a: 0.0004, lower: 10, upper: 35 };
const rows = core.lifeTable([
  { stage: "egg", entered: 20, died: 2, censored: 1 },
  { stage: "pupa", entered: 17, died: 3 },
]);
const logTable = core.lifeTableFromLog(seen(), { stages: [...STAGES], count: 12 });
const runs = core
  .hindcast({ lifeCycle: monarch, temperatures: years, leads: [0, 7], every: 30 })
  .filter(({ start }) => start < "2024-06" && "456".includes(start.slice(6, 7)));
const scores = core.scoreHindcast(runs);
const fit = core.estimateThreshold(trials());
const ranked = core.compareRateModels(trials(), [core.briere1]);
const timeline = core.timelineOf(days, {
  method: "single-sine",
  zone,
  limits: { lower: 10, upper: 30 },
  from: Date.parse("2026-05-02T04:00Z"),
});
const normals = core.normalsOf(years);
const comparison = core.compare(result, seen());
const methods = core.compareMethods(days, { lower: 10, upper: 30 }, { from: "2026-05-10", to: "2026-06-10" });
const evening = { day: "2026-06-12", forecast: result, learned, withoutLog: result };
const ensembleParts = (): core.EnsembleParts => ({
  observed: days,
  until: "2026-06-20",
  past: years,
  days: 60,
});
const darwin = (): write.DarwinCoreOptions => ({
  scientificName: "Danaus plexippus",
  place: { ...place, uncertaintyMetres: 100, country: "Nowhere", locality: "a meadow" },
  decimals: 2,
  recordedBy: "someone",
});
const warmth = plot.temperatureRows(days, { from: "2026-05-03", to: "2026-05-20", zone });
const totals = plot.stageTotalRows(result);
const leaves = plan.foliage[0];
const places = (): plot.SeasonOfPlace[] => [{ name: "meadow", outlook, place: { ...place } }];
const estimated = core.daysAt(trials(), [20, 25]);
const curveOptions = (): plot.CurveRowsOptions => ({
  from: "2026-05-03",
  to: "2026-05-04",
  method: "single-sine",
  thresholds: { lower: 10, upper: 30 },
});
const curve = plot.curveRows(days, curveOptions());

const CORE: Readonly<Record<string, () => unknown[]>> = {
  daysAt: () => [trials(), [20, 25], { level: 0.9 }],
  InputError: () => ["invalid-day", "a sentence", { path: ["a", 1], value: 1 }],
  accumulateDegreeDays: () => [
    days,
    {
      lower: 10,
      upper: 30,
      cutoff: "horizontal",
      method: "single-sine",
      from: "2026-05-03",
      to: "2026-05-20",
    },
  ],
  addDays: () => ["2024-02-29", 366],
  bias: () => [
    [1, 2, 3],
    [1, 3, 2],
  ],
  binomialInterval: () => [3, 10, { method: "wilson", level: 0.9 }],
  cautionsFor: () => [monarch],
  celsiusDegreesToFahrenheit: () => [10],
  celsiusToFahrenheit: () => [10],
  chanceBetween: () => [input(), "pupa", Date.parse("2026-06-25T04:00Z"), Date.parse("2026-06-26T04:00Z")],
  checkLifeCycle: () => [structuredClone(monarch)],
  checkLog: () => [seen()],
  civilDay: () => [20_000],
  compare: () => [result, seen()],
  compareMethods: () => [
    days,
    { lower: 10, upper: 30 },
    { from: "2026-05-10", to: "2026-06-10", zone, place: { ...place } },
  ],
  compareRateModels: () => [trials(), [core.briere1]],
  constantTemperature: () => [24, { from: "2026-05-01", to: "2026-06-01" }],
  coverage: () => [
    [
      { lower: 1, upper: 3 },
      { lower: 2, upper: 5 },
    ],
    [2, 7],
  ],
  crps: () => [[1, 2, 3], 2.5, { weights: [1, 1, 2], fair: true }],
  dailyTemperatures: () => ["2026-05-01", [8, 12, 9], [24, 30, 21], ["observed", "filled", "observed"]],
  dayLength: () => ["2026-06-21", 52.5, { longitude: 13.4 }],
  dayNumber: () => ["2026-06-21", ["on"]],
  dayPlan: () => [
    [cohort()],
    {
      supplies: [{ leaves: 40, on: "2026-06-15" }],
      leavesPerStem: 12,
      perCage: 10,
      away: ["2026-06-20"],
      cleanEvery: 2,
    },
  ],
  degreeDays: () => [
    { min: 8, max: 24, nextMin: 9 },
    { lower: 10, upper: 30, cutoff: "vertical", method: "double-sine" },
  ],
  degreeDaysEach: () => [
    Float64Array.of(12, 2),
    Float64Array.of(30, 9),
    { lower: 10, upper: 25, cutoff: "intermediate" },
  ],
  developmentClock: () => [timeline, (t: number) => Math.max(0, t - 10) / 350],
  estimateThreshold: () => [trials(), { method: "reduced-major-axis" }],
  expectedAdults: () => [12, [0.9, { survived: 17, of: 20 }], { level: 0.9 }],
  fahrenheitDegreesToCelsius: () => [10],
  fahrenheitToCelsius: () => [10],
  fateOf: () => [core.logEntry({ stage: "pupa", on: "2026-07-04", fate: "lost" })],
  fillGaps: () => [
    core.dailyTemperatures("2026-05-01", [8, NaN, 9], [20, NaN, 22]),
    { fill: "interpolate", upToDays: 3 },
  ],
  findSpecies: () => ["monarch"],
  fitRateModel: () => [trials(), core.briere1, { maxIterations: 60, starts: [{ ...parameters }] }],
  foliageFromTotal: () => [monarch, 20, { food: "milkweed" }],
  foliageNeedsFor: () => [monarch, []],
  forecast: () => [{ ...input(), learned, method: "single-sine", place: { ...place } }],
  gapsOf: () => [core.dailyTemperatures("2026-05-01", [8, NaN, 9], [20, NaN, 22])],
  heatLimit: () => [monarch, 28],
  hindcast: () => [
    { lifeCycle: monarch, temperatures: years, leads: [0, 7], every: 400, method: "single-sine" },
  ],
  hourlyWeather: () => [
    {
      at: [0, 3_600_000],
      temperature: [20, 21],
      wind: [1, 2],
      rain: [0, 0],
      rainChance: [5, null],
      cloud: [10, 20],
    },
  ],
  joinTemperatures: () => [days, warm],
  kaplanMeier: () => [
    [
      { time: 3, event: "died" },
      { time: 5, event: "lost" },
      { time: 6, event: "emerged" },
    ],
    { interval: "log-log", level: 0.95 },
  ],
  lastDay: () => [core.dailyTemperatures("2026-05-01", [8], [20])],
  lastStageBegan: () => [{ ...learned }],
  learn: () => [input(), seen(), { paceVariation: 0.1, offsetDeviation: 0.5 }],
  lifeTable: () => [
    [
      { stage: "egg", entered: 20, died: 2, censored: 1 },
      { stage: "pupa", entered: 17, died: 3 },
    ],
    { level: 0.9 },
  ],
  lifeTableFromLog: () => [seen(), { stages: [...STAGES], count: 12, unaccounted: "died", level: 0.9 }],
  linearResponse: () => [{ lower: 10, upper: 30, cutoff: "horizontal" }],
  logEntry: () => [
    {
      stage: "pupa",
      on: "2026-07-04",
      count: 2,
      cohort: "a",
      note: "b",
      row: 3,
      fate: "died",
      notYet: "2026-07-03",
    },
  ],
  loggerDays: () => [logger, null],
  meanAbsoluteError: () => [
    [1, 2, 3],
    [1, 3, 2],
  ],
  metresPerSecond: () => [10, "mph"],
  normalTemperatures: () => [normals, "2026-02-27", "2026-03-02"],
  normalsEnsemble: () => [
    {
      observed: days,
      until: "2026-06-20",
      normals: core.normalTemperatures(normals, "2026-06-01", "2026-09-01"),
      standardDeviation: 3,
      autocorrelation: 0.6,
    },
  ],
  normalsOf: () => [years, 7],
  optimumOf: () => [core.briere1, { ...parameters }],
  preLayingOf: () => [monarch],
  rateFunction: () => [core.briere1, { ...parameters }],
  rateSummationEffect: () => [(t: number) => Math.max(0, t - 10), { min: 8, max: 30 }, "single-triangle"],
  relateRoom: () => [logger, station, { zone: null, atLeast: 10 }],
  releaseHours: () => [[{ at: "2026-07-05T07:00", count: 2 }], weather, releaseOptions()],
  releaseRuledOut: () => [monarch],
  roomMembers: () => [station, relation, 2],
  roomNotes: () => [station, relation],
  roomTemperatures: () => [station, relation],
  scoreHindcast: () => [runs, [5, 6, 7], 100],
  season: () => [seasonInput()],
  shiftedTemperatures: () => [days, 1.5],
  skill: () => [0.5, 1],
  stageName: () => ["pupa"],
  startFor: () => [
    {
      ...target(),
      aim: "one",
      hours: ["09:00", "15:00"],
      hottest: 28,
      dates: { from: "2026-05-25", to: "2026-06-05" },
    },
  ],
  survivalThrough: () => [rows],
  temperatureReadings: () => [
    [0, 3_600_000, 7_200_000],
    [10, 12, 11],
    { clock: "local", longestGapHours: 6, origin: "observed" },
  ],
  thermalClock: () => [timeline, core.linearResponse({ lower: 10 })],
  thresholdOfLine: () => [{ intercept: -0.03, slope: 0.003 }],
  timelineOf: () => [
    days,
    {
      method: "single-sine",
      zone,
      limits: { lower: 10, upper: 30 },
      from: Date.parse("2026-05-02T04:00Z"),
      until: Date.parse("2026-07-02T04:00Z"),
    },
  ],
  weatherEnsemble: () => [{ ...ensembleParts(), exclude: [2023] }],
  windIn: () => [4, "km/h"],
};

const READ: Readonly<Record<string, () => unknown[]>> = {
  decodeText: () => [new TextEncoder().encode("a,b\n1,2")],
  readCohorts: () => [
    "name,species,found,on,count\nporch,monarch,egg,2026-06-08,12",
    { dateOrder: "day-first", own: [monarch] },
  ],
  readDailyCsv: () => [
    "date;min °C;max °C\n2026-05-01;8,5;24",
    { unit: "C", dateOrder: "day-first", sentinels: [99], exchangeSwapped: true, location: undefined },
  ],
  readForecast: () => [structuredClone(result)],
  readGhcnCsv: () => [fixture("read/station-month.csv"), { location: undefined }],
  readGhcnDly: () => [fixture("read/station-month.dly"), { location: undefined }],
  readHourlyWeather: () => [
    "time,temp °F,wind mph,rain %\n2026-07-05T12:00-04:00,77,5,10",
    { zone, dateOrder: "day-first", unit: "F", windUnit: "mph", columns: { temperature: "temp °F" } },
  ],
  readLifeCycle: () => [JSON.parse(fixture("read/own-species.json"))],
  readLog: () => [
    fixture("logs/invented-season.csv"),
    { dateOrder: "day-first", throughRow: 6, firstLarvalStage: "instar-1" },
  ],
  readLogEntries: () => [seen()],
  readReadingsCsv: () => [
    "time,temp C\n2026-05-01 06:00,14\n2026-05-01 07:00,16",
    { zone, longestGapHours: 3 },
  ],
  readTemperatures: () => [
    fixture("read/garden-days.csv"),
    { unit: "C", format: "daily-csv", columns: { date: "Datum" } },
  ],
  readTemperaturesJson: () => ['{"unit":"C","days":[{"date":"2026-05-01","min":8,"max":24}]}', { unit: "C" }],
  readTrials: () => [
    "temperature °C,days,animals\n18,28.2,12\n25,16.1,9",
    { unit: "C", columns: { days: "days" } },
  ],
};

const WRITE: Readonly<Record<string, () => unknown[]>> = {
  calendarIcs: () => [
    result,
    {
      madeAt: "2026-06-08T17:30:00Z",
      sequence: 1,
      cohort: "porch",
      days: "windows",
      cautions: core.cautionsFor(monarch),
    },
  ],
  calendarText: () => [result, { cautions: core.cautionsFor(monarch) }],
  cautionsText: () => [core.cautionsFor(monarch)],
  comparisonCsv: () => [comparison],
  comparisonText: () => [comparison],
  dailyTemperaturesCsv: () => [gappy],
  darwinCoreCsv: () => [write.darwinCoreRows(seen(), darwin()).rows],
  darwinCoreRows: () => [seen(), darwin()],
  degreeDayText: () => [core.accumulateDegreeDays(days, { lower: 10, to: "2026-05-04" }), "F"],
  forecastCsv: () => [result],
  hindcastText: () => [
    scores,
    { animal: "monarch", from: "2021-01-01", to: "2024-12-31", every: 211, months: [5, 6] },
  ],
  logCsv: () => [seen()],
  logText: () => [seen(), [{ row: 2, by: 3, how: "corrected", was: ["pupa"] }], { heading: "The log" }],
  methodComparisonText: () => [methods, "F"],
  notesText: () => [result.notes],
  planPage: () => [plan],
  planText: () => [plan],
  rateModelText: () => [ranked],
  releaseText: () => [release, { unit: "F", windUnit: "mph" }],
  roomText: () => [relation, inRoom],
  ruledOutText: () => [release, "not here"],
  seasonText: () => [outlook],
  speciesListText: () => [core.SPECIES],
  speciesText: () => [monarch],
  startForText: () => [startPlan],
  survivalText: () => [logTable, { found: { stage: "egg", count: 12 }, expected: null }],
  thresholdText: () => [trials(), [fit], "F"],
};

const PLOT: Readonly<Record<string, () => unknown[]>> = {
  constantWithError: () => [fit, { unit: "F" }],
  curveRows: () => [days, curveOptions()],
  cutoffName: () => ["horizontal"],
  dayLengthRows: () => [places()],
  describeAddingUp: () => [
    core.accumulateDegreeDays(days, { lower: 10, from: "2026-05-03", to: "2026-05-06" }),
    { unit: "F" },
  ],
  describeCurve: () => [curve, { thresholds: { lower: 10, upper: 30 }, unit: "F" }],
  describeDayLengths: () => [plot.dayLengthRows(places())],
  describeDaysAt: () => [estimated, { unit: "F" }],
  describeFoliage: () => [leaves],
  describeLastEggs: () => [plot.lastEggRows(places())],
  describeMethodDifferences: () => [
    plot.methodDifferenceRows([{ group: "May", comparison: methods }]),
    { measure: "degree-days" },
  ],
  describeRateModels: () => [ranked, { unit: "F" }],
  describeSeasons: () => [plot.seasonRows(places())],
  describeStarts: () => [plot.startRows(startPlan), { unit: "F" }],
  describeThresholds: () => [plot.trialRows(trials()), [fit], { unit: "F" }],
  fastestOf: () => [ranked[0]],
  lastEggRows: () => [places()],
  leaveOutRows: () => [trials()],
  methodDifferenceRows: () => [[{ group: "May", comparison: methods }]],
  methodName: () => ["single-sine"],
  monthDayText: () => ["06-20"],
  rateCurveRows: () => [ranked, { from: 10, to: 30 }, 5],
  rateModelName: () => ["briere-1"],
  seasonRows: () => [places()],
  startRows: () => [startPlan],
  startText: () => [{ on: "2026-06-08", temperature: null }, "C"],
  thresholdWithError: () => [fit, { unit: "F" }],
  trialRows: () => [trials(), trials().slice(0, 1)],
  degreeDayRows: () => [result],
  describeDegreeDays: () => [plot.degreeDayRows(result), { stages: totals, unit: "F" }],
  describePaces: () => [plot.outlookRows([evening])],
  describeStageWindows: () => [plot.stageWindowRows(result, seen())],
  describeTemperatures: () => [warmth, { thresholds: [{ lower: 10, upper: 30 }], unit: "F" }],
  describeUpdatedWindows: () => [
    plot.updatedWindowRows(result, result, { log: seen(), today: "2026-06-20" }),
    "2026-06-20",
  ],
  describeWindowWidths: () => [plot.outlookRows([evening])],
  forecastDays: () => [result],
  longDate: () => ["2026-06-20T13:00:00-04:00"],
  outlookRows: () => [[evening], "adult"],
  shortDate: () => ["2026-06-20T13:00:00-04:00"],
  stageTotalRows: () => [result],
  stageWindowRows: () => [result, seen()],
  sureSince: () => [plot.outlookRows([evening])],
  temperatureRows: () => [days, { from: "2026-05-03", to: "2026-05-20", zone }],
  updatedWindowRows: () => [result, result, { log: seen(), today: "2026-06-20" }],
};

const table = { table: ["weather", "days"], day: "on", min: "tmin", max: "tmax", station: "cell" };

const SQL: Readonly<Record<string, () => unknown[]>> = {
  degreeDayRowsSql: () => [{ ...table }, { lower: 10 }, { double: "DOUBLE" }],
  degreeDaysSql: () => [{ min: "tmin", max: "tmax" }, { lower: 10 }, { double: "DOUBLE" }],
  reachedSql: () => [{ ...table }, { lower: 10, amount: 352 }, { double: "DOUBLE" }],
  readingsCheckSql: () => [{ ...table }, { double: "DOUBLE" }],
  reversedDaySql: () => [{ min: "tmin", max: "tmax" }, { double: "DOUBLE" }],
  stagesSql: () => [{ ...table }, monarch, { stage: "pupa" }, { double: "DOUBLE" }],
};

/** Made by the library: what takes them trusts them, so that only another value in their place is tried. */
const WHOLE: ReadonlySet<unknown> = new Set<unknown>([
  monarch,
  days,
  years,
  result,
  learned,
  station,
  logger,
  relation,
  weather,
  plan,
  release,
  startPlan,
  outlook,
  rows,
  logTable,
  runs,
  scores,
  fit,
  ranked,
  timeline,
  normals,
  comparison,
  methods,
  warmth,
  totals,
  leaves,
  curve,
  estimated,
  core.briere1,
  core.SPECIES,
  warm,
  gappy,
  inRoom,
]);

/** Results in an argument of a writer; what stands beside them a caller wrote. */
const CALLER_WROTE: readonly string[] = ["darwinCoreRows", "logCsv", "logText"];

/** Whether the library made a value that stands at a place of a call. */
export function isMade(call: Pick<Call, "name" | "entry">, value: unknown): boolean {
  if (WHOLE.has(value)) return true;
  const shows = call.entry === "write" || call.entry === "plot";
  return shows && Array.isArray(value) && !CALLER_WROTE.includes(call.name);
}

/** What checks nothing, and says so: NaN for NaN. tests/diurnal has their laws. */
export const UNCHECKED: readonly string[] = ["sineExcess", "triangleExcess"];

/** Figures draw rows that the functions above made, with a library and a page handed in; tests/plot draws them. */
export const NOT_CALLED: readonly string[] = [
  "addingUpFigure",
  "curveFigure",
  "dayLengthFigure",
  "daysAtFigure",
  "degreeDayFigure",
  "figureSvg",
  "foliageFigure",
  "lastEggsFigure",
  "methodFigure",
  "paceFigure",
  "rateCurveFigure",
  "seasonFigure",
  "stageWindowFigure",
  "startFigure",
  "temperatureFigure",
  "thresholdFigure",
  "updatedWindowFigure",
  "windowWidthFigure",
];

const ENTRIES = {
  core: [core, CORE],
  read: [read, READ],
  write: [write, WRITE],
  plot: [plot, PLOT],
  sql: [sql, SQL],
} as const;

/** Functions that the entry points export. */
export const EXPORTED: readonly string[] = Object.entries(ENTRIES).flatMap(([entry, [module]]) =>
  Object.entries(module).flatMap(([name, value]) =>
    typeof value === "function" ? [`${entry} ${name}`] : [],
  ),
);

export const CALLS: readonly Call[] = Object.entries(ENTRIES).flatMap(([entry, [module, args]]) =>
  Object.entries(args).map(([name, make]): Call => {
    const value: unknown = (module as Readonly<Record<string, unknown>>)[name];
    if (typeof value !== "function") throw new Error(`${entry} exports no function ${name}`);
    const run =
      name === "InputError"
        ? (...given: readonly unknown[]) => Reflect.construct(value, given) as unknown
        : (...given: readonly unknown[]) => Reflect.apply(value, undefined, given) as unknown;
    return { name, entry: entry as Call["entry"], run, args: make, needed: value.length };
  }),
);
