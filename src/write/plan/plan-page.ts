import { given } from "../../given.ts";
import type { DayPlan } from "../../rearing/plan/day-plan-result.ts";
import { htmlText } from "./html-text.ts";
import { planChart } from "./plan-chart.ts";
import { planTable } from "./plan-table.ts";
import { cautionsWithNames, cohortWords, conflictText, foodWords, planSpan } from "./plan-words.ts";

/** Printed on A4 or Letter: margins that both allow, and no height that one of them lacks. */
const STYLE = `
@page { margin: 8mm; }
* { box-sizing: border-box; }
body { margin: 0 auto; background: #fff; color: #000; font: 8pt/1.2 sans-serif; }
h1 { margin: 0; font-size: 13pt; }
h2 { margin: 1.2mm 0 0.3mm; font-size: 8.5pt; break-after: avoid; }
p, ul { margin: 0.4mm 0; }
ul { padding-left: 4mm; }
.first { border: 0.5mm solid #000; padding: 0.6mm 2mm 1mm; margin: 1.5mm 0; break-inside: avoid; }
.first h2 { margin-top: 0; }
.first ul { list-style: "! "; }
svg { display: block; width: 100%; height: auto; }
figure { margin: 1.5mm 0; break-inside: avoid; }
figcaption { font-size: 7pt; }
table { width: 100%; border-collapse: collapse; }
caption { text-align: left; font-weight: bold; font-size: 8.5pt; padding: 0.6mm 0 0.3mm; }
th, td { text-align: left; vertical-align: top; padding: 0 1.4mm; border-bottom: 0.15mm solid #999; }
thead th { border-bottom: 0.4mm solid #000; }
tbody th { font-weight: normal; }
tbody th, td { white-space: nowrap; }
td[colspan], .several td { white-space: normal; }
tr { break-inside: avoid; }
tr.week > * { border-top: 0.4mm solid #000; }
tr.away > * { background: repeating-linear-gradient(45deg, #fff 0 1.1mm, #ddd 1.1mm 1.4mm); }
.box { display: inline-block; width: 2.6mm; height: 2.6mm; border: 0.25mm solid #000; vertical-align: -0.3mm; background: #fff; }
.small { columns: 3; column-gap: 4mm; font-size: 6.6pt; line-height: 1.15; }
.small p { margin: 0 0 0.5mm; break-inside: avoid; }
.words { break-inside: avoid; }
td.name { white-space: normal; overflow-wrap: anywhere; min-width: 24mm; max-width: 40mm; }
@media screen { body { font-size: 10.5pt; max-width: 230mm; padding: 4mm; } .small { font-size: 9pt; columns: 2; } figcaption { font-size: 9pt; } .scroll { overflow-x: auto; } }
@media screen and (max-width: 40em) { .small { columns: 1; } }
`.trim();

/**
 * A day plan as a page to print: one HTML text without scripts or anything from elsewhere. Every name is
 * escaped. The days and the cautions of one cohort fit a sheet, with the
 * explanations on its back; more of them go on over more sheets, each with the head of the table.
 */
export function planPage(plan: DayPlan): string {
  given(plan, ["plan"], "what dayPlan returns", "days", "cautions", "notes");
  const several = plan.cohorts.length > 1;
  const title = `Day plan, ${planSpan(plan)}`;
  return `${[
    "<!doctype html>",
    '<html lang="en">',
    "<head>",
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    `<title>${htmlText(title)}</title>`,
    `<style>\n${STYLE}\n</style>`,
    "</head>",
    "<body>",
    "<main>",
    `<h1>${htmlText(title)}</h1>`,
    ...plan.cohorts.map((cohort) => paragraph(`${several ? `${cohort.name}: ` : ""}${cohortWords(cohort)}.`)),
    ...firstThings(plan),
    "<figure>",
    planChart(plan),
    `<figcaption>${htmlText(captionOf(plan))}</figcaption>`,
    "</figure>",
    ...plan.foliage.map((food) => paragraph(foodWords(food).join(" "))),
    '<div class="scroll" tabindex="0" role="group" aria-label="Day by day">',
    planTable(plan),
    "</div>",
    ...smallPrint("Take care", cautionsWithNames(plan)),
    ...smallPrint("What to do", plan.instructions),
    ...notes(plan),
    "</main>",
    "</body>",
    "</html>",
  ].join("\n")}\n`;
}

function firstThings({ conflicts }: DayPlan): string[] {
  if (conflicts.length === 0) return [];
  return [
    '<section class="first">',
    "<h2>Look at this first</h2>",
    "<ul>",
    ...conflicts.map((conflict) => `<li>${htmlText(conflictText(conflict))}</li>`),
    "</ul>",
    "</section>",
  ];
}

function captionOf({ days }: DayPlan): string {
  const away = days.some((day) => day.away) ? "; shaded: nobody there" : "";
  return `Bar: from the early to the late animal. Ring: hatching; upright: molt; triangle: hang; square: pupa, grey when dark; diamond: adult, each at the middle animal${away}.`;
}

function smallPrint(
  title: string,
  texts: readonly { readonly title: string; readonly text: string }[],
): string[] {
  if (texts.length === 0) return [];
  return [
    '<section class="words">',
    `<h2>${title}</h2>`,
    '<div class="small">',
    ...texts.map((one) => `<p><b>${htmlText(one.title)}.</b> ${htmlText(one.text)}</p>`),
    "</div>",
    "</section>",
  ];
}

function notes({ notes: all }: DayPlan): string[] {
  if (all.length === 0) return [];
  return [
    "<h2>Good to know</h2>",
    '<div class="small">',
    ...all.map((one) => paragraph(one.message)),
    "</div>",
  ];
}

function paragraph(text: string): string {
  return `<p>${htmlText(text)}</p>`;
}
