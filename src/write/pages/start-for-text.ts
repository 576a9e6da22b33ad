import { given } from "../../given.ts";
import { capitalised } from "../../plain-words.ts";
import type { Caution } from "../../rearing/cautions.ts";
import type { Aim, DatePlan, Odds, RoomPlan } from "../../rearing/start/start-plan.ts";
import { type TemperatureUnit, displayUnit, unitOf } from "../../units.ts";
import { foundAnimals } from "./calendar-text.ts";
import { percentText } from "../../rearing/chance-text.ts";
import { deedOf, deedOfOne } from "../layout/milestone-words.ts";
import { degreesText } from "../layout/number-text.ts";
import { cautionsText, notesText } from "../layout/remarks-text.ts";
import { columns, dayLabel, fullDayLabel, inSeveralYears, pageOf, wrapped } from "../layout/text-layout.ts";

/** Starts shown in the table: more would hide the good ones. */
const ROWS = 14;

/**
 * A plan for a wanted day as plain text, at most 80 columns: the best start and its chances, the others beside it,
 * then cautions and notes.
 * @param options.cautions Cautions that fit the species; they are printed in full.
 * @param options.unit Unit to show temperatures in. Default C.
 */
export function startForText(
  plan: DatePlan | RoomPlan,
  options: { cautions?: readonly Caution[]; unit?: TemperatureUnit } = {},
): string {
  given(plan, ["plan"], "what startFor returns", "ranked", "start");
  unitOf(options);
  const { cautions = [], unit = "C" } = options;
  const blocks = [
    headingText(plan),
    bestText(plan, unit),
    tableText(plan, unit),
    plan.kind === "room" ? limitText(plan, unit) : "",
    cautionsText(cautions),
    notesText(plan.notes),
  ];
  return pageOf(blocks);
}

function headingText(plan: DatePlan | RoomPlan): string {
  const { commonName, latinName, start, milestone, day, hours } = plan;
  const when = `on ${fullDayLabel(day)}${hours === null ? "" : ` between ${hours[0]} and ${hours[1]}`}`;
  const from = plan.kind === "room" ? ` from ${momentText(plan.on)} on` : "";
  return [
    plan.kind === "room" ? "WHICH TEMPERATURE FOR A DAY" : "WHICH START FOR A DAY",
    wrapped(`${capitalised(commonName)} (${latinName})`),
    wrapped(`${foundAnimals(start)}${from}, to ${deedOf(milestone)} ${when}.`),
  ].join("\n");
}

function momentText(on: string): string {
  const time = on.slice(11, 16);
  return `${fullDayLabel(on.slice(0, 10))}${time === "" ? "" : ` ${time}`}`;
}

function bestText(plan: DatePlan | RoomPlan, unit: TemperatureUnit): string {
  if (plan.best === null) return wrapped(`No start can be advised. ${plan.absence?.message ?? ""}`.trim());
  const { odds, window } = plan.best;
  const what =
    plan.kind === "room"
      ? `keep the room at ${roomText(plan.best.temperature, unit)}`
      : `start on ${fullDayLabel(plan.best.on)}`;
  const cells = [window.early, window.expected, window.late];
  const several = inSeveralYears(cells);
  const [early, expected, late] = cells.map((one) =>
    one === null ? "not known" : several ? fullDayLabel(one.slice(0, 10)) : dayLabel(one.slice(0, 10)),
  );
  return [
    `BEST: ${what}`,
    columns(chanceRows(plan, odds), [1]),
    wrapped(
      `Too early ${percentText(odds.early)}, too late ${percentText(odds.late)}, for each animal. Of many such animals the early one would ${deedOf(plan.milestone)} on ${tight(early)}, the middle one on ${tight(expected)}, the late one on ${tight(late)}.`,
    ),
    ...(plan.kind === "room"
      ? [
          wrapped(
            `Were the room ${step(unit)} cooler than meant, the chance would be ${percentText(plan.best.ifCooler)}; ${step(unit)} warmer, ${percentText(plan.best.ifWarmer)}.`,
          ),
        ]
      : []),
  ].join("\n");
}

function tight(label: string | undefined): string {
  return (label ?? "not known").replace(/ {2}/g, " ");
}

function chanceRows({ start, milestone, aim }: DatePlan | RoomPlan, odds: Odds): string[][] {
  const then = "in time";
  if (start.count === 1) return [[`  it ${deedOfOne(milestone)} ${then}`, percentText(odds.each)]];
  const rows: readonly (readonly [Aim, string])[] = [
    ["one", `at least one of the ${start.count} ${deedOfOne(milestone)} ${then}`],
    ["half", `at least half of them ${deedOf(milestone)} ${then}`],
    ["each", `a given one of them ${deedOfOne(milestone)} ${then}`],
  ];
  return rows.map(([id, text]) => [`${id === aim ? "* " : "  "}${text}`, percentText(odds[id])]);
}

function tableText(plan: DatePlan | RoomPlan, unit: TemperatureUnit): string {
  const rows: readonly TableRow[] =
    plan.kind === "room"
      ? plan.ranked.map(({ temperature, odds }) => ({
          at: temperature,
          label: roomText(temperature, unit),
          odds,
        }))
      : plan.ranked.map(({ on, odds }) => ({ at: on, label: fullDayLabel(on), odds }));
  const known = rows.flatMap(({ at, label, odds }) => (odds === null ? [] : [{ at, label, odds }]));
  if (known.length < 2 || plan.best === null) return "";
  const shown = known.slice(0, ROWS).sort((a, b) => (a.at < b.at ? -1 : 1));
  const single = plan.start.count === 1;
  const heading = [
    plan.kind === "room" ? "  room" : "  start",
    ...(single ? ["chance"] : ["one", "half", "each"]),
    "early",
    "late",
  ];
  const body = shown.map(({ label, odds }) => [
    `  ${label}`,
    ...(single ? [odds.each] : [odds.one, odds.half, odds.each]).map(percentText),
    percentText(odds.early),
    percentText(odds.late),
  ]);
  const what = plan.kind === "room" ? "TEMPERATURES" : "STARTS";
  const title =
    shown.length < rows.length ? `THE ${shown.length} BEST OF ${rows.length} ${what}` : `ALL ${what}`;
  return [title, columns([heading, ...body], [1, 2, 3, 4, 5])].join("\n");
}

interface TableRow {
  readonly at: string | number;
  readonly label: string;
  readonly odds: Odds | null;
}

function limitText({ limit }: RoomPlan, unit: TemperatureUnit): string {
  const deadly = limit.lethal === null ? "" : `, above ${roomText(limit.lethal, unit)} it is assumed to kill`;
  return wrapped(
    `No room above ${roomText(limit.hottest, unit)} is advised: held heat above it ${limit.harm}${deadly} (${limit.source}; ${limit.mark}).`,
  );
}

// The best room is found to a hundredth of a degree Celsius.
function roomText(celsius: number, unit: TemperatureUnit): string {
  return degreesText(celsius, unit, unit === "F" ? 1 : 2);
}

function step(unit: TemperatureUnit): string {
  const { degree, difference } = displayUnit(unit);
  return `${difference(1)} ${degree}`;
}
