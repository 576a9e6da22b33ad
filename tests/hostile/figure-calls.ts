import * as Plot from "@observablehq/plot";
import { JSDOM } from "jsdom";
import * as core from "../../src/index.ts";
import * as plot from "../../src/plot/index.ts";
import { CALLS, type Call } from "./calls.ts";

const { document } = new JSDOM().window;

/** What a function of `moltline/plot` makes of the arguments that are right for it. */
function made(name: string): unknown {
  const call = CALLS.find((one) => one.entry === "plot" && one.name === name);
  if (call === undefined) throw new Error(`no call of ${name}`);
  return call.run(...call.args());
}

/** The first argument that is right for a function of `moltline/plot`. */
function given(name: string): unknown {
  return CALLS.find((one) => one.entry === "plot" && one.name === name)?.args()[0];
}

const today = "2026-06-20";
const trials = made("trialRows");

/** What each figure takes between the library and its options, and what its options need. */
const FIGURES: Readonly<Record<string, readonly [between: readonly unknown[], options?: object]>> = {
  addingUpFigure: [[given("describeAddingUp")]],
  curveFigure: [[made("curveRows")], { thresholds: { lower: 10, upper: 30 } }],
  dayLengthFigure: [[made("dayLengthRows")]],
  daysAtFigure: [[given("describeDaysAt")]],
  degreeDayFigure: [[made("degreeDayRows")]],
  foliageFigure: [[given("describeFoliage")]],
  lastEggsFigure: [[made("lastEggRows")]],
  methodFigure: [[made("methodDifferenceRows")], { measure: "percent" }],
  paceFigure: [[made("outlookRows")], { today }],
  rateCurveFigure: [[trials, given("describeRateModels")]],
  seasonFigure: [[made("seasonRows")]],
  stageWindowFigure: [[made("stageWindowRows")]],
  startFigure: [[made("startRows")]],
  temperatureFigure: [[made("temperatureRows")]],
  thresholdFigure: [[trials]],
  updatedWindowFigure: [[made("updatedWindowRows")], { today }],
  windowWidthFigure: [[made("outlookRows")], { today }],
};

const drawn = plot.addingUpFigure(
  Plot,
  core.accumulateDegreeDays(core.constantTemperature(20), {
    lower: 10,
    from: "2026-06-01",
    to: "2026-06-03",
  }),
  { document },
);

/** Every figure with arguments that it takes, drawn in a page without a browser. */
export const FIGURE_CALLS: readonly Call[] = [
  ...Object.entries(FIGURES).map(([name, [between, options = {}]]): Call => {
    const value: unknown = (plot as Readonly<Record<string, unknown>>)[name];
    if (typeof value !== "function") throw new Error(`plot exports no function ${name}`);
    return {
      name,
      entry: "plot",
      run: (...args) => Reflect.apply(value, undefined, args) as unknown,
      args: () => [Plot, ...between, { ...options, document }],
      needed: value.length,
    };
  }),
  {
    name: "figureSvg",
    entry: "plot",
    run: (...args) => Reflect.apply(plot.figureSvg, undefined, args) as unknown,
    args: () => [drawn],
    needed: 1,
  },
];
