import { givenLifeCycle } from "../../species/given-life-cycle.ts";
import { givenList } from "../../given.ts";
import type { LifeCycle, Sourced } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import { bullet, columns, wrapped } from "../layout/text-layout.ts";

/** The species at hand, a line each. */
export function speciesListText(species: readonly LifeCycle[]): string {
  givenList(species, ["species"]);
  return `${columns([
    ["id", "name", "stages"],
    ...species.map((one) => [one.species, one.commonName, `${one.stages.length}`]),
  ])}\n`;
}

/** One species with its constants, how far each can be trusted, and where it comes from. */
export function speciesText(lifeCycle: LifeCycle): string {
  givenLifeCycle(lifeCycle);
  const { latinName, commonName, host, region, stages, remarks } = lifeCycle;
  const table = columns(
    [
      ["stage", "degree-days", "lower °C", "upper °C", "differ by"],
      ...stages.map(({ stage, degreeDays, lower, upper, cutoff, cv }) => [
        stageName(stage),
        String(Number(degreeDays.value.toPrecision(5))),
        String(lower.value),
        upper === null ? "none" : `${upper.value} ${cutoff}`,
        `${(cv.value * 100).toFixed(0)} %`,
      ]),
    ],
    [1, 2, 4],
  );
  return [
    wrapped(`${commonName} (${latinName}), id ${lifeCycle.species}`),
    wrapped(
      `Measured on ${host ?? "a host or food that is not stated"}; animals from ${region ?? "a place that is not stated"}.`,
    ),
    "",
    table,
    "",
    "WHERE THE FIGURES COME FROM",
    ...sourceLines(lifeCycle),
    ...(remarks.length > 0 ? ["", "GOOD TO KNOW", ...remarks.map((remark) => bullet(remark))] : []),
    "",
  ].join("\n");
}

function sourceLines({ stages, hang, darkening, stageCorrelation }: LifeCycle): string[] {
  const named: [string, Sourced | null][] = [
    ...stages.flatMap(({ stage, degreeDays, lower, upper, cv }): [string, Sourced | null][] => [
      [`${stageName(stage)} degree-days`, degreeDays],
      ["lower threshold", lower],
      ["upper threshold", upper],
      [`${stageName(stage)} variation`, cv],
    ]),
    ["hang", hang],
    ["darkening", darkening],
    ["correlation between stages", stageCorrelation],
  ];
  // Figures of one source are named together.
  const bySource = new Map<string, Set<string>>();
  for (const [name, constant] of named) {
    if (constant === null) continue;
    const key = `${constant.source} [${constant.mark}]`;
    bySource.set(key, (bySource.get(key) ?? new Set()).add(name));
  }
  return [...bySource].map(([source, names]) => bullet(`${[...names].join(", ")}: ${source}`));
}
