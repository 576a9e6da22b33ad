import type { DayPlan, PlannedCohort } from "../../rearing/plan/day-plan-result.ts";
import { stageName } from "../../species/stage-names.ts";
import { dayNumber } from "../../time/civil-day.ts";
import { htmlText } from "./html-text.ts";
import { dayLabel, daysThrough, isMonday } from "../layout/text-layout.ts";

type PlannedWindow = PlannedCohort["windows"][number];

const WIDTH = 720;
const LEFT = 118;
const RIGHT = 8;
const ROW = 15;
const TITLE_ROW = 16;
const AXIS = 18;

/**
 * The windows of every cohort as one SVG drawing: a bar from the early to the late animal, a shape at the middle
 * one, and a shaded band for days on which nobody is there. Black on white; shapes tell the stages apart.
 */
export function planChart(plan: DayPlan): string {
  const several = plan.cohorts.length > 1;
  const first = dayNumber(plan.from);
  const days = dayNumber(plan.to) - first + 1;
  const x = (at: number): number => LEFT + ((at - first) / days) * (WIDTH - LEFT - RIGHT);
  const parts: string[] = [];
  let y = AXIS;
  for (const cohort of plan.cohorts) {
    if (several) {
      parts.push(words(2, y + 12, cohort.name, "font-weight='bold'"));
      y += TITLE_ROW;
    }
    for (const window of cohort.windows) {
      parts.push(...rowOf(window, y, x));
      y += ROW;
    }
    y += 4;
  }
  const away = plan.days.flatMap(({ day, away: nobody }) => (nobody ? [dayNumber(day)] : []));
  const bands = away.map((day) => {
    const wide = Math.max(1, x(day + 1) - x(day));
    return `<rect x="${num(x(day))}" y="${AXIS}" width="${num(wide)}" height="${y - AXIS}" fill="url(#away)"/>`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${y}" role="img" aria-labelledby="chart-name chart-words" font-family="sans-serif" font-size="11" fill="#000">`,
    `<title id="chart-name">When each stage begins</title>`,
    `<desc id="chart-words">${htmlText(chartWords(plan))}</desc>`,
    `<defs><pattern id="away" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V5" stroke="#777" stroke-width="1.4"/></pattern></defs>`,
    ...axis(plan, x, y),
    ...bands,
    ...parts,
    `</svg>`,
  ].join("\n");
}

/** The drawing in words, for those who hear the page. */
export function chartWords({ cohorts }: Pick<DayPlan, "cohorts">): string {
  const several = cohorts.length > 1;
  return cohorts
    .map(({ name, windows }) => {
      const all = windows.map((one) => `${nameOf(one)} ${datesOf(one)}`).join("; ");
      return `${several ? `${name}: ` : ""}${all === "" ? "nothing is to begin" : all}.`;
    })
    .join(" ");
}

function axis(plan: DayPlan, x: (at: number) => number, bottom: number): string[] {
  const days = daysThrough(plan.from, plan.to);
  const mondays = days.filter(isMonday);
  const ticks = mondays.length > 0 ? mondays : [plan.from];
  // Labels need room; of many Mondays every second or tenth is named.
  const every = Math.max(1, Math.ceil((ticks.length * 52) / (WIDTH - LEFT)));
  return ticks.flatMap((day, i) => {
    if (i % every !== 0) return [];
    const at = x(dayNumber(day));
    const label = dayLabel(day).slice(4).trim();
    const line = `<path d="M${num(at)} ${AXIS - 4}V${bottom}" stroke="#bbb" stroke-width="0.8"/>`;
    return at > WIDTH - 40 ? [line] : [line, words(at + 2, 11, label)];
  });
}

function rowOf(window: PlannedWindow, y: number, x: (at: number) => number): string[] {
  const { early, expected, late } = window.window;
  const label = words(LEFT - 6, y + 11, nameOf(window), "text-anchor='end'");
  const start = early ?? expected;
  const end = late ?? expected ?? early;
  if (start === null || end === null)
    return [label, words(LEFT + 4, y + 11, "not known", "font-style='italic'")];
  const [from, to] = [x(timeOf(start)), x(timeOf(end))];
  const open = late === null ? "stroke-dasharray='3 2'" : "";
  const bar = `<rect x="${num(from)}" y="${y + 4}" width="${num(Math.max(2, to - from))}" height="7" fill="#fff" stroke="#000" ${open}/>`;
  const mark = expected === null ? [] : [shapeOf(window.begins, x(timeOf(expected)), y + 7.5)];
  // Dates stand where there is room for them.
  const text = datesOf(window);
  const dates =
    WIDTH - to > 7 + text.length * 5.4
      ? words(to + 7, y + 11, text, "fill='#333'")
      : words(from - 7, y + 11, text, "text-anchor='end' fill='#333'");
  return [label, bar, ...mark, dates];
}

/** Hatching a ring, molts an upright, the hang a triangle, the pupa a square, the adult a diamond. */
function shapeOf(begins: PlannedWindow["begins"], x: number, y: number): string {
  const path = (d: string, fill = "#000"): string =>
    `<path d="M${num(x)} ${num(y)}${d}" fill="${fill}" stroke="#000" stroke-width="1.4"/>`;
  switch (begins) {
    case "larva":
    case "instar-1":
      return `<circle cx="${num(x)}" cy="${num(y)}" r="4.6" fill="#fff" stroke="#000" stroke-width="1.6"/>`;
    case "prepupa":
      return path("m-5 -4.5h10l-5 10z");
    case "pupa":
      return path("m-4.5 -4.5h9v9h-9z");
    case "darkening":
      return path("m-4.5 -4.5h9v9h-9z", "#888");
    case "adult":
      return path("m0 -6.5l6.5 6.5l-6.5 6.5l-6.5 -6.5z");
    default:
      return path("m0 -5.5v11", "none");
  }
}

function nameOf({ begins }: PlannedWindow): string {
  return begins === "darkening" ? "pupa darkens" : stageName(begins);
}

function datesOf({ window }: PlannedWindow): string {
  const label = (instant: string | null, other: string): string =>
    instant === null ? other : dayLabel(instant.slice(0, 10)).slice(4).trim();
  if (window.early === null && window.expected === null) return "not known";
  return `${label(window.expected, "?")} (${label(window.early, "?")} to ${label(window.late, "later")})`;
}

/** Days and parts of a day since 1970, as the clock on the wall shows them. */
function timeOf(instant: string): number {
  const [hours = 0, minutes = 0] = instant.slice(11, 16).split(":").map(Number);
  return dayNumber(instant.slice(0, 10)) + (hours + minutes / 60) / 24;
}

function words(x: number, y: number, text: string, more = ""): string {
  return `<text x="${num(x)}" y="${num(y)}" stroke="#fff" stroke-width="3" paint-order="stroke" ${more}>${htmlText(text)}</text>`;
}

function num(value: number): string {
  return String(Math.round(value * 10) / 10);
}
