import { given, givenText } from "../../given.ts";
import type { Caution } from "../../rearing/cautions.ts";
import type { ReleaseHour } from "../../rearing/release/release-hour.ts";
import type { EmergencePlan, ReleaseLook, ReleasePlan } from "../../rearing/release/release-plan.ts";
import { degreesText, numberText } from "../layout/number-text.ts";
import { type ShownUnits, againstHour, criteriaSentences, rainText, windText } from "./release-words.ts";
import { cautionsText, notesText } from "../layout/remarks-text.ts";
import { bullet, columns, dayLabel, fullDayLabel, pageOf, wrapped } from "../layout/text-layout.ts";

/**
 * The hours that are fit for release as plain text, at most 80 columns: the law first, then each emergence with
 * its fit hours by rank and what is against the others, then the limits, cautions and notes.
 * @param options.unit Unit to show temperatures in. Default C.
 * @param options.windUnit Unit to show wind in. Default m/s.
 */
export function releaseText(plan: ReleasePlan, options: Partial<ShownUnits> = {}): string {
  given(plan, ["plan"], "what releaseHours returns", "cautions", "commonName");
  given(options, ["options"], "an object of options");
  const units: ShownUnits = { unit: options.unit ?? "C", windUnit: options.windUnit ?? "m/s" };
  if (plan.ruledOut !== null) return ruledOutText(plan, plan.ruledOut.message);
  const [law, ...others] = plan.cautions;
  const limits = criteriaSentences(plan.criteria, units).map((text) => bullet(text));
  return pageOf([
    heading(plan),
    lawText(law),
    countsText(plan),
    ...plan.emergences.map((one) => emergenceText(one, units)),
    ["WHAT COUNTS AS FIT", ...limits].join("\n"),
    cautionsText(others),
    notesText(plan.notes),
  ]);
}

/** The page of a species, or of animals, that are not released. */
export function ruledOutText(
  plan: Pick<ReleasePlan, "commonName" | "latinName" | "cautions"> & Partial<Pick<ReleasePlan, "unfit">>,
  message: string,
): string {
  given(plan, ["plan"], "what releaseHours returns", "cautions", "commonName");
  givenText(message, ["message"]);
  const [law, ...others] = plan.cautions;
  return pageOf([
    heading(plan),
    [
      "NO RELEASE",
      wrapped(message, { first: "  " }),
      wrapped("No hours are looked for.", { first: "  " }),
    ].join("\n"),
    unfitText(plan.unfit ?? null),
    lawText(law),
    cautionsText(others),
  ]);
}

function heading({ commonName, latinName }: Pick<ReleasePlan, "commonName" | "latinName">): string {
  return wrapped(`RELEASE HOURS: ${commonName} (${latinName})`);
}

function lawText(law: Caution | undefined): string {
  return law === undefined ? "" : wrapped(`${law.title}: ${law.text}`);
}

function countsText({ healthy, unfit }: ReleasePlan): string {
  const many = healthy === null ? "" : wrapped(`Healthy adults: ${healthy} at most.`);
  return [many, unfitText(unfit)].filter((text) => text !== "").join("\n");
}

function unfitText(unfit: ReleasePlan["unfit"]): string {
  if (unfit === null) return "";
  const names = unfit.animals.length === 0 ? "" : ` (${unfit.animals.join(", ")})`;
  return wrapped(`Kept apart: ${unfit.count}${names}. ${unfit.message}`);
}

function emergenceText(plan: EmergencePlan, units: ShownUnits): string {
  const title = titleOf(plan);
  if (plan.firstDay === null || plan.heldFrom === null)
    return [title, wrapped(plan.absence?.message ?? "", { first: "  " })].join("\n");
  const { firstDay, nextDay, heldFrom, advice } = plan;
  return [
    title,
    wrapped(`It may go from ${momentText(heldFrom)} on, at most until ${momentText(firstDay.to)}.`, {
      first: "  ",
    }),
    lookText(firstDay, units),
    ...(nextDay === null ? [] : ["  The day after:", lookText(nextDay, units)]),
    ...(advice.length === 0 ? [] : ["  What to do:"]),
    ...advice.map(({ message }) => wrapped(message, { first: "    - ", rest: "      " })),
  ].join("\n");
}

function titleOf({ which, animal, count, emergesAt }: EmergencePlan): string {
  const who =
    which === "seen"
      ? (animal ?? (count === null || count === 1 ? "SEEN" : `SEEN, ${count} animals`))
      : which.toUpperCase();
  if (emergesAt === null) return wrapped(`${who}: emergence not known`);
  const moment = `${fullDayLabel(emergesAt.slice(0, 10))} at ${clockText(emergesAt)}`;
  return wrapped(`${who}: ${which === "seen" ? "emerged" : "emerges"} on ${moment}`);
}

function lookText({ hours, best, absence }: ReleaseLook, units: ShownUnits): string {
  return [
    ...(best === null ? [wrapped(absence?.message ?? "", { first: "  " })] : [fitTable(hours, units)]),
    ...againstRuns(hours).map(({ first, last, text }) =>
      wrapped(`${spanText(first.from, last.to)}  ${text}`, { first: "    ", rest: "      " }),
    ),
  ].join("\n");
}

/** The fit hours by rank. */
function fitTable(hours: readonly ReleaseHour[], units: ShownUnits): string {
  const fit = hours.filter(({ rank }) => rank !== null).sort((a, b) => (a.rank ?? 0) - (b.rank ?? 0));
  const rows = fit.map((hour) => {
    const { temperature, wind, cloud } = hour.weather;
    return [
      `  ${hour.rank}`,
      `${momentText(hour.from)}-${clockText(hour.to)}`,
      temperature === null ? "-" : degreesText(temperature, units.unit),
      wind === null ? "-" : windText(wind, units),
      rainText(hour),
      cloud === null ? "-" : `${numberText(cloud)} %`,
      hour.sunLeftHours === null ? "all day" : `${hour.sunLeftHours.toFixed(1)} h`,
    ];
  });
  return columns(
    [["rank", "fit hour", "air", "wind", "rain", "cloud", "sun left"], ...rows],
    [2, 3, 4, 5, 6],
  );
}

/** Hours in a row that are not fit for the same reasons. */
function againstRuns(
  hours: readonly ReleaseHour[],
): { readonly first: ReleaseHour; readonly last: ReleaseHour; readonly text: string }[] {
  const runs: { first: ReleaseHour; last: ReleaseHour; text: string }[] = [];
  for (const hour of hours) {
    if (hour.verdict === "fit") continue;
    const text = `${hour.verdict === "not-judged" ? "not judged: " : ""}${againstHour(hour)}`;
    const run = runs.at(-1);
    if (run?.text === text && run.last.to === hour.from) run.last = hour;
    else runs.push({ first: hour, last: hour, text });
  }
  return runs;
}

/** `Sun  5 Jul 14:00-15:00`, or with the second day where it is another. */
function spanText(from: string, to: string): string {
  const sameDay = from.slice(0, 10) === to.slice(0, 10);
  const end = sameDay ? clockText(to) : ` ${momentText(to)}`;
  return `${momentText(from)}${sameDay ? "-" : " to"}${end}`;
}

function momentText(instant: string): string {
  return `${dayLabel(instant.slice(0, 10))} ${clockText(instant)}`;
}

function clockText(instant: string): string {
  return instant.slice(11, 16);
}
