import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { ROOT } from "./consumer/project.ts";

/** A part of the package that somebody loads over the network, and how large it may be. */
export interface Budget {
  readonly name: string;
  /** What its user imports. */
  readonly code: string;
  /** Bytes, minified and gzipped, that it should have. */
  readonly goal: number;
  /**
   * Bytes that it may have until it meets its goal; lowered when it shrinks, and raised only for what protects animals
   * or data and cannot be had for less (2026-11-25: the words for handling, marks and cutoffs, 600 B; rows of a log that
   * correct others, days in two rows, places with several stations, headers that a file lacks, 1 400 B; offsets that no
   * clock has, 100 B). `null` where the
   * goal is met.
   */
  readonly notYet: number | null;
  /** Packages that must not be in it. */
  readonly without?: readonly string[];
}

/** Every budget, also those that are not met yet. */
export const BUDGETS: readonly Budget[] = [
  {
    name: "one degree-day kernel, a sine's",
    code: [
      'import { sineExcess } from "moltline";',
      "export const heat = (min, max, lower, upper) => sineExcess(lower, min, max) - sineExcess(upper, min, max);",
    ].join("\n"),
    goal: 500,
    notYet: null,
  },
  {
    name: "columns, checked, by every method",
    code: 'export { degreeDaysEach } from "moltline";',
    goal: 3_000,
    notYet: null,
    without: ["zod", "d3-dsv", "suncalc"],
  },
  {
    name: "forecast with one species",
    code: [
      'export { forecast } from "moltline";',
      'export { danausPlexippus } from "moltline/species/danaus-plexippus";',
    ].join("\n"),
    goal: 8_000,
    notYet: 22_800,
    without: ["zod", "d3-dsv", "ml-levenberg-marquardt"],
  },
  {
    name: "reading temperatures",
    code: 'export { readTemperatures } from "moltline/read";',
    goal: 30_000,
    notYet: null,
  },
  {
    name: "every reader",
    code: 'export * from "moltline/read";',
    goal: 30_000,
    notYet: 47_100,
  },
  {
    name: "nothing, though everything is imported",
    code: ["moltline", "moltline/read", "moltline/write", "moltline/plot"]
      .map((entry, i) => `import * as entry${i} from "${entry}"; if (0) entry${i};`)
      .join("\n"),
    goal: 50,
    notYet: null,
  },
];

/** Size of what a bundler makes of some code, and the packages that ended up in it. */
export interface Bundle {
  readonly bytes: number;
  readonly packages: readonly string[];
}

/** Bundles code against the built package, minified, and gzips it. */
export async function bundled(code: string): Promise<Bundle> {
  const { metafile, outputFiles } = await build({
    stdin: { contents: code, resolveDir: ROOT, loader: "js" },
    bundle: true,
    minify: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    write: false,
    metafile: true,
    logLevel: "error",
  });
  const inputs = Object.values(metafile.outputs).flatMap((output) => Object.entries(output.inputs));
  const used = inputs.filter(([, { bytesInOutput }]) => bytesInOutput > 0).map(([path]) => path);
  const names = used.flatMap((path) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1] ?? []);
  return {
    bytes: outputFiles.reduce((sum, { contents }) => sum + gzipSync(contents, { level: 9 }).length, 0),
    packages: [...new Set(names)].sort(),
  };
}
